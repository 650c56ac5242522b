// Readings of hubs, tires and what brings the brakes on.
#include "core/trade/reading_parts.h"

namespace cotter {

namespace {

using namespace specs;

constexpr std::array kReadings{
    taken(what::end_play, {"hub", length, 0, 0.01, "bearing hub spindle"},
          {"dial indicator", kThrice, kDial, 0.000008, 0.0015}, kHigh),
    computed(what::hub_over_mates, {"hub", temperature, -200, 700}, kHigh),
    taken(what::hub_temperature, {"hub", temperature, 223, 773}, {"infrared, on a matt spot", {}, kHeat, 243, 453},
          kSign | kHigh),
    taken(what::tread_depth, {"tyre", length, 0, 0.03, "tyre tire"}, {"depth gauge", kGrooves, kTread, 0.0003, 0.025},
          kFractions),
    taken(what::pressure_cold, {"tyre", pressure, 0, 160 * kPsi, "tyre tire"},
          {"tire gauge", {}, kTireGauge, 14 * kPsi, 140 * kPsi}),
    taken(what::pressure_hot, {"tyre", pressure, 0, 180 * kPsi, "tyre tire"},
          {"tire gauge", {}, kTireGauge, 14 * kPsi, 150 * kPsi}),
    taken(what::dual_gap, {"tyre", length, 0, 0.3, "tyre tire wheel"}, {"rule", {}, kTape, 0.005, 0.12}, kFractions),
    taken(what::dual_diameters, {"tyre", length, 0.2, 1.6, "tyre tire"}, {"tape", kDuals, kTape, 0.35, 1.3},
          kFractions),
    computed(what::dual_difference, {"tyre", length, 0, 0.3, "tyre tire"}, kHigh),
    replaced(what::tyre_date, {"tyre", ratio, 0, 9999, "tyre tire"}),
    computed(what::tyre_age, {"tyre", kTime, 0, 4e9, "tyre tire"}, kHigh),
    replaced(what::load_index, {"tyre", ratio, 50, 200, "tyre tire"}),
    replaced(what::load_rating, {"tyre", mass, 200, 6 * kTon, "tyre tire"}),
    taken(what::line_pressure, {"hydraulics", pressure, 0, 3000 * kPsi},
          {"gauge at the bleeder", {}, kLineGauge, 100 * kPsi, 2200 * kPsi}),
    taken(what::pressure_hold, {"hydraulics", pressure, 0, 3000 * kPsi},
          {"gauge at the bleeder", kHold, kLineGauge, 100 * kPsi, 2200 * kPsi}),
    computed(what::hold_drop, {"hydraulics", ratio, 0, 1}, kHigh),
    taken(what::fluid_moisture, {"hydraulics", ratio, 0, 0.2, "fluid"}, {"fluid tester", {}, kShare, 0.001, 0.1},
          kHigh),
    taken(what::fluid_boiling, {"hydraulics", temperature, 360, 600, "fluid"},
          {"boiling point tester", {}, kHeat, 373, 560}),
    taken(what::reservoir_fill, {"hydraulics", ratio, 0, 1.2, "fluid reservoir"},
          {"by eye, share of full", {}, kShare, 0.05, 1}),
    taken(what::slide_travel, {"hydraulics", length, 0, 0.4, "actuator"}, {"rule", {}, kTape, 0.004, 0.15},
          kFractions | kHigh),
    taken(what::actuator_volts, {"hydraulics", voltage, 0, 30, "actuator"}, {"multimeter", {}, kVolts, 5, 16}),
    taken(what::battery_volts, {"breakaway", voltage, 0, 20, "battery"}, {"multimeter", kBattery, kVolts, 5, 16}),
    replaced(what::battery_held, {"breakaway", kTime, 0, 86400, "battery breakaway"}),
    taken(what::battery_capacity, {"breakaway", charge, 3600, 3600.0 * 200, "battery"},
          {"label", {}, kCharge, 3600.0 * 3, 3600.0 * 120}),
};

}  // namespace

std::span<const ReadingSpec> corner_readings() {
    return kReadings;
}

}  // namespace cotter
