// The table of readings. Usual values are wide: they catch a slip of the unit or of the point, never a worn part.
#include "app/views/reading_kinds.h"

#include <algorithm>
#include <array>

#include "core/judge/reading_names.h"

namespace cotter {

namespace {

using Points = std::string_view;

constexpr std::array<Points, 4> kPads{"inner, leading end", "inner, trailing end", "outer, leading end",
                                      "outer, trailing end"};
constexpr std::array<Points, 8> kRound{"0°", "45°", "90°", "135°", "180°", "225°", "270°", "315°"};
constexpr std::array<Points, 4> kShoes{"front shoe, centre", "front shoe, thinnest", "rear shoe, centre",
                                       "rear shoe, thinnest"};
constexpr std::array<Points, 4> kDrum{"mouth, 0°", "mouth, 90°", "deep, 0°", "deep, 90°"};
constexpr std::array<Points, 3> kThrice{"first", "second", "third"};
constexpr std::array<Points, 3> kGrooves{"inner groove", "middle groove", "outer groove"};
constexpr std::array<Points, 2> kHold{"start, after settling", "after 5 min"};
constexpr std::array<Points, 4> kBattery{"rest", "after 1 min", "after 5 min", "after 15 min"};
constexpr std::array<Points, 2> kSides{"left", "right"};
constexpr std::array<Points, 4> kLamps{"tail lamps", "stop lamps", "left turn", "right turn"};

constexpr std::array<UnitStep, 2> kGauge{{{"mm", "0.1"}, {"[in_i]", "1/32"}}};
constexpr std::array<UnitStep, 2> kTread{{{"[in_i]", "1/32"}, {"mm", "0.1"}}};
constexpr std::array<UnitStep, 2> kMicrometer{{{"mm", "0.01"}, {"[in_i]", "0.0005"}}};
constexpr std::array<UnitStep, 2> kDial{{{"[in_i]", "0.001"}, {"mm", "0.01"}}};
constexpr std::array<UnitStep, 2> kDrumGauge{{{"[in_i]", "0.005"}, {"mm", "0.1"}}};
constexpr std::array<UnitStep, 2> kTape{{{"[in_i]", "1/16"}, {"mm", "1"}}};
constexpr std::array<UnitStep, 3> kTyreGauge{{{"[psi]", "1"}, {"kPa", "5"}, {"bar", "0.1"}}};
constexpr std::array<UnitStep, 2> kLineGauge{{{"[psi]", "20"}, {"bar", "1"}}};
constexpr std::array<UnitStep, 2> kHeat{{{"Cel", "1"}, {"[degF]", "1"}}};
constexpr std::array<UnitStep, 1> kVolts{{{"V", "0.1"}}};
constexpr std::array<UnitStep, 1> kAmps{{{"A", "0.1"}}};
constexpr std::array<UnitStep, 1> kOhms{{{"Ohm", "0.1"}}};
constexpr std::array<UnitStep, 1> kShare{{{"%", "1"}}};
constexpr std::array<UnitStep, 2> kScale{{{"[lb_av]", "10"}, {"kg", "5"}}};
constexpr std::array<UnitStep, 2> kRoad{{{"[mi_i]", "1"}, {"km", "1"}}};

constexpr double kPsi = 6894.757;

constexpr std::array kKinds{
    ReadingKind{what::tread_depth, "depth gauge", kGrooves, kTread, 0.0003, 0.025, true},
    ReadingKind{what::pressure_cold, "tyre gauge", {}, kTyreGauge, 14 * kPsi, 140 * kPsi},
    ReadingKind{what::end_play, "dial indicator", kThrice, kDial, 0.000008, 0.0015, false, false, true},
    ReadingKind{what::pad_thickness, "caliper", kPads, kGauge, 0.0003, 0.025, true},
    ReadingKind{what::rotor_thickness, "micrometer", kRound, kMicrometer, 0.004, 0.06},
    ReadingKind{what::rotor_runout, "dial indicator", {}, kDial, 0.000008, 0.002, false, false, true},
    ReadingKind{what::lining_thickness, "depth gauge", kShoes, kTread, 0.0003, 0.025, true},
    ReadingKind{what::drum_diameter, "drum gauge", kDrum, kDrumGauge, 0.12, 0.46, false, false, true},
    ReadingKind{"magnet resistance", "multimeter", {}, kOhms, 0.8, 20},
    ReadingKind{what::magnet_current, "clamp meter", {}, kAmps, 0.3, 8},
    ReadingKind{"volts at the magnet", "multimeter", {}, kVolts, 1, 16},
    ReadingKind{what::hub_temperature, "infrared, on a matt spot", {}, kHeat, 243, 453, false, true, true},
    ReadingKind{what::line_pressure, "gauge at the bleeder", {}, kLineGauge, 100 * kPsi, 2200 * kPsi},
    ReadingKind{what::pressure_hold, "gauge at the bleeder", kHold, kLineGauge, 100 * kPsi, 2200 * kPsi},
    ReadingKind{what::fluid_moisture, "fluid tester", {}, kShare, 0.001, 0.1, false, false, true},
    ReadingKind{what::fluid_boiling, "boiling point tester", {}, kHeat, 373, 560},
    ReadingKind{what::battery_volts, "multimeter", kBattery, kVolts, 5, 16},
    ReadingKind{"slide travel", "rule", {}, kTape, 0.004, 0.15, true},
    ReadingKind{what::tongue_weight, "tongue scale", {}, kScale, 20, 3000},
    ReadingKind{"chain link wear", "caliper", {}, kGauge, 0.0001, 0.006, true, false, true},
    ReadingKind{"coupler ball size", "caliper", {}, kDrumGauge, 0.045, 0.08, true},
    ReadingKind{"ride height", "tape", kSides, kTape, 0.1, 1.5, true},
    ReadingKind{"axle spacing", "tape", kSides, kTape, 0.5, 3, true},
    ReadingKind{"shackle hole wear", "caliper", {}, kGauge, 0.0001, 0.01, true, false, true},
    ReadingKind{"volts at the lamp", "multimeter", kLamps, kVolts, 3, 16},
    ReadingKind{what::run_total, "hub counter", {}, kRoad, 1000, 2e9},
    ReadingKind{what::run_since, "owner's estimate", {}, kRoad, 1000, 1e9},
};

constexpr std::array<std::string_view, 3> kEveryCorner{what::tread_depth, what::pressure_cold, what::end_play};
constexpr std::array<std::string_view, 3> kDisc{what::pad_thickness, what::rotor_thickness, what::rotor_runout};
constexpr std::array<std::string_view, 2> kShoeBrake{what::lining_thickness, what::drum_diameter};
constexpr std::array<std::string_view, 3> kMagnet{"magnet resistance", what::magnet_current, "volts at the magnet"};
constexpr std::array<std::string_view, 1> kHub{what::hub_temperature};
constexpr std::array<std::string_view, 4> kHydraulics{what::line_pressure, what::pressure_hold, what::fluid_moisture,
                                                      what::fluid_boiling};
constexpr std::array<std::string_view, 1> kSurge{"slide travel"};
constexpr std::array<std::string_view, 1> kBreakaway{what::battery_volts};
constexpr std::array<std::string_view, 3> kDrawbar{what::tongue_weight, "coupler ball size", "chain link wear"};
constexpr std::array<std::string_view, 3> kFrame{"ride height", "axle spacing", "shackle hole wear"};
constexpr std::array<std::string_view, 1> kLights{"volts at the lamp"};
constexpr std::array<std::string_view, 2> kWhole{what::run_total, what::run_since};

constexpr std::array<std::string_view, 7> kNotMeasured{"not part of this visit",
                                                       "no tool here",
                                                       "no time left",
                                                       "customer declined",
                                                       "bad weather",
                                                       "tool failed",
                                                       "new part"};
constexpr std::array<std::string_view, 6> kNotAccessible{"wheel not taken off",     "seized",
                                                         "covered by dirt or rust", "part missing",
                                                         "no room for the tool",    "load in the way"};

bool of_tyre(std::string_view what) {
    return what == what::tread_depth || what == what::pressure_cold;
}

using WantedList = std::vector<WantedReading>;

void add(WantedList& out, std::span<const std::string_view> names, const Place& place) {
    for (const std::string_view name : names) out.push_back({reading_kind(name), place});
}

void add_corner(WantedList& out, const Axle& axle, const Place& place) {
    for (const std::string_view name : kEveryCorner) {
        if (axle.wheels == Wheels::dual && of_tyre(name) && place.wheel == Wheel::only) {
            for (const Wheel wheel : {Wheel::outer, Wheel::inner})
                out.push_back({reading_kind(name), Place::corner(place.axle, place.side, wheel)});
        } else {
            out.push_back({reading_kind(name), place});
        }
    }
    if (axle.brake == BrakeKind::hydraulic_disc) add(out, kDisc, place);
    if (axle.brake == BrakeKind::hydraulic_drum || axle.brake == BrakeKind::electric_drum) add(out, kShoeBrake, place);
    if (axle.brake == BrakeKind::electric_drum) add(out, kMagnet, place);
    add(out, kHub, place);
}

void add_actuator(WantedList& out, std::optional<Actuation> actuation, const Place& place) {
    if (actuation == Actuation::surge) add(out, kSurge, place);
    if (actuation != Actuation::electric && actuation != Actuation::none) add(out, kHydraulics, place);
    add(out, kBreakaway, place);
}

}  // namespace

std::span<const ReadingKind> all_reading_kinds() {
    return kKinds;
}

const ReadingKind* reading_kind(std::string_view what) {
    for (const ReadingKind& kind : kKinds)
        if (kind.what == what) return &kind;
    const bool hub = what.starts_with(what::hub_temperature);  // "hub temperature after road test"
    return hub ? reading_kind(what::hub_temperature) : nullptr;
}

std::vector<WantedReading> readings_wanted(const Trailer* trailer, const Place& place) {
    WantedList out;
    if (place.is_corner()) {
        if (trailer != nullptr && trailer->has(place))
            add_corner(out, trailer->axles[static_cast<std::size_t>(place.axle - 1)], place);
        return out;
    }
    switch (place.station) {
        case Station::drawbar:
            add(out, kDrawbar, place);
            break;
        case Station::actuator:
            add_actuator(out, trailer == nullptr ? std::nullopt : trailer->actuation, place);
            break;
        case Station::frame:
            add(out, kFrame, place);
            break;
        case Station::lights:
            add(out, kLights, place);
            break;
        case Station::trailer:
            add(out, kWhole, place);
            break;
    }
    return out;
}

std::span<const std::string_view> reasons_not_measured() {
    return kNotMeasured;
}
std::span<const std::string_view> reasons_not_accessible() {
    return kNotAccessible;
}

}  // namespace cotter
