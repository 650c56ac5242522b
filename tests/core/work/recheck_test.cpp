// What is due after a job, from the shipped rules.
#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "core/work/recheck.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

RecheckRules shipped() {
    std::stringstream text;
    text << std::ifstream(COTTER_SOURCE_DIR "/assets/procedures/rechecks.json").rdbuf();
    auto rules = rechecks_from_json(text.str());
    REQUIRE_MESSAGE(rules, (rules ? "" : rules.error().line()));
    return *rules;
}

const Recheck* find(const std::vector<Recheck>& all, const std::string& rule) {
    for (const Recheck& r : all)
        if (r.rule == rule) return &r;
    return nullptr;
}

}  // namespace

TEST_CASE("re-checks: what was done calls for what is due, with its source") {
    const auto all = rechecks(shipped(), sample_job(), Date{2026, 5, 14});
    const Recheck* nuts = find(all, "nuts-first");
    REQUIRE(nuts != nullptr);
    CHECK(nuts->words == "after 10, 25 and 50 miles");
    CHECK(nuts->places == "axle1-left");
    CHECK(nuts->distances.size() == 3);
    CHECK(nuts->distances[1].text().substr(0, 2) == "25");
    CHECK_FALSE(nuts->law);
    CHECK(find(all, "nuts-routine")->words == "by 2026-08-13 or after 3000 miles, and before each trip");
    CHECK(find(all, "oil-next-day")->due == Date{2026, 5, 15});
    CHECK(find(all, "tyres")->words == "before each trip");
    for (const char* none : {"grease", "surge", "u-bolts", "inspection", "hub-heat", "electric-adjust"})
        CHECK_MESSAGE(find(all, none) == nullptr, none);
    for (const Recheck& r : all) CHECK_FALSE(r.source.empty());
}

TEST_CASE("re-checks: each cause is found in the records that show it") {
    Job job = sample_job();
    Trailer trailer = *job.only<Trailer>();
    trailer.actuation = Actuation::surge;
    trailer.axles[1].hub = HubKind::grease;
    trailer.axles[1].brake = BrakeKind::electric_drum;
    Torque bolts = sample_torque();
    bolts.id = {numbered(70)};
    bolts.joint = "U-bolts";
    BearingSetting set;
    set.id = {numbered(71)};
    set.place = Place::corner(2, Side::right);
    set.at = moment(9);
    Inspection inspection;
    inspection.id = {numbered(72)};
    inspection.at = moment(9);
    const auto after = apply(job, edit_of({Put{trailer, {}}, Put{bolts, {}}, Put{set, {}}, Put{inspection, {}}}, 10));
    REQUIRE_MESSAGE(after, (after ? "" : after.error().line()));
    const auto all = rechecks(shipped(), *after, Date{2026, 5, 14});
    CHECK(find(all, "grease")->places == "axle2-left, axle2-right");
    CHECK(find(all, "electric-adjust")->words == "by 2027-05-14 or after 200 and 3000 miles");
    CHECK(find(all, "surge")->places == "actuator");
    CHECK(find(all, "u-bolts")->words == "after 500 and 1000 miles");
    CHECK(find(all, "hub-heat")->places == "axle2-right");
    CHECK(find(all, "inspection")->due == Date{2027, 5, 14});
}

TEST_CASE("re-checks: an inspection's interval is law for a carrier only, a reference for everybody else") {
    Job job = sample_job();
    Inspection inspection;
    inspection.id = {numbered(72)};
    inspection.at = moment(9);
    job.all<Inspection>().push_back(inspection);
    for (const Duty duty : {Duty::not_said, Duty::business, Duty::farm, Duty::private_use, Duty::carrier}) {
        job.all<Visit>()[0].duty = duty;
        const auto all = rechecks(shipped(), job, Date{2026, 5, 14});
        const Recheck* due = find(all, "inspection");
        REQUIRE(due != nullptr);
        CHECK(due->law == (duty == Duty::carrier));
        CHECK(due->source.starts_with("Reference (binds commercial trailers): 49 CFR 396.17") != due->law);
    }
}

TEST_CASE("A31: a wheel that was off is due for retorque, whether its torque was recorded or not") {
    Job job = sample_job();
    job.all<Torque>().clear();
    job.all<Reading>().clear();
    job.all<Shot>().clear();
    job.all<StepMark>().clear();
    job.all<BearingSetting>().clear();
    CHECK(find(rechecks(shipped(), job, Date{2026, 5, 14}), "nuts-first") == nullptr);
    StepMark off;
    off.id = {numbered(80)};
    off.procedure = "wheel-off";
    off.step = "U8";
    off.place = Place::corner(2, Side::right);
    off.at = moment(9);
    off.by = "A. Tester";
    job.all<StepMark>().push_back(off);
    const auto all = rechecks(shipped(), job, Date{2026, 5, 14});
    const Recheck* nuts = find(all, "nuts-first");
    REQUIRE(nuts != nullptr);
    CHECK(nuts->places == "axle2-right");
    CHECK(nuts->words == "after 10, 25 and 50 miles");
}
