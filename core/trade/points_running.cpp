// Suspension, frame and load.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 1> kShackle{what::shackle_wear};
constexpr std::array<Names, 1> kAngle{what::torsion_angle};
constexpr std::array<Names, 1> kAirDrop{what::air_spring_drop};
constexpr std::array<Names, 1> kThread{what::u_bolt_thread};
constexpr std::array<Names, 4> kAlign{what::axle_spacing, what::axle_offset, what::ride_height, what::tracking};
constexpr std::array<Names, 4> kGuard{what::guard_height, what::guard_side, what::guard_rear, what::guard_member};
constexpr std::array<Names, 2> kGross{what::axle_weight, what::tow_vehicle_rating};
constexpr std::array<Names, 2> kTongue{what::tongue_weight, what::tongue_share};

constexpr std::array kSprings{Slot::springs};
constexpr std::array kWhole{Slot::whole};

constexpr Law kPractice{"common practice", kMemory};
constexpr Law kGuardItem{"49 CFR part 396, Appendix A, 15a", kRead};

constexpr std::array kLeafList{
    LookEntry{"broken", "A leaf is broken or missing", kStop},
    LookEntry{"moved", "A leaf has moved out of its place", kStop},
    LookEntry{"hanger", "A hanger or the equalizer is cracked or loose", kStop},
    LookEntry{"center-bolt", "The center bolt is broken", kStop},
    LookEntry{"u-bolt", "A U-bolt is cracked, loose or missing", kStop},
    LookEntry{"bushing", "A bushing is gone", kRepair},
    LookEntry{"bolt", "A shackle bolt or its hole is worn", kRepair},
};
constexpr std::array kTorsionList{
    LookEntry{"arm", "An arm is loose", kStop},
    LookEntry{"bracket", "A bracket is cracked", kStop},
    LookEntry{"sag", "It sags, or one side hangs lower", kWatch, kPractice},
};
constexpr std::array kAirList{
    LookEntry{"flat", "An air spring is flat", kStop},
    LookEntry{"leak", "An air spring leaks", kRepair},
    LookEntry{"crooked", "The trailer does not stand level", kRepair, kPractice},
};
constexpr std::array kUBoltList{
    LookEntry{"thread", "Too little thread past a nut", kWatch, {"Maryland's inspection rule", kRead}},
};
constexpr std::array kSlideList{
    LookEntry{"pin", "A lock pin is not engaged", kStop},
    LookEntry{"bent", "A lock pin or its rail is bent or cracked", kStop},
};
constexpr std::array kFrameList{
    LookEntry{"cracked", "A rail or cross member is cracked or broken", kStop},
    LookEntry{"sags", "The frame sags", kStop},
    LookEntry{"flange", "A rail's flange is bent, cut or notched between the axles", kStop},
    LookEntry{"bolt", "A body bolt is loose or missing", kRepair},
    LookEntry{"weld", "A crack was welded over", kRepair},
    LookEntry{"parts", "Parts welded on, or holes in a flange, without the maker's word", kRepair},
};
constexpr std::array kClearList{
    LookEntry{"touches", "Something touches a tire, or will when it is loaded", kStop},
};
constexpr std::array kDeckList{
    LookEntry{"hole", "A hole or a rotten spot in the floor", kRepair},
    LookEntry{"ramp", "A ramp or gate is not latched", kRepair},
    LookEntry{"tie-down", "A tie-down point is loose or cracked", kRepair},
};
constexpr std::array kGuardList{
    LookEntry{"missing", "The rear guard is missing", kRepair, kGuardItem},
    LookEntry{"cracked", "A weld or the metal is cracked", kRepair, kGuardItem},
    LookEntry{"fastener", "A fastener is broken or missing", kRepair, kGuardItem},
};
constexpr std::array kSafeList{
    LookEntry{"loose", "The load, or part of it, is not tied down", kStop},
    LookEntry{"one-sided", "The load is too far to one side, or too far back", kStop},
    LookEntry{"falls", "Something can leak, blow or fall off", kStop},
};

constexpr std::array kRows{
    TradePoint{.id = susp_leaf,
               .title = "Leaf springs, hangers and U-bolts",
               .spot = Spot::corner,
               .applies = applies::leaf_springs,
               .keeps = Keeps::year,
               .keeps_outside = Keeps::trip,
               .law = {"49 CFR 393.207", kMemory},
               .ask = "Is a leaf, hanger, equalizer, bushing or U-bolt broken, moved, worn or loose?",
               .list = ListKind::faults,
               .entries = kLeafList,
               .readings = kShackle,
               .slots = kSprings},
    TradePoint{.id = susp_tors,
               .title = "Torsion arm and bracket",
               .spot = Spot::corner,
               .applies = applies::torsion,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .law = {"49 CFR part 396, Appendix A, 8b(6)", kMemory},
               .maker = true,
               .ask = "Is an arm loose, a bracket cracked, or one side lower?",
               .list = ListKind::faults,
               .entries = kTorsionList,
               .readings = kAngle,
               .slots = kSprings},
    TradePoint{.id = susp_air,
               .title = "Air springs",
               .spot = Spot::corner,
               .applies = applies::air_springs,
               .law = {"49 CFR 393.207", kMemory},
               .ask = "Is an air spring flat or leaking, or does the trailer not stand level?",
               .list = ListKind::faults,
               .entries = kAirList,
               .readings = kAirDrop,
               .slots = kSprings},
    TradePoint{.id = susp_ubolt,
               .title = "U-bolts torqued",
               .spot = Spot::axle,
               .applies = applies::u_bolts_undone,
               .reach = Reach::wheel_on,
               .importance = Importance::essential_after_work,
               .essential_when = applies::u_bolts_undone,
               .keeps = Keeps::until_work,
               .maker = true,
               .ask = "Is there too little thread past a nut?",
               .list = ListKind::faults,
               .entries = kUBoltList,
               .readings = kThread,
               .slots = kSprings,
               .torque = true},
    TradePoint{.id = susp_align,
               .title = "Axle alignment",
               .spot = Spot::axle,
               .applies = applies::always,
               .reach = Reach::wheel_on,
               .importance = Importance::wanted,
               .keeps = Keeps::year,
               .law = {"49 CFR 393.70(a)", kRead},
               .readings = kAlign},
    TradePoint{.id = susp_slide,
               .title = "Sliding axle locked",
               .spot = Spot::axle,
               .applies = applies::sliding_axle,
               .law = {"49 CFR part 396, Appendix A, 9c", kMemory},
               .ask = "Is a lock pin not engaged, or bent?",
               .list = ListKind::faults,
               .entries = kSlideList},
    TradePoint{.id = frame_main,
               .title = "Frame rails, cross members and welds",
               .spot = Spot::frame,
               .applies = applies::always,
               .keeps = Keeps::year,
               .keeps_outside = Keeps::trip,
               .law = {"49 CFR 393.201", kRead},
               .ask = "Is the frame cracked, sagging, cut or welded over, or a body bolt loose?",
               .list = ListKind::faults,
               .entries = kFrameList,
               .slots = kWhole},
    TradePoint{.id = frame_clear,
               .title = "Nothing touches a tire",
               .spot = Spot::frame,
               .applies = applies::always,
               .law = {"49 CFR part 396, Appendix A, 9b", kMemory},
               .ask = "Does anything touch a tire, or will it when the trailer is loaded?",
               .list = ListKind::faults,
               .entries = kClearList},
    TradePoint{.id = frame_deck,
               .title = "Floor, ramps, gates and tie-down points",
               .spot = Spot::frame,
               .applies = applies::always,
               .importance = Importance::wanted,
               .essential_when = applies::carries_animals,
               .law = {"49 CFR 393.108", kPartly},
               .ask = "Is there a hole in the floor, an open ramp or gate, or a bad tie-down point?",
               .list = ListKind::faults,
               .entries = kDeckList,
               .slots = kWhole},
    TradePoint{.id = frame_guard,
               .title = "Rear guard",
               .applies = applies::rear_guard,
               .keeps = Keeps::year,
               .law = {"49 CFR 393.86", kPartly},
               .ask = "Is the rear guard missing, cracked or loose?",
               .list = ListKind::faults,
               .entries = kGuardList,
               .readings = kGuard,
               .slots = kWhole},
    TradePoint{.id = load_known, .title = "Empty, or its weight known", .applies = applies::always, .plate = true},
    TradePoint{.id = load_gross,
               .title = "Weights against the ratings",
               .applies = applies::weighed,
               .importance = Importance::wanted,
               .law = {"49 CFR 567.4", kPartly},
               .readings = kGross,
               .computed = true},
    TradePoint{.id = load_tongue,
               .title = "Tongue weight and share",
               .applies = applies::weighed,
               .importance = Importance::wanted,
               .law = {"common practice", kRead},
               .readings = kTongue,
               .computed = true},
    TradePoint{.id = load_safe,
               .title = "Load tied, balanced, nothing falls",
               .applies = applies::always,
               .law = {"49 CFR 393.100", kRead},
               .ask = "Is anything loose or one-sided, or can anything fall off?",
               .list = ListKind::faults,
               .entries = kSafeList,
               .slots = kWhole},
};

}  // namespace

std::span<const TradePoint> running_points() {
    return kRows;
}

}  // namespace cotter
