// Which state of a trailer is judged.
#pragma once

#include "core/base/fields.h"

namespace cotter {

// As the trailer was found at this visit, or as it is now: findings not repaired, and readings as last taken.
enum class State { found, now };
constexpr auto names(State) {
    return name_list("found", "now");
}

}  // namespace cotter
