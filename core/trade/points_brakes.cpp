// Brakes of every kind: what each has to do, whatever is inside.
#include <array>

#include "core/trade/points_parts.h"

namespace cotter {

namespace {

using namespace rows;
using enum PointId;

constexpr std::array<Names, 2> kStops{what::stop_distance, what::brake_force};
constexpr std::array<Names, 2> kPair{what::pad_imbalance, what::axle_imbalance};

constexpr std::array kBrake{Slot::brake};

constexpr std::array kWorksList{
    LookEntry{"dead", "Does not hold when the brake is applied", kStop},
    LookEntry{"stuck", "Does not turn free when the brake is released", kStop},
    LookEntry{"weak", "Holds weakly", kRepair},
};
constexpr std::array kPartsList{
    LookEntry{"missing", "A part is missing", kStop},
    LookEntry{"broken", "A part is broken or cracked", kStop},
    LookEntry{"loose", "A part is loose", kStop},
};
constexpr std::array kDriveList{
    LookEntry{"none", "The trailer brakes do not hold", kStop},
    LookEntry{"pulls", "It pulls to one side", kRepair},
    LookEntry{"noise", "It grinds or bangs", kRepair},
};
constexpr std::array kParkList{
    LookEntry{"rolls", "It rolls forward or backward with the parking brake on", kRepair},
};

constexpr std::array kRows{
    TradePoint{.id = brk_need,
               .title = "Whether this axle must have brakes",
               .spot = Spot::axle,
               .applies = applies::always,
               .keeps = Keeps::visit,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.42(a)", kRead},
               .computed = true},
    TradePoint{.id = brk_works,
               .title = "The brake holds and lets go",
               .spot = Spot::corner,
               .applies = applies::braked,
               .reach = Reach::wheel_on,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.48(a)", kRead},
               .ask = "Lifted, or on a roller: does the brake fail to hold, or fail to let go?",
               .list = ListKind::faults,
               .entries = kWorksList},
    TradePoint{.id = brk_parts,
               .title = "Brake parts all there, whole and tight",
               .spot = Spot::corner,
               .applies = applies::braked,
               .reach = Reach::wheel_off,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"49 CFR part 396, Appendix A, 1a(2), 1a(3)", kRead},
               .ask = "Is a shoe, pad, spring, pin, cam or bolt missing, broken or loose?",
               .list = ListKind::faults,
               .entries = kPartsList,
               .slots = kBrake},
    TradePoint{.id = brk_drive,
               .title = "Brake test at walking pace",
               .applies = applies::some_brake,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.40(a)", kRead},
               .ask = "At walking pace, trailer brakes alone: does it fail to hold, pull or make a noise?",
               .list = ListKind::faults,
               .entries = kDriveList},
    TradePoint{.id = brk_stop,
               .title = "Measured stop from 20 mph, or brake force",
               .applies = applies::some_brake,
               .reach = Reach::wheel_on,
               .importance = Importance::optional,
               .keeps = Keeps::visit,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.52(d)", kPartly},
               .readings = kStops},
    TradePoint{.id = brk_park,
               .title = "Parking brake",
               .applies = applies::parking_brake,
               .danger = Danger::brakes,
               .law = {"49 CFR 393.41(b)", kRead},
               .maker = true,
               .ask = "With the parking brake on, does it roll when it is pushed or pulled?",
               .list = ListKind::faults,
               .entries = kParkList},
    TradePoint{.id = brk_pair,
               .title = "Left against right, inner against outer",
               .spot = Spot::axle,
               .applies = applies::braked,
               .reach = Reach::wheel_off,
               .importance = Importance::wanted,
               .keeps = Keeps::year,
               .danger = Danger::brakes,
               .law = {"common practice", kMemory},
               .readings = kPair,
               .computed = true},
};

}  // namespace

std::span<const TradePoint> brake_points() {
    return kRows;
}

}  // namespace cotter
