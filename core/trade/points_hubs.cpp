// Hubs and bearings.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 1> kPlay{what::end_play};
constexpr std::array<Names, 2> kHeat{what::hub_temperature, what::hub_over_mates};

constexpr std::array kCap{Slot::cap};
constexpr std::array kOpened{Slot::bearing, Slot::spindle, Slot::seal_side};
constexpr std::array kLock{Slot::spindle};

constexpr Law kPractice{"common practice", kMemory};
constexpr Law kSoaked{"49 CFR part 396, Appendix A, 1a(6)(b)", kRead};

constexpr std::array kLeakList{
    LookEntry{"soaked", "Oil or grease on the brake lining", kStop, kSoaked, applies::braked},
    LookEntry{"drip", "Oil or grease drips, or is thrown over the wheel", kRepair},
    LookEntry{"cap", "Cap cracked or missing", kRepair, kPractice},
    LookEntry{"film", "A film of oil or grease, no drip", kWatch, kPractice},
};
constexpr std::array kOilList{
    LookEntry{"empty", "No oil to be seen, and the window is clear", kStop},
    LookEntry{"below", "Below the line", kRepair},
    LookEntry{"milky", "Milky: water in it", kRepair},
    LookEntry{"black", "Black or burnt", kRepair},
    LookEntry{"metal", "Metal in it", kRepair},
    LookEntry{"over", "Above the line", kWatch},
};
constexpr std::array kPlayList{
    LookEntry{"rough", "Rough when it is turned", kRepair},
    LookEntry{"noisy", "Noisy when it is turned", kRepair},
    LookEntry{"rocks", "Rocks on the spindle: it can be felt", kRepair},
};
constexpr std::array kPartList{
    LookEntry{"spalled", "Bearing spalled: metal broken out", kStop},
    LookEntry{"blue", "Bearing or spindle blue from heat", kStop},
    LookEntry{"cup", "A cup is loose in the hub", kStop},
    LookEntry{"crack", "Spindle cracked", kStop},
    LookEntry{"cage", "Cage bent or broken", kStop},
    LookEntry{"pitted", "Bearing pitted or rusted", kRepair},
    LookEntry{"groove", "Spindle grooved under the seal", kRepair},
};
constexpr std::array kLockList{
    LookEntry{"new", "A new lock is in, and seen", kGood},
    LookEntry{"reusable", "The maker lets this lock be used again, and it is whole", kGood},
    LookEntry{"reused", "A lock made for one use was used again", kStop},
    LookEntry{"none", "No lock is in", kStop},
};

constexpr std::array kRows{
    TradePoint{.id = hub_leak,
               .title = "Hub cap, seal and the inside of the wheel",
               .spot = Spot::corner,
               .applies = applies::always,
               .danger = Danger::wheels,
               .law = {"49 CFR 396.5(b)", kRead},
               .ask = "Is there oil or grease on the cap, on the wheel or behind it?",
               .list = ListKind::faults,
               .entries = kLeakList,
               .slots = kCap},
    TradePoint{.id = hub_oil,
               .title = "Hub oil level and color",
               .spot = Spot::corner,
               .applies = applies::oil_hub,
               .danger = Danger::wheels,
               .ask = "Is the oil anything but clear and at the line?",
               .list = ListKind::faults,
               .entries = kOilList,
               .slots = kCap,
               .level = true},
    TradePoint{.id = hub_play,
               .title = "Wheel bearing play",
               .spot = Spot::corner,
               .applies = applies::always,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::wheels,
               .law = {"Maryland's inspection rule", kRead},
               .maker = true,
               .ask = "Lifted: does the wheel rock, or turn rough or noisy?",
               .list = ListKind::faults,
               .entries = kPlayList,
               .readings = kPlay,
               .bearing = true},
    TradePoint{.id = hub_parts,
               .title = "Bearings and spindle",
               .spot = Spot::corner,
               .applies = applies::hub_was_opened,
               .reach = Reach::wheel_off,
               .importance = Importance::essential_after_work,
               .essential_when = applies::hub_was_opened,
               .keeps = Keeps::until_work,
               .danger = Danger::wheels,
               .ask = "Is anything wrong with cones, cups or spindle?",
               .list = ListKind::faults,
               .entries = kPartList,
               .slots = kOpened},
    TradePoint{.id = hub_lock,
               .title = "Bearing nut locked",
               .spot = Spot::corner,
               .applies = applies::hub_was_opened,
               .reach = Reach::wheel_off,
               .importance = Importance::essential_after_work,
               .essential_when = applies::hub_was_opened,
               .keeps = Keeps::until_work,
               .danger = Danger::wheels,
               .maker = true,
               .ask = "What locks the bearing nut?",
               .list = ListKind::choice,
               .entries = kLockList,
               .slots = kLock,
               .bearing = true},
    TradePoint{.id = hub_heat,
               .title = "Hub temperature after stops",
               .spot = Spot::corner,
               .applies = applies::heat_wanted,
               .importance = Importance::essential_after_work,
               .essential_when = applies::driven_since_work,
               .danger = Danger::wheels,
               .law = kPractice,
               .readings = kHeat},
};

}  // namespace

std::span<const TradePoint> hub_points() {
    return kRows;
}

}  // namespace cotter
