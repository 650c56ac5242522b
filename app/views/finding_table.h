// The tables behind finding_words.h: plain data, lists parted by '|'. Trade practice; limits are judged elsewhere.
#pragma once

#include <string_view>

#include "core/survey/words.h"

namespace cotter {

struct ComponentRow {
    std::string_view component, defects, remedies;
};

inline constexpr std::string_view kAnyDefects = "worn|cracked|loose|missing|bent|corroded|leaking|in order";

// By the way through a trailer: wheel end from outside in, brake, lines, actuation, running gear, frame, electrics.
inline constexpr ComponentRow kComponentTable[] = {
    {"tyre",
     "worn to the wear bars|one shoulder worn|both shoulders worn|centre worn|cupped|flat spot|cord showing|bulge|"
     "cut to the cord|age cracks|low or flat|leaking|too old|size or type differs|too weak for the axle|"
     "touches its mate or the body|valve stem cracked|in order",
     "replace the pair of the axle|find the cause first, then replace the pair|set cold pressure from the placard|"
     "replace the valve"},
    {"wheel",
     "cracked|stud hole elongated|flange bent|weld repair|seat corroded|paint under the seat|wrong centre or seat|"
     "runs out of true|no defect in view",
     "replace the wheel|clean the faces to bare, dry metal"},
    {"wheel nuts",
     "loose|one missing|several missing|rust trail: has been loose|seat galled|cross-threaded|oil on the thread|"
     "wrong seat|torqued and marked",
     "torque all, re-check|fit new nuts, torque all, re-check|clean seats and threads, torque all"},
    {"wheel stud", "broken|stripped|stretched|thread damaged|too short for the nut",
     "replace it and its neighbours|replace all studs of the hub"},
    {"hub cap",
     "cracked|window cloudy|window cracked|plug missing|vent blocked|gasket weeps|fastener missing|oil mist|in order",
     "replace the cap with its gasket|renew the gasket|renew the plug|clean, look again after a trip"},
    {"hub oil", "below the line|empty|over-full|milky: water in it|black or burnt|metal flakes|at the line",
     "find the leak, then fill to the line|drain, inspect the bearings, refill|drain to the line"},
    {"grease cap", "loose|missing|dented", "fit a new cap and cotter"},
    {"hub grease", "dried out|water in it|mixed kinds|pushed into the brake|discoloured",
     "clean, inspect, repack with one grease"},
    {"seal", "wet|lip torn|lip dry|cocked|driven too deep|wrong size|streak below it",
     "new seal, find out why|new seal and wear sleeve"},
    {"bearing",
     "pitted|spalled|brinelled|blue from heat|rust or etching|cage bent|cup loose in the hub|too much end play|"
     "tight|cone and cup do not match|smooth",
     "replace cone and cup, inner and outer|clean, repack, set the end play"},
    {"spindle",
     "galled|blue from heat|stepped|thread damaged|bent|crack at the flange|keyway worn|groove under the seal|"
     "journals smooth",
     "ask the axle maker: sleeve, stub or axle|polish the seal land or fit a sleeve"},
    {"hub",
     "cracked|cup spins in its bore|flange runs out|rust under the flange|stud hole worn|oil thrown over the wheel",
     "replace the hub|open the hub, renew the seal"},
    {"rotor",
     "heat checks|crack to the edge|scored in rings|worn lip at the edge|under its discard size|thickness varies|"
     "runs out|hot spots|surface rust|pitted by rust|rust between the faces|in order",
     "replace both of the axle|measure, machine only if enough is left|measure again at the next service"},
    {"drum",
     "over its largest size|scored|out of round|bell-mouthed|hard spots|cracked|armature face grooved|part missing",
     "replace both of the axle|machine within the limit, both of the axle"},
    {"shoes",
     "lining thin|uneven left and right|tapered|cracked|loose from the shoe|oil or grease on them|glazed|in order",
     "replace the axle set with hardware|clean and adjust"},
    {"brake hardware", "spring weak|spring missing|adjuster seized|backing plate worn|backing plate loose",
     "new hardware kit|replace the backing plate assembly"},
    {"brake magnet", "worn to the indicator|worn unevenly|open circuit|short circuit|low current|lead chafed|arm bent",
     "replace both of the axle|repair the lead with a sealed joint"},
    {"pads",
     "thin|thin and tapered|inner and outer differ|cracked|coming off the plate|oil or grease on them|glazed|"
     "fitted the wrong way|wrong part|plate rusted|in order",
     "replace the pad set of the axle|replace the pad set, free the guide pins|find the leak first, then replace"},
    {"caliper",
     "leaks|piston seized|slide seized|boot torn|piston pitted|bleeder seized|on the wrong side|rusted|oil on it|"
     "in order",
     "replace both of the axle|free and grease the slides|renew the seals"},
    {"guide pin", "dry|bent|grooved|rusted|wrong length|boot missing|clip missing",
     "new hardware kit|clean and grease"},
    {"bracket bolts", "loose|missing|wrong thread|stretched", "new bolts, torque to the maker's figure"},
    {"brake hose", "chafed|cracked|swells under pressure|weeps|kinked|twisted|unsupported|wrong hose",
     "replace the hoses of the axle|clip it clear of what it rubs on"},
    {"brake line", "rusted at the fitting|rusted along its run|chafed|weeps|kinked|unsupported|joined with a sleeve",
     "replace the line, flare new ends|clean, clip and look again"},
    {"brake fluid", "below its mark|low|over-full|dark|water in it|wrong kind|mixed kinds|at its mark",
     "flush and fill from a sealed bottle|find the leak, then fill"},
    {"reservoir", "cap vent blocked|cap missing|cracked|leaks", "replace the cap|replace the reservoir"},
    {"surge actuator",
     "too much travel|slide seized|slide worn|damper weak|lever tripped|cable frayed|reverse device dead",
     "adjust the brakes first, then judge it|rebuild or replace the unit"},
    {"brake actuator",
     "does not run|builds pressure slowly|low pressure|pressure falls|ground poor|set to the wrong mode|leaks",
     "check power and ground first|replace the unit"},
    {"breakaway battery", "dead|low under load|no charge line|missing", "replace the battery|repair the charge line"},
    {"breakaway switch", "corroded|pin seized|cable damaged|cable hooked on wrongly|missing",
     "replace switch and cable"},
    {"coupler", "cracked|latch does not hold|worn|wrong ball size|bolts loose|weld repair|in order",
     "adjust the latch|replace the coupler"},
    {"safety chains", "missing|link worn|hook latch missing|repaired wrongly|too long|too short|anchor cracked",
     "replace the pair"},
    {"jack", "bent|slips|pin missing|weld cracked|foot missing", "replace the jack"},
    {"spring", "leaf broken|leaf missing|leaf displaced|sagged|hanger cracked", "replace both of the axle"},
    {"shackles and equaliser", "bolt worn|hole worn|bushing gone|equaliser worn|equaliser upside down",
     "new bolts and bushings|replace the equaliser"},
    {"U-bolts", "loose|broken|thread end rusted", "new U-bolts, torque, re-torque after load"},
    {"torsion axle", "arm sagged|arm loose|rubber coming out|bracket cracked|tube bent", "replace the axle"},
    {"axle beam", "bent|cracked weld|out of square|shifted", "to the axle shop"},
    {"frame", "cracked|broken|sagging|bolts loose|flange holed|rusted through|weld over a crack",
     "engineered repair only|tighten and look again"},
    {"plug", "pins corroded|loose|housing broken", "clean, protect|replace the plug"},
    {"wiring", "chafed|splice not sealed|ground poor|hangs loose|circuit dead",
     "repair with sealed joints|clip it clear"},
    {"lamps and reflectors", "lamp out|lens broken|reflector missing|wrong function", "repair|replace the lamp"},
    {"data plate", "not legible|missing|does not match|legible, VIN checks", "clean it|ask the maker for a new one"},
};

struct SlotRow {
    Slot slot;
    std::string_view usual;  // "component:defect", the most frequent first, at most 10
};

inline constexpr SlotRow kSlotTable[] = {
    {Slot::whole,
     "tyre:low or flat|frame:cracked|frame:sagging|spring:sagged|axle beam:out of square|"
     "lamps and reflectors:lamp out|wheel nuts:one missing|jack:bent"},
    {Slot::data_plate,
     "data plate:legible, VIN checks|data plate:not legible|data plate:does not match|"
     "data plate:missing"},
    {Slot::wheel_on,
     "wheel nuts:rust trail: has been loose|wheel nuts:one missing|wheel nuts:loose|"
     "hub:oil thrown over the wheel|hub cap:oil mist|tyre:one shoulder worn|tyre:low or flat|"
     "wheel:cracked|wheel stud:broken|wheel:no defect in view"},
    {Slot::cap,
     "hub oil:below the line|hub oil:milky: water in it|hub oil:at the line|hub cap:window cloudy|"
     "hub cap:cracked|hub cap:gasket weeps|hub oil:black or burnt|hub oil:metal flakes|"
     "grease cap:dented|hub cap:plug missing"},
    {Slot::brake,
     "rotor:heat checks|rotor:scored in rings|caliper:rusted|caliper:leaks|pads:thin|"
     "pads:oil or grease on them|caliper:oil on it|brake hose:chafed|shoes:lining thin|drum:scored"},
    {Slot::rotor_face,
     "rotor:heat checks|rotor:scored in rings|rotor:surface rust|rotor:crack to the edge|"
     "rotor:hot spots|rotor:pitted by rust|rotor:under its discard size|drum:scored|rotor:in order"},
    {Slot::rotor_edge,
     "rotor:worn lip at the edge|rotor:crack to the edge|rotor:under its discard size|"
     "rotor:rust between the faces|rotor:thickness varies|rotor:in order"},
    {Slot::lining,
     "pads:thin|pads:thin and tapered|pads:inner and outer differ|pads:cracked|"
     "pads:oil or grease on them|pads:glazed|shoes:lining thin|shoes:uneven left and right|pads:in order"},
    {Slot::guide_pin,
     "guide pin:dry|guide pin:grooved|guide pin:rusted|guide pin:bent|guide pin:boot missing|"
     "bracket bolts:loose|caliper:slide seized"},
    {Slot::caliper,
     "caliper:leaks|caliper:piston seized|caliper:slide seized|caliper:boot torn|caliper:rusted|"
     "caliper:bleeder seized|caliper:oil on it|caliper:on the wrong side|bracket bolts:loose|"
     "caliper:in order"},
    {Slot::seal_side,
     "seal:wet|seal:lip torn|seal:streak below it|seal:cocked|spindle:groove under the seal|"
     "bearing:rust or etching|hub grease:pushed into the brake"},
    {Slot::bearing,
     "bearing:pitted|bearing:spalled|bearing:blue from heat|bearing:rust or etching|bearing:brinelled|"
     "bearing:cage bent|bearing:too much end play|bearing:smooth"},
    {Slot::spindle,
     "spindle:journals smooth|spindle:galled|spindle:blue from heat|spindle:groove under the seal|"
     "spindle:thread damaged|spindle:stepped|spindle:keyway worn"},
    {Slot::nuts,
     "wheel nuts:torqued and marked|wheel nuts:loose|wheel nuts:one missing|"
     "wheel nuts:rust trail: has been loose|wheel stud:broken|wheel nuts:seat galled|"
     "wheel nuts:oil on the thread|wheel stud:stretched|wheel:stud hole elongated"},
    {Slot::tread,
     "tyre:worn to the wear bars|tyre:one shoulder worn|tyre:both shoulders worn|tyre:centre worn|"
     "tyre:cupped|tyre:flat spot|tyre:cord showing|tyre:in order"},
    {Slot::sidewall,
     "tyre:age cracks|tyre:bulge|tyre:cut to the cord|tyre:too old|tyre:size or type differs|"
     "tyre:too weak for the axle|tyre:valve stem cracked|tyre:in order"},
    {Slot::hose_line,
     "brake line:rusted at the fitting|brake hose:chafed|brake hose:cracked|brake line:weeps|"
     "brake hose:weeps|brake line:unsupported|brake line:rusted along its run|brake hose:twisted"},
    {Slot::reservoir,
     "brake fluid:low|brake fluid:dark|brake fluid:water in it|brake fluid:at its mark|"
     "reservoir:cap vent blocked|reservoir:leaks|brake actuator:leaks|breakaway battery:low under load"},
    {Slot::coupler,
     "coupler:latch does not hold|coupler:worn|coupler:cracked|coupler:bolts loose|"
     "coupler:wrong ball size|surge actuator:too much travel|jack:slips|coupler:in order"},
    {Slot::chains,
     "safety chains:link worn|safety chains:hook latch missing|safety chains:too long|"
     "safety chains:missing|safety chains:repaired wrongly|breakaway switch:cable damaged"},
    {Slot::springs,
     "spring:leaf broken|spring:leaf displaced|spring:sagged|spring:hanger cracked|U-bolts:loose|"
     "shackles and equaliser:bolt worn|shackles and equaliser:bushing gone|frame:cracked|"
     "torsion axle:arm sagged"},
    {Slot::wiring,
     "lamps and reflectors:lamp out|plug:pins corroded|wiring:chafed|wiring:ground poor|"
     "wiring:splice not sealed|lamps and reflectors:reflector missing|brake magnet:lead chafed|"
     "breakaway switch:corroded"},
};

}  // namespace cotter
