// Forecasts from visits, and when they are refused.
#include "core/judge/forecast.h"

#include "core/trade/reading_spec.h"
#include "tests/core/judge/judge_bench.h"
#include "tests/support/invented.h"

using namespace cotter;
using namespace cotter::test;

namespace {

// Two visits 412 days apart: a pad of 9.5 mm, then 7.1 mm.
struct TwoVisits {
    JudgeBench before{BrakeKind::hydraulic_disc, "2025-03-28", 2}, now{BrakeKind::hydraulic_disc, "2026-05-14", 1};
    Reading& first = before.read("axle1-left", what::pad_thickness, "mm", {{"inner", "9.5"}});
    Reading& second = now.read("axle1-left", what::pad_thickness, "mm", {{"inner", "7.1"}});

    TwoVisits() { first.resolution = second.resolution = *Number::parse("0.1"); }
    Forecast foretell() {
        now.earlier = {before.job};
        const auto all = now.judge().forecasts;
        REQUIRE(all.size() == 1);
        return all[0];
    }
};

}  // namespace

TEST_CASE("worked example: forecast from two visits and the way between them") {
    TwoVisits v;
    v.now.read("trailer", what::run_since, "[mi_i]", {{"", "11400"}});
    const Forecast f = v.foretell();
    REQUIRE(f.answer == WearAnswer::told);
    CHECK(f.says == "plan on 14514 mi (19475 ± 2481 left to at least 3 mm, friction material only)");
    CHECK(f.steps.at(0) == "(9.50 − 7.10) mm ÷ 11400 mi = 0.2105 mm in 1,000 mi");
    REQUIRE(f.points.size() == 2);
    CHECK(f.points[1].way == doctest::Approx(11400));
    CHECK(f.source == "common practice: shops renew at 1/8 in (3 mm); confirm with the maker");
}

TEST_CASE("forecast: without a way it counts days; an owner's estimate is less sure") {
    TwoVisits v;
    Forecast f = v.foretell();
    REQUIRE(f.answer == WearAnswer::told);
    CHECK(f.way_unit == "days");
    CHECK(f.life.left == doctest::Approx(703.83).epsilon(0.001));
    Reading& way = v.now.read("trailer", what::run_since, "[mi_i]", {{"", "11400"}});
    const double sure = v.foretell().life.u;
    way.instrument = "owner's estimate";
    CHECK(v.foretell().life.u > sure * 1.5);
}

TEST_CASE("forecast: the hub counter at both visits gives the way") {
    TwoVisits v;
    v.before.read("trailer", what::run_total, "km", {{"", "1000"}});
    v.now.read("trailer", what::run_total, "km", {{"", "5000"}});
    CHECK(v.foretell().way_unit == "km");
    CHECK(v.foretell().points.at(1).way == doctest::Approx(4000));
}

TEST_CASE("forecast: refused when nothing can be foretold") {
    TwoVisits v;
    v.now.job.all<Reading>()[0].points[0].value = *Number::parse("9.2");
    CHECK(v.foretell().answer == WearAnswer::too_small);
    v.now.job.all<Reading>()[0].points[0].value = *Number::parse("9.5");
    CHECK(v.foretell().answer == WearAnswer::grew);  // no wear at all
    v.now.job.all<Reading>()[0].points[0].value = *Number::parse("9.9");
    CHECK(v.foretell().says.find("check the corner, the part or the method") != std::string::npos);
    v.now.job.all<Reading>()[0].points[0].value = *Number::parse("2.9");
    CHECK(v.foretell().answer == WearAnswer::at_limit);
}

TEST_CASE("forecast: a wear hardly larger than the reading's doubt is told, and nothing is to be planned on it") {
    TwoVisits v;
    v.now.read("trailer", what::run_since, "[mi_i]", {{"", "11400"}});
    v.now.job.all<Reading>()[0].points[0].value = *Number::parse("9.07");
    const Forecast f = v.foretell();
    REQUIRE(f.answer == WearAnswer::told);
    CHECK(f.life.plan <= 0);
    CHECK(f.says.starts_with("too uncertain to plan on: 1"));
    CHECK(f.says.find("plan on 0") == std::string::npos);
    CHECK(f.steps.back().ends_with("is below 0"));
}

TEST_CASE("forecast: never across a change of part") {
    TwoVisits v;
    v.before.find("axle1-left", "pads", "thin", Grade::repair).outcome = Outcome::repaired;
    const Forecast f = v.foretell();
    CHECK(f.answer == WearAnswer::no_way);
    CHECK(f.says.find("the part was changed") != std::string::npos);
    CHECK(f.points.size() == 1);
    Reading& fresh = v.before.read("axle1-left", what::pad_thickness, "mm", {{"inner", "10.0"}});
    fresh.stage = Stage::after;
    CHECK(v.foretell().answer == WearAnswer::told);
    CHECK(v.foretell().life.worn == doctest::Approx(2.9));
}

TEST_CASE("A27 forecast: new shoes end the lining's series, however they are called") {
    for (const char* component : {"shoes", "Shoes", "brake lining", "shoe lining"}) {
        CAPTURE(component);
        JudgeBench before{BrakeKind::electric_drum, "2025-03-28", 2}, now{BrakeKind::electric_drum, "2026-05-14", 1};
        before.read("axle1-left", what::lining_thickness, "mm", {{"front shoe, centre", "4.5"}}).resolution =
            *Number::parse("0.1");
        before.find("axle1-left", component, "lining thin", Grade::repair).outcome = Outcome::repaired;
        now.read("axle1-left", what::lining_thickness, "mm", {{"front shoe, centre", "4.0"}}).resolution =
            *Number::parse("0.1");
        now.earlier = {before.job};
        const auto all = now.judge().forecasts;
        REQUIRE(all.size() == 1);
        CHECK(all[0].answer == WearAnswer::no_way);
        CHECK(all[0].says.find("the part was changed") != std::string::npos);
    }
}

TEST_CASE("forecast: another point, another trailer, a later visit do not count") {
    TwoVisits v;
    v.before.job.all<Reading>()[0].points[0].where = "outer";
    CHECK(v.foretell().says == "cannot tell, because no earlier visit measured this point");
    v.before.job.all<Reading>()[0].points[0].where = "inner";
    CHECK(v.foretell().answer == WearAnswer::told);
    v.before.trailer().vin = invented_vin(1);
    CHECK(v.foretell().answer == WearAnswer::no_way);
    v.before.trailer().vin = v.now.trailer().vin;
    v.before.job.all<Visit>()[0].opened = *Instant::parse("2027-01-01T08:00:00Z");
    CHECK(v.foretell().answer == WearAnswer::no_way);
}

TEST_CASE("A28 forecast: a break in the rate is said, and the last leg counts") {
    JudgeBench first{BrakeKind::hydraulic_disc, "2025-01-10", 3}, second{BrakeKind::hydraulic_disc, "2025-08-10", 2},
        now{BrakeKind::hydraulic_disc, "2026-05-14", 1};
    const std::pair<JudgeBench*, std::pair<const char*, const char*>> visits[] = {
        {&first, {"10.0", "0"}}, {&second, {"9.8", "10000"}}, {&now, {"6.8", "20000"}}};
    for (const auto& [bench, seen] : visits) {
        bench->read("axle1-left", what::pad_thickness, "mm", {{"inner", seen.first}}).resolution =
            *Number::parse("0.1");
        bench->read("trailer", what::run_total, "[mi_i]", {{"", seen.second}});
    }
    now.earlier = {first.job, second.job};
    const auto all = now.judge().forecasts;
    REQUIRE(all.size() == 1);
    CHECK(all[0].life.left == doctest::Approx(12666.7).epsilon(0.001));
    CHECK(all[0].says.ends_with("; it wears faster now: 0.2 mm, then 3.0 mm in 10,000 mi"));
    CHECK(all[0].points.size() == 3);
}
