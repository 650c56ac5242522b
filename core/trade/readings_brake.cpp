// Readings of a brake.
#include "core/trade/reading_parts.h"

namespace cotter {

namespace {

using namespace specs;

constexpr std::array kReadings{
    taken(what::pad_thickness, {"brake", length, 0, 0.040, "pad"}, {"caliper", kPads, kGauge, 0.0003, 0.025},
          kFractions),
    extra(what::pad_when_new, {"brake", length, 0.003, 0.040}, {"caliper, on a new pad", {}, kGauge, 0.004, 0.025},
          kFractions),
    computed(what::pad_imbalance, {"brake", length, 0, 0.040, "pad"}, kHigh),
    computed(what::axle_imbalance, {"brake", length, 0, 0.040, "shoe lining pad"}, kHigh),
    taken(what::lining_thickness, {"brake", length, 0, 0.040, "shoe lining"},
          {"depth gauge", kShoes, kTread, 0.0003, 0.025}, kFractions),
    taken(what::air_lining, {"brake", length, 0, 0.060, "shoe lining pad"},
          {"depth gauge", kLinings, kTread, 0.001, 0.030}, kFractions),
    taken(what::rotor_thickness, {"brake", length, 0.003, 0.080, "rotor"},
          {"micrometer", kRound, kMicrometer, 0.004, 0.06}),
    extra(what::rotor_cut, {"brake", length, 0, 0.005, "rotor"}, {"planned", {}, kMicrometer, 0.00005, 0.002}, kHigh),
    computed(what::rotor_machine_to, {"brake", length, 0.003, 0.080, "rotor"}),
    computed(what::rotor_variation, {"brake", length, 0, 0.01, "rotor"}, kHigh),
    taken(what::rotor_runout, {"brake", length, 0, 0.01, "rotor"}, {"dial indicator", {}, kDial, 0.000008, 0.002},
          kHigh),
    taken(what::drum_diameter, {"brake", length, 0.1, 0.6, "drum"}, {"drum gauge", kDrum, kDrumGauge, 0.12, 0.46},
          kHigh),
    computed(what::drum_out_of_round, {"brake", length, 0, 0.02, "drum"}, kHigh),
    taken(what::magnet_current, {"brake", current, 0, 12, "magnet"}, {"clamp meter", {}, kAmps, 0.3, 8}),
    extra(what::magnets_total, {"brake", current, 0, 100, "magnet"}, {"clamp meter", {}, kAmps, 1, 40}),
    taken(what::magnet_resistance, {"brake", resistance, 0, 1e7, "magnet"}, {"multimeter", {}, kOhms, 0.8, 20}),
    taken(what::magnet_volts, {"brake", voltage, 0, 30}, {"multimeter", {}, kVolts, 1, 16}),
    taken(what::push_rod_stroke, {"brake", length, 0, 0.15, "chamber slack"},
          {"rule, applied against released", {}, kTape, 0.01, 0.09}, kFractions | kHigh),
    taken(what::wedge_movement, {"brake", length, 0, 0.02, "shoe lining"},
          {"rule at the inspection hole", {}, kTape, 0.0004, 0.01}, kFractions | kHigh),
    taken(what::tank_pressure, {"air", pressure, 0, 200 * kPsi}, {"tank gauge", {}, kAirGauge, 40 * kPsi, 150 * kPsi}),
    taken(what::air_drop, {"air", pressure, 0, 120 * kPsi, "chamber hose line valve"},
          {"gauge and watch", kAir, kAirGauge, 0.5 * kPsi, 30 * kPsi}, kHigh),
    extra(what::brake_force, {"brake", ratio, 0, 1.5}, {"roller brake tester", {}, kShare, 0.1, 1}),
    extra(what::stop_distance, {"brake", length, 3, 300}, {"tape, from 20 mph", {}, kLongTape, 5, 60}, kHigh),
};

}  // namespace

std::span<const ReadingSpec> brake_readings() {
    return kReadings;
}

}  // namespace cotter
