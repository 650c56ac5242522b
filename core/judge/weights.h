// Weights of a trailer and what its ratings allow. Any one unit of mass, except where named. Pure; any thread.
#pragma once

#include <span>

namespace cotter {

struct TrailerWeight {
    double gross = 0;         // axles and tongue
    double tongue_share = 0;  // of it
};
[[nodiscard]] TrailerWeight trailer_weight(std::span<const double> axles, double tongue);

// 49 CFR 393.48(d): the largest ratio of trailer to tow vehicle rating at which surge brakes are allowed; 0 at 20,001
// lb and above, where they are not.
[[nodiscard]] double surge_ratio_limit(double trailer_lb);

}  // namespace cotter
