// Rotor, drum and lining arithmetic. Lengths in one unit of the caller's choice. Pure; any thread.
#pragma once

#include <optional>
#include <span>

namespace cotter {

// Points round one circle.
struct Ring {
    double least = 0, most = 0;
    double variation = 0;  // most − least: thickness variation of a rotor, out-of-round of a drum
};
[[nodiscard]] Ring ring_of(std::span<const double> points);  // of at least one point

struct RotorLimits {
    std::optional<double> discard;     // stamped: below it the rotor is scrap
    std::optional<double> machine_to;  // thinnest allowed after cutting
};
enum class RotorAnswer { keep, machine, replace, no_limit };
struct RotorPlan {
    RotorAnswer answer = RotorAnswer::no_limit;
    double after_cut = 0;  // least − 2 · cut
};
// `keep` without a cut; `machine` when what a cut of `cut_per_side` leaves is at or over machine-to; `replace` when the
// rotor is not over its discard figure, or the cut leaves too little; `no_limit` when the figure needed is not known.
[[nodiscard]] RotorPlan plan_rotor(const Ring& ring, double cut_per_side, const RotorLimits& limits);

// Two linings that should wear alike: inner and outer pad, left and right.
struct Imbalance {
    double difference = 0;          // absolute, of the thicknesses
    std::optional<double> percent;  // of the mean wear; none when the new thickness is not known or nothing is worn
    double worn_one = 0, worn_other = 0;
};
[[nodiscard]] Imbalance imbalance_of(std::optional<double> when_new, double one, double other);

}  // namespace cotter
