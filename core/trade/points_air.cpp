// Air brakes. For somebody trained for them; an owner's look cannot answer them.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 2> kStroke{what::push_rod_stroke, what::wedge_movement};
constexpr std::array<Names, 1> kLining{what::air_lining};
constexpr std::array<Names, 2> kDrop{what::air_drop, what::tank_pressure};

constexpr std::array kTag{Slot::brake};
constexpr std::array kLiningShot{Slot::lining};
constexpr std::array kHose{Slot::hose_line};

constexpr Law kPractice{"common practice", kPartly};
constexpr Law kLamp{"49 CFR part 396, Appendix A, 1l", kMemory};

constexpr std::array kLiningList{
    LookEntry{"mark", "Worn to the wear mark", kStop, {}, applies::any_drum},
    LookEntry{"loose", "Loose on its shoe or plate", kStop, {"49 CFR part 396, Appendix A, 1a(6)(a)", kRead}},
    LookEntry{"soaked", "Oil or grease in it", kStop, {"49 CFR part 396, Appendix A, 1a(6)(b)", kRead}},
};
constexpr std::array kLeakList{
    LookEntry{"chamber", "Air can be heard at a chamber", kRepair},
    LookEntry{"elsewhere", "Air can be heard at a line, valve or fitting", kRepair, kPractice},
};
constexpr std::array kSpringList{
    LookEntry{"dead", "Does not apply when the supply is lost", kStop},
    LookEntry{"caged", "Found caged: the spring cannot apply", kStop},
    LookEntry{"housing", "Spring housing cracked or rusted: stand clear of it", kStop},
    LookEntry{"stuck", "Does not let go", kStop},
    LookEntry{"bolt", "The caging bolt is not stowed", kWatch, kPractice},
};
constexpr std::array kAbsList{
    LookEntry{"on", "The lamp stays on", kRepair, kLamp},
    LookEntry{"dead", "The lamp does not come on at all", kRepair, kLamp},
};
constexpr std::array kSupplyList{
    LookEntry{"chafed", "A line is chafed, kinked or cracked", kRepair},
    LookEntry{"leak", "A line or glad hand leaks", kRepair},
    LookEntry{"seal", "A glad hand seal is torn or missing", kRepair},
    LookEntry{"water", "Water or oil comes out of a tank", kWatch, kPractice},
};

constexpr std::array kRows{
    TradePoint{.id = air_kind,
               .title = "Chamber and slack adjuster tags",
               .spot = Spot::corner,
               .applies = applies::air_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::plate,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.47(e)", kRead},
               .slots = kTag,
               .plate = true},
    TradePoint{.id = air_stroke,
               .title = "Applied push-rod stroke",
               .spot = Spot::corner,
               .applies = applies::air_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::quarter,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.47(e); 49 CFR part 396, Appendix A, 1a(5)", kRead},
               .readings = kStroke},
    TradePoint{.id = air_pair,
               .title = "Same chamber and slack length on both sides",
               .spot = Spot::axle,
               .applies = applies::air_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::plate,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.47(b), (c)", kRead},
               .computed = true},
    TradePoint{.id = air_lining,
               .title = "Lining or pad thickness, air brake",
               .spot = Spot::corner,
               .applies = applies::air_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.47(d)(2); 49 CFR part 396, Appendix A, 1a(6)(c)", kRead},
               .ask = "Is a lining worn to its mark, loose or soaked?",
               .list = ListKind::faults,
               .entries = kLiningList,
               .readings = kLining,
               .slots = kLiningShot},
    TradePoint{.id = air_leak,
               .title = "Air leaks",
               .spot = Spot::actuator,
               .applies = applies::air_system,
               .reach = Reach::wheel_on,
               .keeps = Keeps::quarter,
               .danger = Danger::brakes,
               .law = {"49 CFR part 396, Appendix A, 1a(4)", kRead},
               .ask = "Brakes released, then applied: can air be heard anywhere?",
               .list = ListKind::faults,
               .entries = kLeakList,
               .readings = kDrop},
    TradePoint{.id = air_spring,
               .title = "Spring brake",
               .spot = Spot::corner,
               .applies = applies::spring_brake,
               .reach = Reach::wheel_on,
               .keeps = Keeps::quarter,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.41(b)", kRead},
               .ask = "Supply off, then on: does the spring brake fail to apply or let go, or is its housing damaged?",
               .list = ListKind::faults,
               .entries = kSpringList,
               .slots = kTag},
    TradePoint{.id = air_abs,
               .title = "ABS lamp",
               .applies = applies::air_abs,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.55", kRead},
               .ask = "Power on: does the ABS lamp stay on, or never light?",
               .list = ListKind::faults,
               .entries = kAbsList},
    TradePoint{.id = air_supply,
               .title = "Air lines, glad hands and tanks",
               .applies = applies::air_system,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.45", kMemory},
               .ask = "Is a line or glad hand damaged or leaking, or water in a tank?",
               .list = ListKind::faults,
               .entries = kSupplyList,
               .slots = kHose},
};

}  // namespace

std::span<const TradePoint> air_points() {
    return kRows;
}

}  // namespace cotter
