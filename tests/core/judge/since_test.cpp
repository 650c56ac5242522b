// Two visits side by side: what changed, what is the same, and what cannot be told.
#include "core/judge/since.h"

#include "core/trade/reading_spec.h"
#include "tests/core/judge/judge_bench.h"

using namespace cotter;
using namespace cotter::test;

namespace {

struct Visits {
    JudgeBench last{BrakeKind::hydraulic_disc, "2025-03-28", 2}, now{BrakeKind::hydraulic_disc, "2026-05-14", 1};

    [[nodiscard]] std::vector<ReadingChange> changes() const {
        Instant at = now.job.all<Visit>().front().opened;
        at.unix_s += 8 * 3600;
        return changes_since(last.job, now.job, at);
    }
    [[nodiscard]] ReadingChange only() const {
        const auto all = changes();
        REQUIRE(all.size() == 1);
        return all[0];
    }
};

}  // namespace

TEST_CASE("since the last visit: before, now and the change, in the unit read now") {
    Visits v;
    v.last.read("axle1-left", what::pad_thickness, "mm", {{"inner", "9.5"}});
    Reading& now = v.now.read("axle1-left", what::pad_thickness, "mm", {{"inner", "7.10"}});
    CHECK(v.only().told);
    CHECK(v.only().change == "−2.40 mm");
    CHECK(v.only().before->text() == "9.5 mm");
    CHECK(v.only().now->text() == "7.10 mm");
    now.points[0].value = *Number::parse("9.50");
    CHECK(v.only().change == "the same");
    now.points[0].value = *Number::parse("9.6");
    CHECK(v.only().change == "+0.1 mm");
    now.unit = "[in_i]";
    now.points[0].value = *Number::parse("0.280");
    CHECK(v.only().change == "−0.094 in");
}

TEST_CASE("since the last visit: what has no mate says why, and nothing is filled in") {
    Visits v;
    v.last.read("axle1-left", what::end_play, "[in_i]", {{"", "0.003"}});
    v.now.read("axle1-left", what::tread_depth, "[in_i]", {{"inner groove", "6/32"}});
    auto all = v.changes();
    REQUIRE(all.size() == 2);
    CHECK_FALSE(all[0].before.has_value());
    CHECK(all[0].change == "cannot tell, because it was not measured at the last visit");
    CHECK_FALSE(all[1].now.has_value());
    CHECK(all[1].change == "cannot tell, because it was not measured at this visit");
    CHECK_FALSE(all[1].told);
    Reading& skipped = v.now.read("axle1-left", what::end_play, "[in_i]", {});
    skipped.taken = Taken::not_accessible;
    skipped.reason = "the cap would not come off";
    CHECK(v.changes()[1].change == "cannot tell, because: not accessible: the cap would not come off");
}

TEST_CASE("since the last visit: never across a change of part, and another tyre is no difference of codes") {
    Visits v;
    v.last.read("axle1-left", what::pad_thickness, "mm", {{"inner", "2.0"}});
    v.last.find("axle1-left", "pads", "thin", Grade::repair).outcome = Outcome::repaired;
    v.now.read("axle1-left", what::pad_thickness, "mm", {{"inner", "8.0"}});
    CHECK_FALSE(v.only().told);
    CHECK(v.only().change.find("was repaired or replaced") != std::string::npos);
    Reading& fitted = v.last.read("axle1-left", what::pad_thickness, "mm", {{"inner", "10.0"}});
    fitted.stage = Stage::after;
    CHECK(v.only().change == "−2.0 mm");
    Visits t;
    t.last.read("axle1-left", what::tyre_date, "1", {{"", "3419"}});
    t.now.read("axle1-left", what::tyre_date, "1", {{"", "0525"}});
    CHECK(t.only().change == "another: not the same tyre");
}

TEST_CASE("since the last visit: of many points the worst is compared, whatever they are called") {
    Visits v;
    v.last.read("axle1-left", what::end_play, "[in_i]", {{"", "0.0040"}});
    v.now.read("axle1-left", what::end_play, "[in_i]",
               {{"first", "0.0030"}, {"second", "0.0050"}, {"third", "0.0045"}});
    v.now.read("trailer", what::run_since, "[mi_i]", {{"", "11400"}});
    CHECK(v.only().where == "largest");
    CHECK(v.only().change == "+0.0010 in");
    Visits r;
    r.last.read("axle1-left", what::rotor_thickness, "mm", {{"0", "21.08"}, {"45", "21.09"}});
    r.now.read("axle1-left", what::rotor_thickness, "mm", {{"0", "20.66"}, {"90", "20.62"}, {"135", "20.70"}});
    CHECK(r.only().where == "thinnest");
    CHECK(r.only().change == "−0.46 mm");
}

TEST_CASE("since the last visit: readings of the future and of no unit are not believed") {
    Visits v;
    v.last.read("axle1-left", what::end_play, "[in_i]", {{"", "0.003"}});
    Reading& now = v.now.read("axle1-left", what::end_play, "", {{"", "0.004"}});
    CHECK(v.only().change == "cannot tell, because: the unit is missing or not known");
    now.unit = "[in_i]";
    now.at.unix_s += 90 * 86400;
    CHECK(v.only().change.find("dated in the future") != std::string::npos);
}
