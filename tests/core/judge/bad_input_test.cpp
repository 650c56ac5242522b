// What people really key in: each kind of bad input is an honest 'cannot tell, because …', never a grade.
#include <fmt/format.h>

#include <algorithm>

#include "core/trade/reading_spec.h"
#include "tests/core/judge/judge_bench.h"

using namespace cotter;
using namespace cotter::test;

namespace {

struct Bad {
    const char* place;
    std::string_view what;
    const char* unit;
    const char* value;
    const char* because;
};

std::string because(const Summary& s, std::string_view subject) {
    const auto all = unknowns_on(s.now, subject);
    return all.empty() ? std::string() : all.front().because;
}

}  // namespace

TEST_CASE("bad input: no unit, a unit of something else, a number out of range") {
    constexpr Bad kBad[]{{"axle1-left", what::pad_thickness, "", "8.0", "the unit is missing or not known"},
                         {"axle1-left", what::pad_thickness, "[psi]", "8.0", "8.0 psi is in a unit of something else"},
                         {"axle1-left", what::pad_thickness, "[in_i]", "8.0", "8.0 in is not plausible"},
                         {"axle1-left", what::rotor_thickness, "mm", "2.06", "2.06 mm is not plausible"},
                         {"axle1-left", what::tread_depth, "[in_i]", "7", "7 in is not plausible"},
                         {"axle1-left", what::pressure_cold, "[psi]", "800", "800 psi is not plausible"},
                         {"axle1-left", what::end_play, "mm", "-0.1", "-0.1 mm is not plausible"},
                         {"axle1-left", what::load_index, "1", "12", "12 is not plausible"},
                         {"trailer", what::axle_weight, "[lb_av]", "624000", "624000 lb is not plausible"},
                         {"actuator", what::battery_volts, "V", "126", "126 V is not plausible"},
                         {"actuator", what::line_pressure, "V", "12", "12 V is in a unit of something else"}};
    for (const Bad& bad : kBad) {
        CAPTURE(bad.because);
        JudgeBench bench;
        bench.read(bad.place, bad.what, bad.unit, {{"", bad.value}});
        const Summary s = bench.judge();
        CHECK(because(s, bad.what).starts_with(bad.because));
        CHECK(reasons_on(s.now, bad.what).empty());
        CHECK(s.towing == Towing::cannot_tell);
    }
}

TEST_CASE("bad input: tyre codes that no tyre bears") {
    for (const char* code : {"6019", "0019", "5499", "5321"}) {
        CAPTURE(code);
        JudgeBench bench;
        bench.read("axle1-left", what::tyre_date, "1", {{"", code}});
        CHECK_FALSE(because(bench.judge(), what::tyre_age).empty());
        CHECK(reasons_on(bench.judge().now, what::tyre_age).empty());
    }
}

TEST_CASE("bad input: dates in the future are not believed, the clock may be wrong by a day") {
    JudgeBench bench;
    bench.complete();
    Reading& late = bench.read("axle1-left", what::end_play, "[in_i]", {{"", "0.003"}});
    late.at.unix_s += 20 * 3600;
    CHECK(because(bench.judge(), what::end_play).empty());
    late.at.unix_s += 40 * 86400;
    CHECK(because(bench.judge(), what::end_play).starts_with("dated in the future"));
}

TEST_CASE("bad input: missing mates are said wherever one is compared with another") {
    JudgeBench pads;
    pads.read("axle1-left", what::pad_thickness, "mm", {{"outer", "8.0"}});
    CHECK(because(pads.judge(), what::pad_imbalance) == "the inner pad was not measured");
    CHECK(because(pads.judge(), what::axle_imbalance) == "the right side has no reading to compare with");
    JudgeBench shoes(BrakeKind::electric_drum);
    shoes.read("axle2-right", what::lining_thickness, "mm", {{"primary", "4.0"}});
    CHECK(because(shoes.judge(), what::axle_imbalance) == "the left side has no reading to compare with");
    JudgeBench hubs;
    hubs.read("trailer", what::hub_temperature, "Cel",
              {{"axle 1 left", "54"}, {"axle 1 right", "80"}, {"ambient", "22"}});
    const auto heat = unknowns_on(hubs.judge().now, what::hub_temperature);
    CHECK(std::any_of(heat.begin(), heat.end(),
                      [](const Unknown& u) { return u.because == "fewer than three hubs to compare"; }));
    JudgeBench load;
    load.read("trailer", what::axle_weight, "[lb_av]", {{"axle 1", "6240"}});
    load.read("trailer", what::tongue_weight, "[lb_av]", {{"", "1480"}});
    CHECK(because(load.judge(), "gross weight") == "not every axle was weighed");
    JudgeBench hold;
    hold.read("actuator", what::pressure_hold, "[psi]", {{"after 4 min", "985"}});
    CHECK(because(hold.judge(), what::hold_drop) == "the pressure at the start is missing");
}

TEST_CASE("bad input: zero wear gives no share, no rate and no forecast") {
    JudgeBench before(BrakeKind::hydraulic_disc, "2025-03-28", 2), now;
    before.read("axle1-left", what::pad_thickness, "mm", {{"inner", "10.0"}, {"outer", "10.0"}});
    now.read("axle1-left", what::pad_when_new, "mm", {{"", "10.0"}});
    now.read("axle1-left", what::pad_thickness, "mm", {{"inner", "10.0"}, {"outer", "10.0"}});
    now.earlier = {before.job};
    const Summary s = now.judge();
    const auto imbalance = reasons_on(s.now, what::pad_imbalance);
    REQUIRE(imbalance.size() == 1);
    CHECK(imbalance[0].grade == Grade::serviceable);
    CHECK(imbalance[0].steps.size() == 1);  // no per cent of nothing
    REQUIRE_FALSE(s.forecasts.empty());
    for (const Forecast& f : s.forecasts) {
        CHECK(f.answer == WearAnswer::grew);
        CHECK(f.says.find("check the corner, the part or the method") != std::string::npos);
    }
}

TEST_CASE("bad input: makers' figures that contradict each other decide nothing, either way round") {
    JudgeBench bench;
    bench.read("axle1-left", what::rotor_thickness, "mm", {{"", "20.3"}});
    bench.maker(what::rotor_thickness, Bound::at_least, "20.0", "mm");
    bench.maker(what::rotor_thickness, Bound::at_least, "20.5", "mm");
    CHECK(because(bench.judge(), what::rotor_thickness).starts_with("two makers' figures contradict each other"));
    CHECK(reasons_on(bench.judge().now, what::rotor_thickness).empty());
    bench.job.all<MakerLimit>().back().bound = Bound::at_most;  // a lowest of 20.0 above a highest of 19.0
    bench.job.all<MakerLimit>().back().value = *make_amount("19.0", "mm");
    CHECK(because(bench.judge(), what::rotor_thickness).starts_with("two makers' figures contradict each other"));
}
