// Actuation and breakaway.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 1> kFill{what::reservoir_fill};
constexpr std::array<Names, 2> kFluid{what::fluid_moisture, what::fluid_boiling};
constexpr std::array<Names, 2> kHold{what::pressure_hold, what::hold_drop};
constexpr std::array<Names, 1> kPressure{what::line_pressure};
constexpr std::array<Names, 1> kTravel{what::slide_travel};
constexpr std::array<Names, 1> kVolts{what::actuator_volts};
constexpr std::array<Names, 2> kTest{what::battery_volts, what::battery_held};
constexpr std::array<Names, 2> kBattery{what::battery_volts, what::battery_capacity};

constexpr std::array kReservoir{Slot::reservoir};
constexpr std::array kUnit{Slot::whole, Slot::hose_line};
constexpr std::array kWire{Slot::wiring};
constexpr std::array kBatteryShot{Slot::whole, Slot::wiring};

constexpr Law kBreakaway{"49 CFR 393.43(d)", kRead};
constexpr Law kPractice{"common practice", kMemory};
constexpr Law kVacuum{"49 CFR part 396, Appendix A, 1k", kMemory};

constexpr std::array kLevelList{
    LookEntry{"empty", "Empty", kStop},
    LookEntry{"quarter", "Less than a quarter full", kRepair},
    LookEntry{"below", "Below its mark: look for the leak", kRepair},
};
constexpr std::array kLeakList{
    LookEntry{"unit", "The unit is wet with fluid", kStop},
    LookEntry{"fitting", "A fitting is wet with fluid", kStop},
    LookEntry{"line", "A line along the frame is wet with fluid, cracked or crimped", kStop},
};
constexpr std::array kFluidList{
    LookEntry{"dot3", "DOT 3", kGood},
    LookEntry{"dot4", "DOT 4", kGood},
    LookEntry{"dot51", "DOT 5.1", kGood},
    LookEntry{"dot5", "DOT 5, silicone", kGood},
    LookEntry{"mineral", "Mineral oil, as the maker wants", kGood},
    LookEntry{"mixed", "Two kinds mixed", kRepair},
    LookEntry{"wrong", "Another kind than the cap or the maker says", kRepair},
};
constexpr std::array kSurgeList{
    LookEntry{"bottoms", "The slide goes to its end", kRepair},
    LookEntry{"seized", "The slide is seized or does not come back", kRepair},
    LookEntry{"damper", "The damper does not hold back", kRepair},
    LookEntry{"lockout", "The reverse lockout does not work", kRepair},
};
constexpr std::array kPowerList{
    LookEntry{"dead", "The unit does not run", kStop},
    LookEntry{"ground", "Ground or fuse is bad", kRepair},
    LookEntry{"feed", "The air or vacuum line is damaged or leaks", kRepair, kVacuum},
};
constexpr std::array kPullList{
    LookEntry{"free", "A wheel that must hold turns free with the pin out", kStop},
    LookEntry{"drags", "A wheel does not turn free with the pin in again", kStop},
    LookEntry{"out", "The pin was not put back", kStop},
};
constexpr std::array kBatteryList{
    LookEntry{"dead", "The battery is dead or missing", kStop},
    LookEntry{"charge", "It is not charged by the tow vehicle", kWatch},
};
constexpr std::array kCableList{
    LookEntry{"missing", "The cable is missing", kStop},
    LookEntry{"switch", "The switch is broken or its pin is seized", kStop},
    LookEntry{"frayed", "The cable is frayed or knotted", kRepair},
    LookEntry{"hooked", "The cable hangs on a chain or on the ball, not on the tow vehicle's frame", kRepair},
    LookEntry{"line", "The charge line is broken", kRepair, kPractice, applies::electric_pull},
};

constexpr std::array kRows{
    TradePoint{.id = act_level,
               .title = "Brake fluid level",
               .spot = Spot::actuator,
               .applies = applies::hydraulic_system,
               .danger = Danger::brakes,
               .law = {"49 CFR part 396, Appendix A, 1j(1)", kMemory},
               .ask = "Is the brake fluid below its mark?",
               .list = ListKind::faults,
               .entries = kLevelList,
               .readings = kFill,
               .slots = kReservoir,
               .level = true},
    TradePoint{.id = act_leak,
               .title = "Actuator, fittings and lines",
               .spot = Spot::actuator,
               .applies = applies::hydraulic_system,
               .danger = Danger::brakes,
               .law = {"49 CFR part 396, Appendix A, 1j(6), 1j(8)", kMemory},
               .ask = "Is the unit, a fitting or a line along the frame wet with fluid or damaged?",
               .list = ListKind::faults,
               .entries = kLeakList,
               .slots = kUnit},
    TradePoint{.id = act_fluid,
               .title = "Brake fluid kind and condition",
               .spot = Spot::actuator,
               .applies = applies::hydraulic_system,
               .reach = Reach::wheel_on,
               .importance = Importance::wanted,
               .keeps = Keeps::two_years,
               .danger = Danger::brakes,
               .law = {"49 CFR 571.116", kPartly},
               .ask = "What kind of brake fluid is it?",
               .list = ListKind::choice,
               .entries = kFluidList,
               .readings = kFluid,
               .slots = kReservoir},
    TradePoint{.id = act_hold,
               .title = "Pressure held for 5 minutes",
               .spot = Spot::actuator,
               .applies = applies::hydraulic_system,
               .reach = Reach::wheel_on,
               .importance = Importance::essential_after_work,
               .essential_when = applies::hydraulics_opened,
               .keeps = Keeps::until_work,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.45", kMemory},
               .readings = kHold},
    TradePoint{.id = act_press,
               .title = "Line pressure at full demand",
               .spot = Spot::actuator,
               .applies = applies::hydraulic_system,
               .reach = Reach::wheel_on,
               .importance = Importance::wanted,
               .essential_when = applies::braking_in_doubt,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .maker = true,
               .readings = kPressure},
    TradePoint{.id = act_surge,
               .title = "Surge or overrun unit: travel, return, damper, lockout",
               .spot = Spot::actuator,
               .applies = applies::pushed,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.48(d)", kRead},
               .maker = true,
               .ask = "Does the slide bottom, stick or not come back, or does damper or lockout fail?",
               .list = ListKind::faults,
               .entries = kSurgeList,
               .readings = kTravel,
               .slots = kUnit},
    TradePoint{.id = act_power,
               .title = "Power, ground and feed of the brake unit",
               .spot = Spot::actuator,
               .applies = applies::powered_unit,
               .reach = Reach::wheel_on,
               .importance = Importance::wanted,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .maker = true,
               .ask = "Is the unit dead, or its power, ground or feed bad?",
               .list = ListKind::faults,
               .entries = kPowerList,
               .readings = kVolts,
               .slots = kWire},
    TradePoint{.id = away_pull,
               .title = "Breakaway pull test",
               .spot = Spot::corner,
               .applies = applies::braked,
               .danger = Danger::brakes,
               .law = kBreakaway,
               .ask = "Pin or supply line out: does this wheel turn? In again: does it drag?",
               .list = ListKind::faults,
               .entries = kPullList,
               .timed = true},
    TradePoint{.id = away_15,
               .title = "Breakaway brakes held for 15 minutes",
               .applies = applies::some_brake,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = kBreakaway,
               .readings = kTest,
               .timed = true},
    TradePoint{.id = away_batt,
               .title = "Breakaway battery",
               .spot = Spot::actuator,
               .applies = applies::electric_pull,
               .importance = Importance::wanted,
               .danger = Danger::brakes,
               .law = kPractice,
               .ask = "Is the breakaway battery dead, missing or not charged?",
               .list = ListKind::faults,
               .entries = kBatteryList,
               .readings = kBattery,
               .slots = kBatteryShot},
    TradePoint{.id = away_cable,
               .title = "Breakaway cable, switch and charge line",
               .spot = Spot::drawbar,
               .applies = applies::away_cable,
               .danger = Danger::brakes,
               .law = {"49 CFR part 396, Appendix A, 1i(2)", kMemory},
               .ask = "Is the cable missing or frayed, or hooked to anything but the tow vehicle's frame?",
               .list = ListKind::faults,
               .entries = kCableList,
               .slots = kWire},
};

}  // namespace

std::span<const TradePoint> actuation_points() {
    return kRows;
}

}  // namespace cotter
