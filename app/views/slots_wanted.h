// Which photos a place is usually shown by. For the corner page and for taking photos in; pure, any thread.
#pragma once

#include <vector>

#include "core/survey/words.h"
#include "core/trailer/trailer.h"

namespace cotter {

// In the order in which they are usually taken: the wheel as found, then deeper with each part that comes off.
// After the work those come back that can still be seen with the wheel on.
[[nodiscard]] std::vector<Slot> slots_wanted(const Trailer* trailer, const Place& place, Stage stage);

}  // namespace cotter
