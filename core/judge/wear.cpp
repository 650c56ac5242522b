// Wear arithmetic.
#include "core/judge/wear.h"

#include <algorithm>
#include <cmath>

namespace cotter {

WearLife wear_life(const WearPair& p) {
    WearLife out;
    const double d = p.first - p.second, above = p.second - p.limit;
    out.worn = d;
    out.least = 2 * std::sqrt(2.0) * p.u_thickness;
    if (!(p.way > 0)) return out;
    out.answer = d <= 0 ? WearAnswer::grew : d < out.least ? WearAnswer::too_small : WearAnswer::told;
    if (above <= 0) out.answer = WearAnswer::at_limit;
    if (out.answer != WearAnswer::told) return out;
    out.rate = d / p.way;
    out.left = above * p.way / d;
    out.from_second = (p.way / d + above * p.way / (d * d)) * p.u_thickness;
    out.from_first = -above * p.way / (d * d) * p.u_thickness;
    out.from_way = above / d * p.u_way;
    out.u = std::hypot(out.from_second, out.from_first, out.from_way);
    out.plan = std::max(0.0, out.left - 2 * out.u);
    return out;
}

}  // namespace cotter
