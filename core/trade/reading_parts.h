// The parts of the table of readings, with the points, units and steps that they share. For reading_specs.cpp.
#pragma once

#include <array>

#include "core/trade/reading_spec.h"

namespace cotter {

[[nodiscard]] std::span<const ReadingSpec> wheel_readings();   // tires, wheel bearings
[[nodiscard]] std::span<const ReadingSpec> brake_readings();   // at the corner's brake
[[nodiscard]] std::span<const ReadingSpec> system_readings();  // hubs after a drive, what brings the brakes on
[[nodiscard]] std::span<const ReadingSpec> whole_readings();   // coupling, lights, suspension, frame, load, use

namespace specs {

using Points = std::string_view;

inline constexpr std::array<Points, 4> kPads{"inner, leading end", "inner, trailing end", "outer, leading end",
                                             "outer, trailing end"};
inline constexpr std::array<Points, 8> kRound{"0°", "45°", "90°", "135°", "180°", "225°", "270°", "315°"};
// Spelled as older packets hold them.
inline constexpr std::array<Points, 4> kShoes{"front shoe, centre", "front shoe, thinnest", "rear shoe, centre",
                                              "rear shoe, thinnest"};
inline constexpr std::array<Points, 4> kDrum{"mouth, 0°", "mouth, 90°", "deep, 0°", "deep, 90°"};
inline constexpr std::array<Points, 3> kThrice{"first", "second", "third"};
inline constexpr std::array<Points, 3> kGrooves{"inner groove", "middle groove", "outer groove"};
inline constexpr std::array<Points, 2> kHold{"start, after settling", "after 5 min"};
inline constexpr std::array<Points, 4> kBattery{"rest", "after 1 min", "after 5 min", "after 15 min"};
inline constexpr std::array<Points, 2> kSides{"left", "right"};
inline constexpr std::array<Points, 2> kDuals{"outer", "inner"};
inline constexpr std::array<Points, 2> kLinings{"first shoe or pad", "second shoe or pad"};
inline constexpr std::array<Points, 2> kAir{"brakes released", "brakes applied"};
inline constexpr std::array<Points, 4> kLamps{"tail lamps", "stop lamps", "left turn", "right turn"};

inline constexpr std::array<UnitStep, 2> kGauge{{{"mm", "0.1"}, {"[in_i]", "1/32"}}};
inline constexpr std::array<UnitStep, 2> kTread{{{"[in_i]", "1/32"}, {"mm", "0.1"}}};
inline constexpr std::array<UnitStep, 2> kMicrometer{{{"mm", "0.01"}, {"[in_i]", "0.0005"}}};
inline constexpr std::array<UnitStep, 2> kDial{{{"[in_i]", "0.001"}, {"mm", "0.01"}}};
inline constexpr std::array<UnitStep, 2> kDrumGauge{{{"[in_i]", "0.005"}, {"mm", "0.1"}}};
inline constexpr std::array<UnitStep, 2> kTape{{{"[in_i]", "1/16"}, {"mm", "1"}}};
inline constexpr std::array<UnitStep, 2> kLongTape{{{"[ft_i]", "1"}, {"m", "0.1"}}};
inline constexpr std::array<UnitStep, 3> kTireGauge{{{"[psi]", "1"}, {"kPa", "5"}, {"bar", "0.1"}}};
inline constexpr std::array<UnitStep, 3> kAirGauge{{{"[psi]", "1"}, {"kPa", "5"}, {"bar", "0.1"}}};
inline constexpr std::array<UnitStep, 2> kLineGauge{{{"[psi]", "20"}, {"bar", "1"}}};
inline constexpr std::array<UnitStep, 2> kHeat{{{"Cel", "1"}, {"[degF]", "1"}}};
inline constexpr std::array<UnitStep, 1> kVolts{{{"V", "0.1"}}};
inline constexpr std::array<UnitStep, 1> kAmps{{{"A", "0.1"}}};
inline constexpr std::array<UnitStep, 1> kOhms{{{"Ohm", "0.1"}}};
inline constexpr std::array<UnitStep, 1> kShare{{{"%", "1"}}};
inline constexpr std::array<UnitStep, 1> kCharge{{{"A.h", "1"}}};
inline constexpr std::array<UnitStep, 1> kAngle{{{"deg", "0.5"}}};
inline constexpr std::array<UnitStep, 2> kScale{{{"[lb_av]", "10"}, {"kg", "5"}}};
inline constexpr std::array<UnitStep, 2> kRoad{{{"[mi_i]", "1"}, {"km", "1"}}};

inline constexpr double kPsi = 6894.757;
inline constexpr double kTon = 1000;

using enum Quantity;
inline constexpr auto kTime = Quantity::time;

// What is known of a reading whoever takes it, and how it is asked for.
struct Kept {
    std::string_view component;
    Quantity quantity;
    double lowest, highest;
    std::string_view renewed_by{};
};
struct Asked {
    std::string_view tool;
    std::span<const std::string_view> points;
    std::span<const UnitStep> units;
    double least, most;
};
inline constexpr unsigned kFractions = 1, kSign = 2, kHigh = 4;

constexpr ReadingSpec taken(std::string_view name, const Kept& kept, const Asked& asked, unsigned how = 0,
                            ReadingUse use = ReadingUse::taken) {
    return {name,
            kept.component,
            kept.quantity,
            kept.lowest,
            kept.highest,
            kept.renewed_by,
            asked.tool,
            asked.points,
            asked.units,
            asked.least,
            asked.most,
            (how & kFractions) != 0,
            (how & kSign) != 0,
            (how & kHigh) != 0,
            use};
}
constexpr ReadingSpec extra(std::string_view name, const Kept& kept, const Asked& asked, unsigned how = 0) {
    return taken(name, kept, asked, how, ReadingUse::extra);
}
constexpr ReadingSpec computed(std::string_view name, const Kept& kept, unsigned how = 0) {
    return taken(name, kept, {{}, {}, {}, 0, 0}, how, ReadingUse::computed);
}
constexpr ReadingSpec replaced(std::string_view name, const Kept& kept, unsigned how = 0) {
    return taken(name, kept, {{}, {}, {}, 0, 0}, how, ReadingUse::replaced);
}

}  // namespace specs

}  // namespace cotter
