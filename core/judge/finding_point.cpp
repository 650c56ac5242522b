// Components, and words of defects that tell between several points.
#include "core/judge/finding_point.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"

namespace cotter {

namespace {

using enum PointId;

struct Row {
    std::string_view component;
    std::string_view defect;  // a part of it; empty: any
    std::array<PointId, 2> points;
};

// Rows of one component: the first whose defect fits counts.
constexpr std::array kRows{
    Row{"tire", "low", {tire_press, tire_press}},
    Row{"tire", "pressure", {tire_press, tire_press}},
    Row{"tire", "worn", {tire_tread, tire_tread}},
    Row{"tire", "cupped", {tire_tread, tire_tread}},
    Row{"tire", "flat spot", {tire_tread, tire_tread}},
    Row{"tire", "too old", {tire_age, tire_age}},
    Row{"tire", "size or type", {tire_id, tire_id}},
    Row{"tire", "too weak", {tire_load, tire_load}},
    Row{"tire", "", {tire_face, tire_face}},
    Row{"wheel", "", {wheel_look, wheel_look}},
    Row{"wheel nuts", "", {wheel_nuts, wheel_nuts}},
    Row{"wheel stud", "", {wheel_nuts, wheel_nuts}},
    Row{"hub cap", "", {hub_leak, hub_leak}},
    Row{"grease cap", "", {hub_leak, hub_leak}},
    Row{"seal", "", {hub_leak, hub_leak}},
    Row{"hub oil", "", {hub_oil, hub_leak}},
    Row{"hub", "oil", {hub_leak, hub_leak}},
    Row{"hub", "hot", {hub_heat, hub_play}},
    Row{"hub", "", {hub_parts, hub_play}},
    Row{"hub grease", "", {hub_parts, hub_leak}},
    Row{"bearing", "play", {hub_play, hub_play}},
    Row{"bearing", "tight", {hub_play, hub_play}},
    Row{"bearing", "", {hub_parts, hub_play}},
    Row{"spindle", "", {hub_parts, hub_play}},
    Row{"rotor", "", {disc_rotor, disc_rotor}},
    Row{"drum", "", {drum_drum, drum_drum}},
    Row{"shoes", "", {drum_shoe, air_lining}},
    Row{"linings", "", {drum_shoe, air_lining}},
    Row{"pads", "", {disc_pad, air_lining}},
    Row{"brake hardware", "", {brk_parts, brk_parts}},
    Row{"bracket bolts", "", {brk_parts, brk_parts}},
    Row{"guide pin", "", {hyd_corner, brk_parts}},
    Row{"caliper", "", {hyd_corner, brk_parts}},
    Row{"wheel cylinder", "", {hyd_corner, hyd_corner}},
    Row{"brake hose", "", {hyd_corner, act_leak}},
    Row{"brake line", "", {hyd_corner, act_leak}},
    Row{"brake magnet", "", {elec_mag, elec_mag}},
    Row{"brakes", "", {brk_drive, brk_drive}},
    Row{"brake fluid", "low", {act_level, act_level}},
    Row{"brake fluid", "below", {act_level, act_level}},
    Row{"brake fluid", "", {act_fluid, act_fluid}},
    Row{"reservoir", "", {act_leak, act_leak}},
    Row{"brake actuator", "leak", {act_leak, act_leak}},
    Row{"brake actuator", "", {act_power, act_leak}},
    Row{"surge actuator", "", {act_surge, act_surge}},
    Row{"breakaway battery", "", {away_batt, away_batt}},
    Row{"breakaway switch", "", {away_cable, away_cable}},
    Row{"coupler", "latch", {cpl_fit, cpl_fit}},
    Row{"coupler", "ball size", {cpl_fit, cpl_fit}},
    Row{"coupler", "", {cpl_wear, cpl_wear}},
    Row{"safety chains", "", {cpl_chain, cpl_chain}},
    Row{"jack", "", {cpl_jack, cpl_jack}},
    Row{"spring", "", {susp_leaf, susp_air}},
    Row{"shackles and equalizer", "", {susp_leaf, susp_leaf}},
    Row{"u-bolts", "", {susp_leaf, susp_leaf}},
    Row{"torsion axle", "", {susp_tors, susp_tors}},
    Row{"frame", "", {frame_main, frame_main}},
    Row{"frame and springs", "", {frame_main, frame_main}},
    Row{"plug", "", {lamp_plug, lamp_plug}},
    Row{"wiring", "", {lamp_plug, lamp_plug}},
    Row{"lamps and reflectors", "reflector", {lamp_refl, lamp_refl}},
    Row{"lamps and reflectors", "", {lamp_base, lamp_base}},
    Row{"lamps", "", {lamp_base, lamp_base}},
    Row{"load", "", {load_safe, load_safe}},
};

// As the table spells it today.
std::string today(std::string_view component) {
    std::string text = ascii_lower(component);
    if (text == "tyre") return "tire";
    if (text == "shackles and equaliser") return "shackles and equalizer";
    return text;
}

}  // namespace

std::vector<PointId> points_of_finding(std::string_view component, std::string_view defect) {
    const std::string named = today(component), wrong = ascii_lower(defect);
    for (const Row& row : kRows)
        if (row.component == named && wrong.find(row.defect) != std::string::npos) {
            if (row.points[0] == row.points[1]) return {row.points[0]};
            return {row.points[0], row.points[1]};
        }
    return {};
}

}  // namespace cotter
