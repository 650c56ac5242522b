// Brake arithmetic.
#include "core/judge/braking.h"

#include <cmath>
#include <numbers>

namespace cotter {

namespace {
constexpr double kFootPerSecond2 = 32.174;  // of standard gravity
constexpr double kHours = 20;               // of the battery's rating
}  // namespace

double piston_area_in2(double bore_in) {
    return std::numbers::pi * bore_in * bore_in / 4;
}

DiscEffort disc_effort(const DiscBrake& b, double psi) {
    DiscEffort out;
    out.clamp_lb = psi * piston_area_in2(b.bore_in);
    const double torque_lb_in = 2 * b.friction * out.clamp_lb * b.effective_radius_in;
    out.torque_lb_ft = torque_lb_in / 12;
    out.axle_lb = 2 * torque_lb_in / b.wheel_radius_in;
    out.share = out.axle_lb / b.axle_weight_lb;
    return out;
}

double psi_for_share(const DiscBrake& b, double share) {
    return share / disc_effort(b, 1).share;
}

double surge_psi(double push_lb, double master_bore_in) {
    return push_lb / piston_area_in2(master_bore_in);
}

double ideal_stop_ft(double mph, double share_of_g) {
    const double feet_per_second = mph * 5280 / 3600;
    return feet_per_second * feet_per_second / (2 * share_of_g * kFootPerSecond2);
}

Hold hold_of(double start, double end, double minutes) {
    return {(start - end) / start, (start - end) / minutes};
}

std::optional<FluidClass> fluid_class(std::string_view product) {
    const auto has = [&](std::string_view word) { return product.find(word) != std::string_view::npos; };
    if (has("DOT 3")) return FluidClass{205, 140};
    if (has("DOT 4")) return FluidClass{230, 155};
    if (has("DOT 5")) return FluidClass{260, 180};
    return std::nullopt;
}

double battery_minutes(double rated_ah, double amps, double k) {
    return kHours * std::pow(rated_ah / (amps * kHours), k) * 60;
}

double rated_ah_for(double minutes, double amps, double k) {
    return amps * kHours * std::pow(minutes / 60 / kHours, 1 / k);
}

double delivered_ah(double amps, double minutes) {
    return amps * minutes / 60;
}

std::optional<double> lead_drop_v(int awg, double feet, double amps) {
    const double ohm_per_1000_ft = awg == 10 ? 0.9989 : awg == 12 ? 1.588 : awg == 14 ? 2.525 : awg == 16 ? 4.016 : 0;
    if (ohm_per_1000_ft == 0) return std::nullopt;
    return ohm_per_1000_ft / 1000 * 2 * feet * amps;
}

MagnetCurrent magnets_at(double supply_v, int magnets, double ohm_each, double lead_ohm) {
    const double together = ohm_each / magnets;
    const double amps = supply_v / (together + lead_ohm);
    return {amps * together, amps / magnets};
}

}  // namespace cotter
