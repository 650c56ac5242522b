// What looks odd about plate data: a slip of the unit, a figure that contradicts another. Each is asked about and then
// kept as said; what it means for towing is judged by the answer engine alone. Pure; any thread.
#pragma once

#include <string>
#include <vector>

#include "core/survey/job.h"

namespace cotter {

struct PlateDoubt {
    std::string field;  // the field's id on the plate page (app/views/plate_fields.h)
    std::string says;   // one line: what is odd, and what to look at
};

// `today`: for build dates in the future.
[[nodiscard]] std::vector<PlateDoubt> plate_doubts(const Trailer& trailer, const Visit& visit, const Date& today);

}  // namespace cotter
