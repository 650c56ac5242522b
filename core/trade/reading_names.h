// The names of readings, as records hold them. Names that packets hold keep their spelling; new ones are US English.
//
// A reading stands at the corner it was taken at, or, when one round over several corners was one reading, at the
// trailer with points whose `where` begins "axle 1 left" (or "axle 1" for a whole axle).
#pragma once

#include <string_view>

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

inline constexpr std::string_view magnet_resistance = "magnet resistance";
inline constexpr std::string_view magnet_volts = "volts at the magnet";
inline constexpr std::string_view magnets_total = "current of all magnets";  // at the plug; proves no single wheel
inline constexpr std::string_view slide_travel = "slide travel";             // of a surge or overrun coupling
inline constexpr std::string_view chain_wear = "chain link wear";
inline constexpr std::string_view ball_measured = "coupler ball size";
inline constexpr std::string_view ride_height = "ride height";    // where: left, right
inline constexpr std::string_view axle_spacing = "axle spacing";  // where: left, right
inline constexpr std::string_view shackle_wear = "shackle hole wear";
inline constexpr std::string_view lamp_volts = "volts at the lamp";
inline constexpr std::string_view dual_gap = "dual gap";                              // between the two tires
inline constexpr std::string_view dual_diameters = "dual tire diameters";             // where: "outer", "inner"
inline constexpr std::string_view dual_difference = "dual tyre diameter difference";  // computed
inline constexpr std::string_view brake_force = "combination brake force";            // % of gross weight
inline constexpr std::string_view stop_distance = "combination stop from 20 mph";     // length
inline constexpr std::string_view push_rod_stroke = "push-rod stroke";                // applied
inline constexpr std::string_view tank_pressure = "tank pressure";                    // while strokes are read
inline constexpr std::string_view wedge_movement = "wedge brake scribe movement";     // lining movement at the hole
inline constexpr std::string_view air_lining = "air brake lining thickness";          // drum center, or pad
inline constexpr std::string_view air_drop = "air pressure drop in 1 min";            // where: released, applied
inline constexpr std::string_view air_spring_drop = "air spring pressure drop in 5 min";
inline constexpr std::string_view actuator_volts = "volts at the actuator";    // under load
inline constexpr std::string_view coupling_wear = "pintle horn or eye wear";   // share of section, %
inline constexpr std::string_view slider_movement = "tongue slider movement";  // adjustable drawbar
inline constexpr std::string_view torsion_angle = "torsion arm angle";         // below level: negative
inline constexpr std::string_view axle_offset = "coupler to axle end";         // where: left, right
inline constexpr std::string_view tracking = "tracking to either side";
inline constexpr std::string_view u_bolt_thread = "U-bolt thread past the nut";
inline constexpr std::string_view guard_height = "rear guard height above ground";
inline constexpr std::string_view guard_side = "rear guard distance from side";  // where: left, right
inline constexpr std::string_view guard_rear = "rear guard distance forward of rear";
inline constexpr std::string_view guard_member = "rear guard member height";

}  // namespace cotter::what
