// The readings that judging knows: their names as records hold them, what they are measured in, and which component
// they belong to. A reading of any other name is kept and judged only by limits of that very name.
//
// A reading stands at the corner it was taken at, or, when one round over several corners was one reading, at the
// trailer with points whose `where` begins "axle 1 left" (or "axle 1" for a whole axle).
#pragma once

#include <optional>
#include <string_view>

#include "core/base/amount.h"

namespace cotter::what {

inline constexpr std::string_view pad_thickness = "pad thickness";  // where: "inner, …" and "outer, …"; friction only
inline constexpr std::string_view lining_thickness = "lining thickness";  // drum shoes, at the shoe's centre
inline constexpr std::string_view rotor_thickness = "rotor thickness";    // 8 points round one circle
inline constexpr std::string_view rotor_machine_to = "rotor thickness after machining";  // planned; limits use it too
inline constexpr std::string_view rotor_cut = "rotor cut per side";
inline constexpr std::string_view rotor_variation = "rotor thickness variation";  // computed; limits bound it
inline constexpr std::string_view rotor_runout = "rotor runout";
inline constexpr std::string_view drum_diameter = "drum diameter";
inline constexpr std::string_view drum_out_of_round = "drum out-of-round";  // computed
inline constexpr std::string_view pad_when_new = "pad thickness when new";
inline constexpr std::string_view pad_imbalance = "pad imbalance";      // computed: inner against outer
inline constexpr std::string_view axle_imbalance = "lining imbalance";  // computed: left against right
inline constexpr std::string_view end_play = "end play";
inline constexpr std::string_view tread_depth = "tread depth";
inline constexpr std::string_view tyre_date = "tyre date code";      // the TIN's last four digits as they stand: 0523
inline constexpr std::string_view tyre_age = "tyre age";             // computed, days
inline constexpr std::string_view load_index = "tyre load index";    // single, or for duals the dual one
inline constexpr std::string_view load_rating = "tyre load rating";  // as a mass; instead of the index
inline constexpr std::string_view pressure_cold = "tyre pressure, cold";
inline constexpr std::string_view pressure_hot = "tyre pressure, hot";
inline constexpr std::string_view hub_temperature =
    "hub temperature";  // also "hub temperature after …"; with "ambient"
inline constexpr std::string_view hub_over_mates = "hub temperature over its mates";  // computed, K
inline constexpr std::string_view pressure_hold = "pressure hold";         // where: "start, …", "after 4 min", psi
inline constexpr std::string_view hold_drop = "pressure drop while held";  // computed, %
inline constexpr std::string_view line_pressure = "line pressure at full demand";
inline constexpr std::string_view fluid_moisture = "brake fluid moisture";
inline constexpr std::string_view fluid_boiling = "brake fluid boiling point";
inline constexpr std::string_view reservoir_fill = "master cylinder fill";          // share of full
inline constexpr std::string_view battery_volts = "breakaway battery under load";   // where: "rest", "after 15 min"; V
inline constexpr std::string_view battery_held = "breakaway brakes held";           // how long, time
inline constexpr std::string_view battery_capacity = "breakaway battery capacity";  // A·h
inline constexpr std::string_view magnet_current = "magnet current";                // A each
inline constexpr std::string_view axle_weight = "axle weight";                      // trailer, where: "axle 1"
inline constexpr std::string_view wheel_weight = "wheel weight";  // corner, or trailer with where: "axle 1 left"
inline constexpr std::string_view tongue_weight = "tongue weight";
inline constexpr std::string_view tongue_share = "tongue share";  // computed, %
inline constexpr std::string_view tow_vehicle_rating = "tow vehicle GVWR";
inline constexpr std::string_view run_since = "distance run since the last visit";  // trailer; instrument: its source
inline constexpr std::string_view run_total = "hub counter";                        // trailer; total distance

}  // namespace cotter::what

namespace cotter {

struct KnownReading {
    std::string_view name;
    std::string_view component;    // "brake", "hub", "tyre", …
    Quantity quantity;             // units of another quantity are refused
    double least = 0, most = 0;    // SI; a value outside is a slip of the pen or of the unit
    std::string_view repaired_by;  // words of a finding's component whose repair makes the reading out of date
};

// By name; names that only begin with a known one ("hub temperature after road test") are that one. nullptr: unknown.
[[nodiscard]] const KnownReading* known_reading(std::string_view name);
[[nodiscard]] std::string_view component_of(std::string_view name);  // "other" when unknown

}  // namespace cotter
