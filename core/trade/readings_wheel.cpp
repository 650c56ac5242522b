// Readings of tires and wheel bearings.
#include "core/trade/reading_parts.h"

namespace cotter {

namespace {

using namespace specs;

constexpr std::array kReadings{
    taken(what::tread_depth, {"tyre", length, 0, 0.03, "tyre tire"}, {"depth gauge", kGrooves, kTread, 0.0003, 0.025},
          kFractions),
    taken(what::pressure_cold, {"tyre", pressure, 0, 160 * kPsi, "tyre tire"},
          {"tire gauge", {}, kTireGauge, 14 * kPsi, 140 * kPsi}),
    taken(what::end_play, {"hub", length, 0, 0.01, "bearing hub spindle"},
          {"dial indicator", kThrice, kDial, 0.000008, 0.0015}, kHigh),
    extra(what::pressure_hot, {"tyre", pressure, 0, 180 * kPsi, "tyre tire"},
          {"tire gauge", {}, kTireGauge, 14 * kPsi, 150 * kPsi}),
    taken(what::dual_gap, {"tyre", length, 0, 0.3, "tyre tire wheel"}, {"rule", {}, kTape, 0.005, 0.12}, kFractions),
    taken(what::dual_diameters, {"tyre", length, 0.2, 1.6, "tyre tire"}, {"tape", kDuals, kTape, 0.35, 1.3},
          kFractions),
    computed(what::dual_difference, {"tyre", length, 0, 0.3, "tyre tire"}, kHigh),
    replaced(what::tyre_date, {"tyre", ratio, 0, 9999, "tyre tire"}),
    computed(what::tyre_age, {"tyre", kTime, 0, 4e9, "tyre tire"}, kHigh),
    replaced(what::load_index, {"tyre", ratio, 50, 200, "tyre tire"}),
    replaced(what::load_rating, {"tyre", mass, 200, 6 * kTon, "tyre tire"}),
};

}  // namespace

std::span<const ReadingSpec> wheel_readings() {
    return kReadings;
}

}  // namespace cotter
