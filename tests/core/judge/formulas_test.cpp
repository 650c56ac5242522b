// The trade's worked examples of wear, discs, tyres, heat, brakes and weights, to the digits they are printed with.
#include <doctest/doctest.h>

#include <array>
#include <fmt/format.h>

#include "core/judge/braking.h"
#include "core/judge/disc.h"
#include "core/judge/heat.h"
#include "core/judge/tyres.h"
#include "core/judge/wear.h"
#include "core/judge/weights.h"
#include "core/trailer/tyre_date.h"

using namespace cotter;

namespace {
std::string digits(double value, int n) {
    return fmt::format("{:.{}f}", value, n);
}
constexpr double kPoundMass = 0.45359237;
}  // namespace

TEST_CASE("worked example: wear rate and remaining life with uncertainty") {
    const WearPair pair{9.5, 7.1, 11400, 3.0, 0.15, 0.05 * 11400};
    const WearLife life = wear_life(pair);
    REQUIRE(life.answer == WearAnswer::told);
    CHECK(digits(life.rate * 1000, 4) == "0.2105");
    CHECK(digits(life.left, 0) == "19475");
    CHECK(digits(life.from_second, 0) == "1930");
    CHECK(digits(life.from_first, 0) == "-1217");
    CHECK(digits(life.from_way, 0) == "974");
    CHECK(digits(life.u, 0) == "2481");
    CHECK(digits(life.plan, 0) == "14514");
    CHECK(digits(life.least, 2) == "0.42");
    WearPair law = pair;
    law.limit = 1.6;
    CHECK(digits(wear_life(law).left, 0) == "26125");
    WearPair days = pair;
    days.way = 412;
    CHECK(digits(wear_life(days).left, 0) == "704");
}

TEST_CASE("wear: too small, grown, without a way, at the limit") {
    CHECK(wear_life({7.1, 6.68, 1000, 3, 0.15, 0}).answer == WearAnswer::too_small);
    CHECK(wear_life({7.1, 6.67, 1000, 3, 0.15, 0}).answer == WearAnswer::told);
    CHECK(wear_life({7.1, 7.1, 1000, 3, 0.15, 0}).answer == WearAnswer::grew);
    CHECK(wear_life({7.1, 7.2, 1000, 3, 0.15, 0}).answer == WearAnswer::grew);
    CHECK(wear_life({9.5, 7.1, 0, 3, 0.15, 0}).answer == WearAnswer::no_way);
    CHECK(wear_life({9.5, 3.0, 1000, 3, 0.15, 0}).answer == WearAnswer::at_limit);
    CHECK(wear_life({9.5, 7.1, 100, 3, 2.0, 0}).answer == WearAnswer::too_small);
    CHECK(wear_life({9.5, 3.1, 100, 3, 0.5, 0}).plan == 0);
}

TEST_CASE("worked example: rotor thickness, variation and cut") {
    const std::array points{20.62, 20.64, 20.66, 20.67, 20.65, 20.63, 20.62, 20.64};
    const Ring ring = ring_of(points);
    CHECK(digits(ring.variation, 2) == "0.05");
    CHECK(digits(ring.variation / 25.4, 3) == "0.002");
    const RotorPlan cut = plan_rotor(ring, 0.20, {20.0, 20.5});
    CHECK(digits(cut.after_cut, 2) == "20.22");
    CHECK(cut.answer == RotorAnswer::replace);
    CHECK(plan_rotor(ring, 0, {20.0, 20.5}).answer == RotorAnswer::keep);
    CHECK(plan_rotor(ring, 0.05, {20.0, 20.5}).answer == RotorAnswer::machine);
    CHECK(plan_rotor(ring, 0.05, {20.0, {}}).answer == RotorAnswer::no_limit);
    CHECK(plan_rotor(ring, 0, {20.62, {}}).answer == RotorAnswer::replace);  // service only above discard
}

TEST_CASE("worked example: lining imbalance") {
    const Imbalance bad = imbalance_of(10.0, 3.2, 6.9), good = imbalance_of(10.0, 6.1, 5.8);
    CHECK(digits(bad.worn_one, 1) == "6.8");
    CHECK(digits(bad.worn_other, 1) == "3.1");
    CHECK(digits(*bad.percent, 0) == "75");
    CHECK(digits(*good.percent, 0) == "7");
    CHECK_FALSE(imbalance_of({}, 3.2, 6.9).percent);
    CHECK(digits(imbalance_of({}, 3.2, 6.9).difference, 1) == "3.7");
    CHECK_FALSE(imbalance_of(10.0, 10.0, 10.0).percent);  // nothing worn: no share of nothing
}

TEST_CASE("worked example: tyre age") {
    const auto week = tyre_week("3419");
    REQUIRE(week);
    CHECK(week->first.text() == "2019-08-25");
    CHECK(week->last.text() == "2019-08-31");
    CHECK(digits(tyre_age_years(*week, Date{2026, 2, 10}), 2) == "6.46");
    const auto other = tyre_week("0523");
    REQUIRE(other);
    CHECK(other->first.text() == "2023-01-29");
    CHECK(digits(tyre_age_years(*other, Date{2026, 2, 10}), 2) == "3.03");
    CHECK_FALSE(tyre_week("6019"));
    CHECK_FALSE(tyre_week("0019"));
}

TEST_CASE("worked example: tyre capacity against the axle's rating") {
    const double single = axle_capacity_kg(2, *load_index_kg(124), false);
    CHECK(digits(single, 0) == "3200");
    CHECK(digits(single / kPoundMass, 0) == "7055");
    CHECK(digits((single / kPoundMass / 7000 - 1) * 100, 1) == "0.8");
    const double dual = axle_capacity_kg(4, *load_index_kg(118), false);
    CHECK(digits(dual / kPoundMass, 0) == "11640");
    CHECK(digits((dual / kPoundMass / 12000 - 1) * 100, 1) == "-3.0");
    CHECK(digits(axle_capacity_kg(4, *load_index_kg(121), false) / kPoundMass, 0) == "12787");
    CHECK(digits(axle_capacity_kg(1, *load_index_kg(100), true), 0) == "727");
    CHECK(digits(axle_capacity_kg(1, *load_index_kg(100), true) / kPoundMass, 0) == "1603");
    CHECK(*load_index_kg(95) == 690);
    CHECK(*load_index_kg(60) == 250);
    CHECK_FALSE(load_index_kg(59));
    CHECK_FALSE(load_index_kg(141));
    CHECK(*load_index_kg(140) == 2500);
}

TEST_CASE("worked example: pressure cold and hot") {
    CHECK(digits(pressure_at(80, 20, 60), 1) == "92.9");
    CHECK(digits(pressure_at(80, 20, 20 + 10 / 1.8) - 80, 1) == "1.8");
    CHECK(cold_estimate_psi(92, 3500) == 87);
    CHECK(cold_estimate_psi(92, 4000) == 87);
    CHECK(cold_estimate_psi(92, 4001) == 77);
}

TEST_CASE("worked example: one hub hotter than its mates, and shiny metal") {
    const std::array hubs{54.0, 57.0, 55.0, 88.0};
    const auto heats = compare_hubs(hubs, 22);
    CHECK(heats[0].rise == 32);
    CHECK(heats[1].rise == 35);
    CHECK(heats[2].rise == 33);
    CHECK(heats[3].rise == 66);
    CHECK(heats[3].over_mates == 33);
    CHECK(digits(heats[3].over_mates * 1.8, 0) == "59");
    CHECK(digits(*heats[3].ratio, 1) == "2.0");
    CHECK(digits(gun_reads_c(90, 20, 0.1), 0) == "30");
    CHECK(digits(gun_reads_c(90, 20, 0.2), 0) == "39");
    CHECK(digits(gun_reads_c(90, 20, 0.5), 0) == "62");
}

TEST_CASE("worked example: pressure to clamp to stop") {
    const DiscBrake brake{2.25, 0.35, 4.7, 14.5, 7000};
    CHECK(digits(piston_area_in2(2.25), 3) == "3.976");
    CHECK(digits(piston_area_in2(2.25) * 2.54 * 2.54, 2) == "25.65");
    const auto line = [&](double psi) {
        const DiscEffort e = disc_effort(brake, psi);
        return fmt::format("{:.0f} {:.0f} {:.0f} {:.3f}", e.clamp_lb, e.torque_lb_ft, e.axle_lb, e.share);
    };
    CHECK(line(1000) == "3976 1090 1804 0.258");
    CHECK(line(1200) == "4771 1308 2165 0.309");
    CHECK(line(1600) == "6362 1744 2887 0.412");
    CHECK(digits(psi_for_share(brake, 0.435), 0) == "1688");
    DiscBrake slippery = brake, grippy = brake;
    slippery.friction = 0.30;
    grippy.friction = 0.40;
    CHECK(digits(disc_effort(slippery, 1200).share, 3) == "0.265");
    CHECK(digits(disc_effort(grippy, 1200).share, 3) == "0.353");
    CHECK(digits(surge_psi(1000, 1), 0) == "1273");
    CHECK(digits(surge_psi(900, 1), 0) == "1146");
    CHECK(digits(ideal_stop_ft(20, 0.435), 1) == "30.7");
}

TEST_CASE("worked example: brake fluid and holding pressure") {
    CHECK(fluid_class("DOT 3")->wet_c - 150 == -10);
    CHECK(fluid_class("DOT 4, sealed bottle")->wet_c - 150 == 5);
    CHECK(fluid_class("DOT 5.1")->dry_c == 260);
    CHECK(fluid_class("DOT 3")->dry_c == 205);
    CHECK_FALSE(fluid_class("mineral oil"));
    const Hold hold = hold_of(1000, 985, 4);
    CHECK(digits(hold.drop_share * 100, 1) == "1.5");
    CHECK(digits(hold.rate_per_min, 2) == "3.75");
}

TEST_CASE("worked example: the breakaway battery") {
    CHECK(digits(delivered_ah(12, 15), 1) == "3.0");
    const auto row = [](double ah) {
        return digits(battery_minutes(ah, 12, 1.15), 1) + " " + digits(battery_minutes(ah, 12, 1.25), 1);
    };
    CHECK(row(5) == "14.0 9.5");
    CHECK(row(7) == "20.6 14.5");
    CHECK(row(9) == "27.5 19.8");
    CHECK(row(12) == "38.3 28.4");
    const auto least = [](double amps) {
        return digits(rated_ah_for(15, amps, 1.15), 1) + " " + digits(rated_ah_for(15, amps, 1.25), 1);
    };
    CHECK(least(6) == "2.7 3.6");
    CHECK(least(12) == "5.3 7.2");
    CHECK(least(18) == "8.0 10.8");
    CHECK(digits(*lead_drop_v(10, 25, 12), 2) == "0.60");
    CHECK(digits(*lead_drop_v(12, 25, 12), 2) == "0.95");
    CHECK(*lead_drop_v(14, 25, 12) == doctest::Approx(1.515));
    CHECK(digits(*lead_drop_v(16, 25, 12), 2) == "2.41");
    CHECK_FALSE(lead_drop_v(18, 25, 12));
    const MagnetCurrent m = magnets_at(12, 4, 4, 0.079);
    CHECK(digits(m.volts, 1) == "11.1");
    CHECK(digits(m.amps_each, 2) == "2.78");
}

TEST_CASE("worked example: weights") {
    const std::array axles{6240.0, 6610.0};
    const TrailerWeight w = trailer_weight(axles, 1480);
    CHECK(digits(w.gross, 0) == "14330");
    CHECK(digits(w.gross - 14000, 0) == "330");
    CHECK(digits((w.gross / 14000 - 1) * 100, 1) == "2.4");
    CHECK(digits(w.tongue_share * 100, 1) == "10.3");
    const double tyre_lb = *load_index_kg(124) / kPoundMass;
    CHECK(digits(6610 / 2 / tyre_lb * 100, 1) == "93.7");
    CHECK(digits(3480 / tyre_lb * 100, 1) == "98.7");
    CHECK(surge_ratio_limit(12000) == 1.75);
    CHECK(surge_ratio_limit(12001) == 1.25);
    CHECK(surge_ratio_limit(20000) == 1.25);
    CHECK(surge_ratio_limit(20001) == 0);
}
