// The table behind called_for.h: component and defect -> parts. Plain data of common practice; the first row that fits
// both counts, so special rows stand before general ones. Lists are parted by '|'; '=' before a word: the whole name.
// No defects: any. Where a part is 'asked' its number is entered by a person: never none, never one by default.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace cotter::called {

enum class Much : std::uint8_t {
    none,
    here,   // so many at each corner or station of the finding
    axle,   // so many at both sides of the axle
    tires,  // single wheels: both of the axle; dual wheels: the matched pair of the corner
    studs,  // by studs_called()
    asked
};

// Only on such an axle; a station and an axle that is not entered count as not known.
enum class Where : std::uint8_t { always, oil_hub, oil_cap, grease_hub, disc, no_disc, electric, grooved_spindle };

struct Part {
    std::string_view item;  // of replace_rules(); "lubricant": what this hub runs in
    Much much = Much::none;
    int each = 1;
    Where where = Where::always;
};

struct Row {
    std::string_view components, defects;
    std::array<Part, 6> parts;
    std::string_view note;
};

constexpr Part here(std::string_view item, Where where = Where::always) {
    return {item, Much::here, 1, where};
}
constexpr Part both(std::string_view item, int each = 1, Where where = Where::always) {
    return {item, Much::axle, each, where};
}
constexpr Part by(Much much, std::string_view item, int each = 1) {
    return {item, much, each};
}
constexpr Part asked(std::string_view item, Where where = Where::always) {
    return {item, Much::asked, 0, where};
}

constexpr Part kSeal = here("hub seal"), kLocks = here("spindle locks"), kLubricant = asked("lubricant"),
               kGasket = here("hub cap gasket", Where::oil_hub), kPads = both("brake pads"),
               kPadKit = both("pad hardware kit"), kShoes = both("brake shoes"), kShoeKit = both("shoe hardware kit"),
               kFluid = asked("brake fluid");

inline constexpr std::string_view kLookFirst = "find the cause first";

// Hub and bearing.
inline constexpr Row kHubRows[] = {
    {"bearing|cone|=cup|=cups", "end play|tight|clean", {kLocks, kLubricant}, "a new seal too if the hub comes off"},
    {"bearing|cone|=cup|=cups", "", {here("bearing set"), kSeal, kLocks, kLubricant, kGasket}, ""},
    {"cap gasket|cap o-ring", "", {here("hub cap gasket"), asked("hub oil", Where::oil_hub)}, ""},
    {"grease cap", "", {here("grease cap")}, "look at the spindle lock behind it"},
    {"hub cap", "oil mist", {}, kLookFirst},
    {"hub cap", "plug|vent", {here("hub cap plug")}, ""},
    {"hub cap", "gasket", {here("hub cap gasket"), asked("hub oil", Where::oil_hub)}, ""},
    {"hub cap", "fastener|screw", {asked("hub cap screws")}, ""},
    {"hub cap|=cap",
     "",
     {here("grease cap", Where::grease_hub), here("hub cap", Where::oil_cap), here("hub cap gasket", Where::oil_cap),
      asked("hub oil", Where::oil_hub)},
     "look at the spindle lock behind it"},
    {"hub oil", "", {asked("hub oil")}, "find out where it went, or what got in"},
    {"hub grease|wheel grease", "", {kSeal, kLocks, kLubricant}, "the hub comes off to pack it"},
    {"spindle lock|cotter|keeper|tab washer|lock washer|=lock", "", {kLocks}, "of the style that is fitted"},
    {"=seal|=seals|hub seal|wheel seal|oil seal|grease seal|bearing seal",
     "",
     {kSeal, kLocks, kLubricant, kGasket, here("wear sleeve", Where::grooved_spindle)},
     "linings that it soaked are renewed on both sides of the axle"},
    {"spindle", "groove", {here("wear sleeve"), kSeal, kLocks, kLubricant, kGasket}, ""},
    {"spindle", "", {asked("spindle repair")}, "ask the axle maker: sleeve, stub or axle"},
    {"=hub", "thrown", {kSeal, kLocks, kLubricant, kGasket}, "find out where it comes from"},
    {"=hub", "hot|rust", {}, kLookFirst},
    {"=hub", "", {here("hubs"), here("bearing set"), kSeal, kLocks, kLubricant, kGasket}, ""},
};

// Brakes, their fluid and their air.
inline constexpr Row kBrakeRows[] = {
    {"chamber",
     "",
     {here("air brake chambers"), here("clevis pins and cotters")},
     "same type on both sides; a spring brake is held by its own cage tool first"},
    {"slack", "", {here("slack adjusters"), here("clevis pins and cotters")}, "same type on both sides"},
    {"guide pin|pad hardware|pin kit|clip", "", {here("pad hardware kit")}, ""},
    {"bracket bolt", "", {asked("caliper bracket bolts")}, "count them"},
    {"backing plate", "", {here("backing plate assembly")}, "left and right differ"},
    {"hardware|return spring|brake spring|shoe spring|adjuster",
     "plate",
     {here("backing plate assembly")},
     "left and right differ"},
    {"hardware|return spring|brake spring|shoe spring|adjuster",
     "",
     {here("pad hardware kit", Where::disc), here("shoe hardware kit", Where::no_disc)},
     ""},
    {"pad", "oil|grease|soaked", {kPads, kPadKit}, "find the leak first"},
    {"pad", "", {kPads, kPadKit}, ""},
    // On an electric brake only the hub can have leaked onto the lining.
    {"shoe",
     "oil|grease|soaked",
     {kShoes, kShoeKit, here("hub seal", Where::electric), here("spindle locks", Where::electric),
      asked("lubricant", Where::electric)},
     "find the leak first"},
    {"shoe", "", {kShoes, kShoeKit}, ""},
    {"lining",
     "",
     {both("brake pads", 1, Where::disc), both("pad hardware kit", 1, Where::disc),
      both("brake shoes", 1, Where::no_disc), both("shoe hardware kit", 1, Where::no_disc)},
     ""},
    {"rotor|=disc|brake disc",
     "",
     {both("rotors"), kPads, kPadKit},
     "bearings and seals with them where rotor and hub are one piece"},
    {"drum", "", {both("drums"), kShoes, kShoeKit}, "bearings and seals with them where drum and hub are one piece"},
    {"magnet", "lead", {here("sealed splices"), asked("wire")}, ""},
    {"magnet", "low current", {}, kLookFirst},
    {"magnet", "arm", {here("magnet lever arms")}, ""},
    {"magnet", "", {both("brake magnets"), both("sealed splices", 2)}, "look at the drum's magnet face"},
    {"caliper", "slide", {here("pad hardware kit")}, "free and grease the slides"},
    {"caliper", "wrong side", {}, "change the two over and bleed"},
    {"caliper", "oil on", {}, kLookFirst},
    {"caliper",
     "",
     {here("calipers"), here("banjo washers"), kFluid},
     "one is enough; both of the axle are usually offered"},
    {"banjo", "", {here("banjo washers")}, ""},
    {"hose", "unsupported", {asked("brake line clips")}, ""},
    {"hose", "", {both("flex hoses"), both("banjo washers"), kFluid}, ""},
    {"brake line|pipe|hydraulic line|=line", "unsupported", {asked("brake line clips")}, ""},
    {"brake line|pipe|hydraulic line|=line",
     "",
     {asked("brake line"), asked("brake line fittings"), asked("brake line clips"), kFluid},
     ""},
    {"brake fluid|hydraulic fluid", "", {kFluid}, ""},
    {"reservoir", "cap", {here("reservoir caps")}, ""},
    {"reservoir", "", {here("reservoirs"), kFluid}, ""},
    {"overrun cable|brake cable", "", {both("overrun cables")}, "adjust the brakes again"},
};

// Wheels, running gear, coupling, electrics.
inline constexpr Row kOtherRows[] = {
    {"tyre|tire", "valve stem", {here("valve stems")}, ""},
    {"tyre|tire", "low or flat|leaking|low pressure|underinflated", {}, kLookFirst},
    {"tyre|tire", "too weak|size or type", {both("tyres"), both("valve stems")}, "old tires: disposal of each"},
    {"tyre|tire",
     "",
     {by(Much::tires, "tyres"), by(Much::tires, "valve stems")},
     "find out what wore them; old tires: disposal of each"},
    {"stud",
     "",
     {by(Much::studs, "wheel studs"), by(Much::studs, "wheel nuts")},
     "a bad stud and both its neighbors; more than two bad: all of the hub"},
    {"wheel nut|lug nut|=nuts", "one missing", {here("wheel nuts")}, "look at the studs"},
    {"wheel nut|lug nut|=nuts",
     "several|missing|galled|cross|wrong seat|stripped|damaged",
     {asked("wheel nuts")},
     "count them; look at the studs"},
    {"wheel nut|lug nut|=nuts", "", {}, "torque all of them, check again"},
    {"wheel bolt|lug bolt", "", {asked("wheel bolts")}, "count them; the right length"},
    {"=wheel|=rim", "seat corroded|paint|oil", {}, "clean the faces to bare, dry metal"},
    {"=wheel|=rim", "", {here("wheels"), asked("wheel nuts")}, "same rating and offset, and nuts right for it"},
    {"=spring|=springs|leaf spring", "hanger", {asked("frame repair")}, "quoted by a specialist"},
    {"=spring|=springs|leaf spring",
     "",
     {both("springs"), asked("U-bolts"), both("suspension bolts and bushings")},
     "tie plates too where bent"},
    {"u-bolt", "", {asked("U-bolts")}, "all of that spring seat; count them"},
    {"shackle|equali|bushing", "equali", {asked("equalizers"), both("suspension bolts and bushings")}, ""},
    {"shackle|equali|bushing", "", {both("suspension bolts and bushings")}, ""},
    {"chain", "hook latch", {asked("chain hooks")}, ""},
    {"chain", "too long", {}, "shorten them by the hook, never with a bolt or a twist"},
    {"chain", "anchor", {asked("frame repair")}, "quoted by a specialist"},
    {"chain", "", {by(Much::here, "safety chains", 2)}, ""},
    {"coupler", "bolts", {asked("coupler bolts")}, ""},
    {"coupler", "", {here("couplers")}, ""},
    {"=ball|hitch ball", "", {here("hitch balls")}, ""},
    {"=jack|tongue jack", "", {here("tongue jacks")}, ""},
    {"battery", "charge", {asked("wire"), asked("sealed splices")}, ""},
    {"battery", "", {here("breakaway battery"), here("fuses")}, ""},
    {"breakaway", "hooked", {}, "hook the cable to the tow vehicle's frame"},
    {"breakaway", "", {here("breakaway switches"), here("fuses")}, ""},
    {"lamp|reflector|light", "", {asked("lamps and reflectors"), asked("sealed splices")}, "count them"},
    {"wiring|wire", "splice", {here("sealed splices")}, ""},
    {"wiring|wire", "chafed|cut|broken", {asked("sealed splices"), asked("wire")}, ""},
    {"wiring|wire", "", {}, kLookFirst},
    {"torsion", "", {here("torsion axles")}, "by an axle shop; bolts and brakes are asked for"},
    {"axle beam", "", {here("axle beams")}, "by an axle shop; U-bolts and brakes are asked for"},
    {"=frame", "bolts", {asked("frame bolts")}, "count them"},
    {"=frame", "", {asked("frame repair")}, "quoted by a specialist"},
};

}  // namespace cotter::called
