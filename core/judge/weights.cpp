// Weights.
#include "core/judge/weights.h"

#include <numeric>

namespace cotter {

TrailerWeight trailer_weight(std::span<const double> axles, double tongue) {
    const double gross = std::accumulate(axles.begin(), axles.end(), tongue);
    return {gross, gross > 0 ? tongue / gross : 0};
}

double surge_ratio_limit(double trailer_lb) {
    if (trailer_lb <= 12000) return 1.75;
    return trailer_lb < 20001 ? 1.25 : 0;
}

}  // namespace cotter
