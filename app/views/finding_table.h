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
     "cracked|cup spins in its bore|flange runs out|rust under the flange|stud hole worn|oil thrown over the wheel|"
     "grease thrown over the wheel",
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
    // "component:defect=g", the most frequent first; those that the trailer cannot have are left out, and at most
    // kMostUsual are offered. g is the grade that it usually deserves: s
    // serviceable, w watch, r repair, d do not tow: what fails the law's limits or may lose a wheel or a brake. Whoever
    // looks decides.
    std::string_view usual;
};

inline constexpr SlotRow kSlotTable[] = {
    {Slot::whole,
     "tyre:low or flat=d|frame:cracked=d|frame:sagging=d|spring:sagged=w|axle beam:out of square=r|"
     "lamps and reflectors:lamp out=r|wheel nuts:one missing=d|jack:bent=w"},
    {Slot::data_plate,
     "data plate:legible, VIN checks=s|data plate:not legible=w|data plate:does not match=r|"
     "data plate:missing=r"},
    {Slot::wheel_on,
     "wheel nuts:rust trail: has been loose=r|wheel nuts:one missing=d|wheel nuts:loose=d|"
     "hub:oil thrown over the wheel=r|hub:grease thrown over the wheel=r|hub cap:oil mist=w|tyre:one shoulder "
     "worn=r|tyre:low or flat=d|"
     "wheel:cracked=d|wheel stud:broken=d|wheel:no defect in view=s"},
    {Slot::cap,
     "hub oil:below the line=r|hub oil:milky: water in it=r|hub oil:at the line=s|hub cap:window cloudy=w|"
     "hub cap:cracked=r|hub cap:gasket weeps=r|hub oil:black or burnt=r|hub oil:metal flakes=d|"
     "grease cap:dented=w|grease cap:loose=r|grease cap:missing=r|hub grease:water in it=r|hub grease:dried out=r|"
     "hub cap:plug missing=r"},
    {Slot::brake,
     "rotor:heat checks=r|rotor:scored in rings=r|caliper:rusted=w|caliper:leaks=d|pads:thin=r|"
     "pads:oil or grease on them=r|caliper:oil on it=r|brake hose:chafed=r|shoes:lining thin=r|drum:scored=r|"
     "shoes:oil or grease on them=r|brake hardware:spring missing=d|brake magnet:worn to the indicator=r|"
     "brake hardware:adjuster seized=r|drum:cracked=d"},
    {Slot::rotor_face,
     "rotor:heat checks=r|rotor:scored in rings=r|rotor:surface rust=w|rotor:crack to the edge=d|"
     "rotor:hot spots=w|rotor:pitted by rust=r|rotor:under its discard size=d|drum:scored=r|rotor:in order=s"},
    {Slot::rotor_edge,
     "rotor:worn lip at the edge=w|rotor:crack to the edge=d|rotor:under its discard size=d|"
     "rotor:rust between the faces=r|rotor:thickness varies=w|rotor:in order=s"},
    {Slot::lining,
     "pads:thin=r|pads:thin and tapered=r|pads:inner and outer differ=r|pads:cracked=r|"
     "pads:oil or grease on them=r|pads:glazed=w|shoes:lining thin=r|shoes:uneven left and right=w|"
     "pads:in order=s|shoes:oil or grease on them=r|shoes:tapered=w|shoes:loose from the shoe=d|shoes:glazed=w|"
     "shoes:in order=s"},
    {Slot::guide_pin,
     "guide pin:dry=r|guide pin:grooved=r|guide pin:rusted=r|guide pin:bent=r|guide pin:boot missing=r|"
     "bracket bolts:loose=d|caliper:slide seized=r"},
    {Slot::caliper,
     "caliper:leaks=d|caliper:piston seized=d|caliper:slide seized=r|caliper:boot torn=r|caliper:rusted=w|"
     "caliper:bleeder seized=r|caliper:oil on it=r|caliper:on the wrong side=d|bracket bolts:loose=d|"
     "caliper:in order=s"},
    {Slot::seal_side,
     "seal:wet=r|seal:lip torn=r|seal:streak below it=w|seal:cocked=r|spindle:groove under the seal=r|"
     "bearing:rust or etching=r|hub grease:pushed into the brake=r"},
    {Slot::bearing,
     "bearing:pitted=r|bearing:spalled=d|bearing:blue from heat=d|bearing:rust or etching=r|"
     "bearing:brinelled=r|bearing:cage bent=d|bearing:too much end play=r|bearing:smooth=s"},
    {Slot::spindle,
     "spindle:journals smooth=s|spindle:galled=d|spindle:blue from heat=d|spindle:groove under the seal=r|"
     "spindle:thread damaged=d|spindle:stepped=d|spindle:keyway worn=r"},
    {Slot::nuts,
     "wheel nuts:torqued and marked=s|wheel nuts:loose=d|wheel nuts:one missing=d|"
     "wheel nuts:rust trail: has been loose=r|wheel stud:broken=d|wheel nuts:seat galled=r|"
     "wheel nuts:oil on the thread=r|wheel stud:stretched=d|wheel:stud hole elongated=d"},
    {Slot::tread,
     "tyre:worn to the wear bars=d|tyre:one shoulder worn=r|tyre:both shoulders worn=r|tyre:centre worn=w|"
     "tyre:cupped=w|tyre:flat spot=w|tyre:cord showing=d|tyre:in order=s"},
    {Slot::sidewall,
     "tyre:age cracks=w|tyre:bulge=d|tyre:cut to the cord=d|tyre:too old=w|tyre:size or type differs=r|"
     "tyre:too weak for the axle=d|tyre:valve stem cracked=r|tyre:in order=s"},
    {Slot::hose_line,
     "brake line:rusted at the fitting=w|brake hose:chafed=r|brake hose:cracked=r|brake line:weeps=d|"
     "brake hose:weeps=d|brake line:unsupported=w|brake line:rusted along its run=r|brake hose:twisted=r"},
    {Slot::reservoir,
     "brake fluid:low=r|brake fluid:dark=w|brake fluid:water in it=r|brake fluid:at its mark=s|"
     "reservoir:cap vent blocked=r|reservoir:leaks=d|brake actuator:leaks=d|breakaway battery:low under load=r"},
    {Slot::coupler,
     "coupler:latch does not hold=d|coupler:worn=r|coupler:cracked=d|coupler:bolts loose=d|"
     "coupler:wrong ball size=d|surge actuator:too much travel=r|jack:slips=r|coupler:in order=s"},
    {Slot::chains,
     "safety chains:link worn=r|safety chains:hook latch missing=r|safety chains:too long=r|"
     "safety chains:missing=d|safety chains:repaired wrongly=d|breakaway switch:cable damaged=d"},
    {Slot::springs,
     "spring:leaf broken=d|spring:leaf displaced=d|spring:sagged=w|spring:hanger cracked=d|U-bolts:loose=d|"
     "shackles and equaliser:bolt worn=r|shackles and equaliser:bushing gone=r|frame:cracked=d|"
     "torsion axle:arm sagged=r|torsion axle:arm loose=d|torsion axle:bracket cracked=d"},
    {Slot::wiring,
     "lamps and reflectors:lamp out=r|plug:pins corroded=w|wiring:chafed=r|wiring:ground poor=r|"
     "wiring:splice not sealed=w|lamps and reflectors:reflector missing=r|brake magnet:lead chafed=r|"
     "breakaway switch:corroded=r"},
};

}  // namespace cotter
