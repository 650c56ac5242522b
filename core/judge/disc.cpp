// Rotor, drum and lining arithmetic.
#include "core/judge/disc.h"

#include <algorithm>
#include <cmath>

namespace cotter {

Ring ring_of(std::span<const double> points) {
    const auto [least, most] = std::minmax_element(points.begin(), points.end());
    return {*least, *most, *most - *least};
}

RotorPlan plan_rotor(const Ring& ring, double cut, const RotorLimits& limits) {
    RotorPlan plan{RotorAnswer::no_limit, ring.least - 2 * cut};
    if (limits.discard && ring.least <= *limits.discard) {
        plan.answer = RotorAnswer::replace;
    } else if (cut > 0) {
        if (limits.machine_to)
            plan.answer = plan.after_cut >= *limits.machine_to ? RotorAnswer::machine : RotorAnswer::replace;
    } else if (limits.discard) {
        plan.answer = RotorAnswer::keep;
    }
    return plan;
}

Imbalance imbalance_of(std::optional<double> when_new, double one, double other) {
    Imbalance out;
    out.difference = std::abs(one - other);
    if (!when_new) return out;
    out.worn_one = *when_new - one;
    out.worn_other = *when_new - other;
    const double mean = (out.worn_one + out.worn_other) / 2;
    if (mean > 0) out.percent = std::abs(out.worn_one - out.worn_other) / mean * 100;
    return out;
}

}  // namespace cotter
