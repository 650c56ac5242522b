// Tires and wheels.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 2> kLoad{what::wheel_weight, what::load_index};
constexpr std::array<Names, 2> kId{what::load_index, what::load_rating};
constexpr std::array<Names, 1> kTread{what::tread_depth};
constexpr std::array<Names, 2> kPressure{what::pressure_cold, what::pressure_hot};
constexpr std::array<Names, 1> kDate{what::tyre_date};
constexpr std::array<Names, 3> kDual{what::dual_gap, what::dual_diameters, what::dual_difference};

constexpr std::array kSidewall{Slot::sidewall};
constexpr std::array kTreadShot{Slot::tread};
constexpr std::array kFaces{Slot::wheel_on, Slot::tread, Slot::sidewall};
constexpr std::array kWheelOn{Slot::wheel_on};
constexpr std::array kNuts{Slot::nuts};

constexpr Law kItem10b{"49 CFR part 396, Appendix A, 10b", kPartly};
constexpr Law kItem10c{"49 CFR part 396, Appendix A, 10c", kPartly};
constexpr Law kContact{"49 CFR part 396, Appendix A, 10b", kMemory};
constexpr Law kPractice{"common practice", kMemory};

constexpr std::array kIdList{
    LookEntry{"not-highway", "Marked 'not for highway use'", kStop, kItem10b},
    LookEntry{"slow", "Marked for a limited speed", kRepair, kItem10c},
    LookEntry{"mixed", "Another size or type than its mates on the axle", kRepair, kItem10b},
};
constexpr std::array kLoadList{
    LookEntry{"limit-written", "A lower load limit is written on the trailer", kGood},
    LookEntry{"no-limit", "No lower load limit is written on the trailer", kGood},
};
constexpr std::array kFaceList{
    LookEntry{"cord", "Cords or belts show", kStop},
    LookEntry{"bulge", "A bulge or a knot", kStop, kContact},
    LookEntry{"separation", "Tread or sidewall coming apart", kStop},
    LookEntry{"cut", "A cut down to the cords", kStop},
    LookEntry{"flat", "Flat", kStop},
    LookEntry{"hiss", "Air can be heard leaking", kStop},
    LookEntry{"mate", "Touches its mate", kStop, kContact, applies::duals},
    LookEntry{"body", "Touches the body or the frame", kStop, kContact},
    LookEntry{"age-cracks", "Cracks from age", kRepair, kPractice},
    LookEntry{"valve", "Valve stem cracked", kRepair, kPractice},
};
constexpr Law kWheelItem{"49 CFR part 396, Appendix A, 11", kMemory};
constexpr Law kWheelState{"49 CFR 570.63", kRead};
constexpr std::array kWheelList{
    LookEntry{"crack", "Cracked", kStop},
    LookEntry{"hole", "A stud hole worn long", kStop},
    LookEntry{"ring", "A ring bent, cracked, sprung or of another kind", kStop, kWheelItem},
    LookEntry{"clamp-area", "Cast wheel cracked or worn where it is clamped", kStop, kWheelState},
    LookEntry{"weld", "Repaired by welding", kRepair, kWheelState},
    LookEntry{"flange", "Flange bent", kRepair, kWheelItem},
};
constexpr std::array kSeatList{
    LookEntry{"nut", "The wrong nut for this wheel", kStop},
    LookEntry{"bolt", "A bolt of the wrong length", kStop, {}, applies::bolted_wheel},
    LookEntry{"seat", "Nut and wheel have different seats", kStop},
    LookEntry{"pilot", "The wheel does not sit on its pilot", kStop},
    LookEntry{"hand", "A left-hand thread mixed up with a right-hand one", kStop},
    LookEntry{"paint", "Paint or rust between the faces", kRepair},
    LookEntry{"oil", "Oil on a face or a seat", kRepair},
};
constexpr std::array kNutList{
    LookEntry{"missing", "A nut or bolt is missing", kStop},
    LookEntry{"loose", "A nut or bolt is loose", kStop},
    LookEntry{"broken", "A stud or bolt is broken", kStop},
    LookEntry{"trail", "A rust trail from a nut: it has been loose", kStop},
};

constexpr std::array kRows{
    TradePoint{.id = tire_id,
               .title = "What the tire's sidewall says",
               .spot = Spot::wheel,
               .applies = applies::always,
               .keeps = Keeps::until_work,
               .danger = Danger::tires,
               .law = {"49 CFR 571.139", kMemory},
               .ask = "Is anything wrong with what the sidewall says?",
               .list = ListKind::faults,
               .entries = kIdList,
               .readings = kId,
               .slots = kSidewall,
               .plate = true},
    TradePoint{.id = tire_load,
               .title = "Load on the tire against its rating",
               .spot = Spot::wheel,
               .applies = applies::always,
               .keeps = Keeps::until_work,
               .danger = Danger::tires,
               .law = {"49 CFR 393.75(g)", kRead},
               .ask = "Is a lower load limit written on the trailer?",
               .list = ListKind::choice,
               .entries = kLoadList,
               .readings = kLoad,
               .computed = true},
    TradePoint{.id = tire_tread,
               .title = "Tread depth",
               .spot = Spot::wheel,
               .applies = applies::always,
               .keeps = Keeps::quarter,
               .danger = Danger::tires,
               .law = {"49 CFR 393.75(c)", kRead},
               .readings = kTread,
               .slots = kTreadShot},
    TradePoint{.id = tire_face,
               .title = "Both faces of the tire",
               .spot = Spot::wheel,
               .applies = applies::always,
               .danger = Danger::tires,
               .law = {"49 CFR 393.75(a)", kRead},
               .ask = "Is anything wrong with the tread or either sidewall, inside and outside?",
               .list = ListKind::faults,
               .entries = kFaceList,
               .slots = kFaces},
    TradePoint{.id = tire_press,
               .title = "Cold tire pressure",
               .spot = Spot::wheel,
               .applies = applies::always,
               .danger = Danger::tires,
               .law = {"49 CFR 393.75, pressure paragraph", kPartly},
               .readings = kPressure},
    TradePoint{.id = tire_age,
               .title = "Week and year the tire was made",
               .spot = Spot::wheel,
               .applies = applies::always,
               .importance = Importance::wanted,
               .keeps = Keeps::until_work,
               .danger = Danger::tires,
               .law = {"49 CFR 574.5", kRead},
               .readings = kDate,
               .slots = kSidewall,
               .plate = true},
    TradePoint{.id = tire_dual,
               .title = "Gap and diameters of the dual pair",
               .spot = Spot::corner,
               .applies = applies::duals,
               .importance = Importance::wanted,
               .keeps = Keeps::quarter,
               .danger = Danger::tires,
               .law = {"Maryland's inspection rule", kRead},
               .readings = kDual},
    TradePoint{.id = wheel_look,
               .title = "Wheel and rim",
               .spot = Spot::wheel,
               .applies = applies::always,
               .keeps = Keeps::quarter,
               .danger = Danger::wheels,
               .law = {"49 CFR 393.205", kMemory},
               .ask = "Is anything wrong with the wheel or its rings?",
               .list = ListKind::faults,
               .entries = kWheelList,
               .slots = kWheelOn},
    TradePoint{.id = wheel_seat,
               .title = "Wheel faces, pilot and nut seats",
               .spot = Spot::corner,
               .applies = applies::wheel_was_off,
               .reach = Reach::wheel_off,
               .keeps = Keeps::until_work,
               .danger = Danger::wheels,
               .ask = "Is anything wrong with the faces, the pilot, the nuts or their seats?",
               .list = ListKind::faults,
               .entries = kSeatList,
               .slots = kNuts},
    TradePoint{.id = wheel_nuts,
               .title = "Every wheel nut or bolt there and tight",
               .spot = Spot::corner,
               .applies = applies::always,
               .danger = Danger::wheels,
               .law = {"49 CFR 393.205", kMemory},
               .ask = "Is any nut or bolt missing, loose or broken, or is there a rust trail from one?",
               .list = ListKind::faults,
               .entries = kNutList,
               .slots = kNuts},
    TradePoint{.id = wheel_torque,
               .title = "Wheel nuts torqued in stages",
               .spot = Spot::corner,
               .applies = applies::wheel_was_off,
               .reach = Reach::wheel_on,
               .importance = Importance::essential_after_work,
               .essential_when = applies::wheel_was_off,
               .keeps = Keeps::until_work,
               .danger = Danger::wheels,
               .maker = true,
               .slots = kNuts,
               .torque = true},
};

}  // namespace

std::span<const TradePoint> wheel_points() {
    return kRows;
}

}  // namespace cotter
