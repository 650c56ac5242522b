// The operations that a shop books hours for: plain data, as the trade books work. Lists are parted by '|'.
#pragma once

#include <string_view>

#include "core/base/fields.h"

namespace cotter {

enum class OpPer { trailer, axle, corner, piece };
constexpr auto names(OpPer) {
    return name_list("trailer", "axle", "corner", "piece");
}

struct Operation {
    std::string_view id;     // "pads": what the shop's hours are kept under
    std::string_view title;  // "Pads"
    OpPer per;
    std::string_view items;     // needs that call for it, parted by '|'
    std::string_view not_with;  // operations that do its work too, at the same place
    bool wheel_off;             // the wheel comes off for it
    std::string_view includes;  // said to whoever enters the hours
};

// As the trade books work; what shares its work stands in `not_with` on both sides.
inline constexpr Operation kOperations[] = {
    {"set-up", "Set-up, chock and lift", OpPer::trailer, "", "", false, "chocks, lifting points, stands"},
    {"set-up-axle", "Set-up, each axle", OpPer::axle, "", "", false, "lifting this axle and setting it on stands"},
    {"wheel", "Wheel off and on", OpPer::corner, "", "", false, "wheel off, faces cleaned, nuts torqued in stages"},
    {"bearings", "Bearings and seal", OpPer::corner, "bearing set|hub seal|spindle locks|hubs|wear sleeve", "", true,
     "hub off and on, end play set"},
    {"pads", "Pads", OpPer::corner, "brake pads|pad hardware kit", "rotor|caliper", true, "caliper off and on"},
    {"rotor", "Rotor", OpPer::corner, "rotors", "pads|caliper", true, "caliper off and on"},
    {"shoes", "Shoes", OpPer::corner, "brake shoes|shoe hardware kit", "drum|magnet|plate", true,
     "drum off and on, adjusted"},
    {"plate", "Backing plate assembly", OpPer::corner, "backing plate assembly", "shoes|drum|magnet", true,
     "drum off and on"},
    {"drum", "Drum", OpPer::corner, "drums", "shoes|plate|magnet", true, "drum off and on"},
    {"magnet", "Magnet", OpPer::corner, "brake magnets|magnet lever arms", "shoes|plate|drum", true, "drum off and on"},
    {"splice", "Sealed splice", OpPer::piece, "sealed splices", "", false, "joint and strain relief"},
    {"caliper", "Caliper", OpPer::corner, "calipers", "pads|rotor", true, "without bleeding"},
    {"hose", "Flex hose", OpPer::corner, "flex hoses", "", true, "without bleeding"},
    {"line", "Brake line", OpPer::piece, "brake line fittings", "", false, "each run, flared and clipped"},
    {"bleed", "Fill and bleed", OpPer::trailer, "brake fluid", "", false, "once a visit, with the hold test"},
    {"springs", "Springs", OpPer::corner, "springs", "u-bolts|bushings", false, "axle supported, U-bolts torqued"},
    {"u-bolts", "U-bolts", OpPer::corner, "U-bolts", "springs|bushings", false, "axle supported, torqued"},
    {"bushings", "Bolts and bushings", OpPer::corner, "suspension bolts and bushings", "springs|u-bolts", false,
     "axle supported"},
    {"tire", "Tire changed and balanced", OpPer::piece, "tyres", "", true, "a new stem"},
    {"lamp", "Lamp", OpPer::piece, "lamps and reflectors", "", false, "joint sealed"},
    {"breakaway", "Breakaway battery or switch", OpPer::trailer, "breakaway battery|breakaway switches", "", false,
     "with the 15-minute test"},
};

}  // namespace cotter
