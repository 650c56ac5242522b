// What is due after the job, in words ready to show: when, where, who says so. For the hand-over page. Plain values.
#pragma once

#include <string>
#include <vector>

#include "app/session/session.h"

namespace cotter {

struct RecheckLine {
    std::string title;   // "Check lug nut torque again …"
    std::string when;    // "after 10, 25 and 50 miles"
    std::string places;  // "Axle 1, left; axle 1, right", "All corners"; empty: the whole trailer
    std::string source;  // "common practice; replaced by the maker's own", "law: …"
};

// The source that most of them have: said once for all that name no other.
[[nodiscard]] std::string common_source(const std::vector<RecheckLine>& lines);

// Counted from the day of the sign-off, or from today while there is none.
[[nodiscard]] std::vector<RecheckLine> recheck_lines(const Session& session);

}  // namespace cotter
