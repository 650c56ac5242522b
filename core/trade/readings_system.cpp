// Readings of hubs after a drive and of what brings the brakes on.
#include "core/trade/reading_parts.h"

namespace cotter {

namespace {

using namespace specs;

constexpr std::array kReadings{
    taken(what::hub_temperature, {"hub", temperature, 223, 773}, {"infrared, on a matt spot", {}, kHeat, 243, 453},
          kSign | kHigh),
    computed(what::hub_over_mates, {"hub", temperature, -200, 700}, kHigh),
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

std::span<const ReadingSpec> system_readings() {
    return kReadings;
}

}  // namespace cotter
