// Pressure, clamp and stop; holding pressure; fluid; the breakaway battery. Units in the names. Pure; any thread.
#pragma once

#include <optional>
#include <string_view>

namespace cotter {

// A disc brake and its axle, as a picture of what pressure does; never in place of a measured brake test.
struct DiscBrake {
    double bore_in = 0;              // of one piston; several: the bore of the same area
    double friction = 0.35;          // of the pads
    double effective_radius_in = 0;  // where the pads' force acts
    double wheel_radius_in = 0;      // loaded
    double axle_weight_lb = 0;
};
struct DiscEffort {
    double clamp_lb = 0;      // on one side
    double torque_lb_ft = 0;  // of one brake
    double axle_lb = 0;       // of both
    double share = 0;         // of the axle's weight
};
[[nodiscard]] double piston_area_in2(double bore_in);
[[nodiscard]] DiscEffort disc_effort(const DiscBrake& brake, double psi);
[[nodiscard]] double psi_for_share(const DiscBrake& brake, double share);
[[nodiscard]] double surge_psi(double push_lb, double master_bore_in);
[[nodiscard]] double ideal_stop_ft(double mph, double share_of_g);  // without reaction and build-up

struct Hold {
    double drop_share = 0;    // of the pressure at the start
    double rate_per_min = 0;  // in the unit given
};
[[nodiscard]] Hold hold_of(double start, double end, double minutes);

// Lowest boiling points that the fluid's class must have (49 CFR 571.116), °C.
struct FluidClass {
    double dry_c = 0, wet_c = 0;
};
// "DOT 3", "DOT 4", "DOT 5", "DOT 5.1", also inside a longer text; nothing for another fluid.
[[nodiscard]] std::optional<FluidClass> fluid_class(std::string_view product);

// Minutes that a battery of `rated_ah` (20 h rating) gives `amps`, by Peukert's law with exponent `k`.
[[nodiscard]] double battery_minutes(double rated_ah, double amps, double k);
[[nodiscard]] double rated_ah_for(double minutes, double amps, double k);
[[nodiscard]] double delivered_ah(double amps, double minutes);
// Volts lost in a copper pair of `feet` each way; AWG 10, 12, 14 or 16, else nothing.
[[nodiscard]] std::optional<double> lead_drop_v(int awg, double feet, double amps);
struct MagnetCurrent {
    double volts = 0;  // at the magnets
    double amps_each = 0;
};
[[nodiscard]] MagnetCurrent magnets_at(double supply_v, int magnets, double ohm_each, double lead_ohm);

}  // namespace cotter
