// Coupling and lights.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 1> kBall{what::ball_measured};
constexpr std::array<Names, 2> kWear{what::coupling_wear, what::slider_movement};
constexpr std::array<Names, 1> kChain{what::chain_wear};
constexpr std::array<Names, 1> kLampVolts{what::lamp_volts};

constexpr std::array kCoupler{Slot::coupler};
constexpr std::array kChains{Slot::chains};
constexpr std::array kWhole{Slot::whole};
constexpr std::array kWire{Slot::wiring};

constexpr Law kPractice{"common practice", kMemory};
constexpr Law kFifthWheel{"49 CFR part 396, Appendix A, 2a", kMemory};

constexpr std::array kFitList{
    LookEntry{"size", "The ball is not the size that is stamped on the coupler", kStop, {}, applies::ball_coupler},
    LookEntry{"open", "The latch is not closed", kStop},
    LookEntry{"pin", "The latch has no pin or lock in it", kStop},
    LookEntry{"lifts", "It comes off the ball when the tongue is lifted", kStop, {}, applies::ball_coupler},
    LookEntry{"jaws", "The jaws are not closed around the kingpin", kStop, kFifthWheel, applies::kingpin},
    LookEntry{"gap", "There is a gap between the plates", kStop, kFifthWheel, applies::kingpin},
};
constexpr std::array kWearList{
    LookEntry{"crack", "Cracked", kStop},
    LookEntry{"worn", "More than a fifth of the section is worn away", kStop},
    LookEntry{"bolt", "A bolt is loose or missing", kStop},
    LookEntry{"weld", "The pintle hook or eye was repaired by welding", kStop, {}, applies::pintle},
    LookEntry{"kingpin", "The kingpin fails the maker's gauge", kStop, kFifthWheel, applies::kingpin},
    LookEntry{"plate", "The upper plate is cracked, or its bolts are loose", kStop, kFifthWheel, applies::kingpin},
};
constexpr std::array kChainList{
    LookEntry{"missing", "A chain or hook is missing", kStop},
    LookEntry{"worn", "A link or hook is worn so that it can be seen", kStop},
    LookEntry{"bolt", "A bolt, wire or weld stands in for a link", kStop},
    LookEntry{"anchor", "An anchor is cracked or loose", kStop},
    LookEntry{"drags", "A chain drags on the ground", kRepair},
    LookEntry{"latch", "A hook has lost its latch", kRepair},
    LookEntry{"straight", "The chains are not crossed under the tongue", kRepair, kPractice},
};
constexpr std::array kJackList{
    LookEntry{"down", "The jack is down", kStop},
    LookEntry{"pin", "Its pin is missing", kStop},
};
constexpr std::array kBaseList{
    LookEntry{"rear", "At least one lamp lights at the rear", kStop},
    LookEntry{"tail-left", "Tail lamp, left", kRepair},
    LookEntry{"tail-right", "Tail lamp, right", kRepair},
    LookEntry{"stop-left", "Stop lamp, left", kRepair},
    LookEntry{"stop-right", "Stop lamp, right", kRepair},
    LookEntry{"turn-left", "Turn signal, left", kRepair},
    LookEntry{"turn-right", "Turn signal, right", kRepair},
    LookEntry{"plate", "License plate lamp", kRepair},
    LookEntry{"marker-rear-left", "Red side marker at the rear, left", kRepair},
    LookEntry{"marker-rear-right", "Red side marker at the rear, right", kRepair},
    LookEntry{"marker-front-left", "Amber side marker at the front, left", kRepair},
    LookEntry{"marker-front-right", "Amber side marker at the front, right", kRepair},
    LookEntry{"together", "All of them lit together: each still right", kRepair},
};
constexpr std::array kWideList{
    LookEntry{"front-left", "Amber clearance lamp at the front, left", kRepair},
    LookEntry{"front-right", "Amber clearance lamp at the front, right", kRepair},
    LookEntry{"rear-left", "Red clearance lamp at the rear, left", kRepair},
    LookEntry{"rear-right", "Red clearance lamp at the rear, right", kRepair},
    LookEntry{"id-left", "Red identification lamp, left of three", kRepair},
    LookEntry{"id-middle", "Red identification lamp, middle of three", kRepair},
    LookEntry{"id-right", "Red identification lamp, right of three", kRepair},
};
constexpr std::array kLongList{
    LookEntry{"marker-left", "Amber side marker in the middle, left", kRepair},
    LookEntry{"marker-right", "Amber side marker in the middle, right", kRepair},
    LookEntry{"reflector-left", "Amber reflector in the middle, left", kRepair},
    LookEntry{"reflector-right", "Amber reflector in the middle, right", kRepair},
};
constexpr std::array kReflectorList{
    LookEntry{"rear", "A red reflector is missing at the rear", kRepair},
    LookEntry{"side-rear", "A red reflector is missing at the rear of a side", kRepair},
    LookEntry{"side-front", "An amber reflector is missing at the front of a side", kRepair},
    LookEntry{"tape", "Reflective tape is missing or worn off", kRepair, {}, applies::taped},
};
constexpr std::array kPlugList{
    LookEntry{"pins", "Pins corroded or bent", kRepair},
    LookEntry{"ground", "Ground is bad", kRepair},
    LookEntry{"chafed", "The cord is chafed or cut", kRepair},
};

constexpr std::array kRows{
    TradePoint{.id = cpl_rate,
               .title = "Coupler, ball and hitch ratings",
               .spot = Spot::drawbar,
               .applies = applies::always,
               .keeps = Keeps::plate,
               .danger = Danger::coupling,
               .maker = true,
               .slots = kCoupler,
               .plate = true},
    TradePoint{.id = cpl_fit,
               .title = "Coupled: right ball, closed and locked",
               .spot = Spot::drawbar,
               .applies = applies::always,
               .danger = Danger::coupling,
               .law = {"49 CFR 392.7(a)", kRead},
               .ask = "Is the ball the wrong size, or the coupler not closed and locked?",
               .list = ListKind::faults,
               .entries = kFitList,
               .readings = kBall,
               .slots = kCoupler,
               .plate = true},
    TradePoint{.id = cpl_wear,
               .title = "Coupler, eye or kingpin: wear and bolts",
               .spot = Spot::drawbar,
               .applies = applies::always,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::coupling,
               .law = {"49 CFR part 396, Appendix A, 2b, 2c", kMemory},
               .ask = "Is anything cracked, worn down or loose?",
               .list = ListKind::faults,
               .entries = kWearList,
               .readings = kWear,
               .slots = kCoupler},
    TradePoint{.id = cpl_chain,
               .title = "Safety chains, hooks and anchors",
               .spot = Spot::drawbar,
               .applies = applies::chains,
               .danger = Danger::coupling,
               .law = {"49 CFR 393.70(d)", kPartly},
               .ask = "Is a chain, hook or anchor missing, worn or patched, or do the chains drag?",
               .list = ListKind::faults,
               .entries = kChainList,
               .readings = kChain,
               .slots = kChains},
    TradePoint{.id = cpl_jack,
               .title = "Jack raised and pinned",
               .spot = Spot::drawbar,
               .applies = applies::always,
               .importance = Importance::wanted,
               .danger = Danger::coupling,
               .ask = "Is the jack down, or its pin missing?",
               .list = ListKind::faults,
               .entries = kJackList},
};

constexpr std::array kLights{
    TradePoint{.id = lamp_base,
               .title = "Lamps",
               .spot = Spot::lights,
               .applies = applies::always,
               .law = {"49 CFR 393.9, 393.11", kMemory},
               .ask = "Each lamp alone, then all together: is any dark or wrong?",
               .list = ListKind::ticks,
               .entries = kBaseList,
               .slots = kWhole},
    TradePoint{.id = lamp_wide,
               .title = "Clearance and identification lamps",
               .spot = Spot::lights,
               .applies = applies::wide,
               .law = {"49 CFR 571.108", kRead},
               .ask = "Is a clearance or identification lamp dark or missing?",
               .list = ListKind::ticks,
               .entries = kWideList},
    TradePoint{.id = lamp_long,
               .title = "Side markers and reflectors in the middle",
               .spot = Spot::lights,
               .applies = applies::long_trailer,
               .law = {"49 CFR 571.108", kPartly},
               .ask = "Is a side marker or reflector in the middle dark or missing?",
               .list = ListKind::ticks,
               .entries = kLongList},
    TradePoint{.id = lamp_refl,
               .title = "Reflectors and tape",
               .spot = Spot::lights,
               .applies = applies::always,
               .law = {"49 CFR 393.11, 393.13", kMemory},
               .ask = "Is a reflector, or the tape where it is due, missing?",
               .list = ListKind::faults,
               .entries = kReflectorList},
    TradePoint{.id = lamp_plug,
               .title = "Plug, ground and cord",
               .spot = Spot::lights,
               .applies = applies::always,
               .importance = Importance::wanted,
               .law = {"49 CFR 393.28", kMemory},
               .ask = "Are pins corroded, is the ground bad, or is the cord chafed?",
               .list = ListKind::faults,
               .entries = kPlugList,
               .readings = kLampVolts,
               .slots = kWire},
};

}  // namespace

std::span<const TradePoint> coupling_points() {
    return kRows;
}
std::span<const TradePoint> light_points() {
    return kLights;
}

}  // namespace cotter
