// Whole jobs by taps alone, from the first start on an empty book to the signature. Each ends with one answer on
// towing, the same wherever it is asked for.
#include <doctest/doctest.h>

#include "app/views/corner_view.h"
#include "app/views/hand_over_view.h"
#include "app/views/plan_view.h"
#include "app/views/point_view.h"
#include "app/views/summary_view.h"
#include "tests/app/taps.h"

using namespace cotter;

namespace {

// The same answer on the plan, on its own page, at the hand-over and from the judge itself.
void one_answer(Taps& t, Towing wanted) {
    const Summary judged =
        judge_job(t.job(), t.session().judge().reg().limits, {t.session().judge().earlier(t.job()), t.session().now()});
    CHECK(judged.towing == wanted);
    CHECK(t.session().summary().answer == judged.answer);
    CHECK(plan_view(t.session()).answer == wanted);
    CHECK(summary_view(t.session()).towing == wanted);
    CHECK(summary_view(t.session()).word == towing_word(wanted));
    CHECK(hand_over_view(t.session()).answer == wanted);
    CHECK(hand_over_view(t.session()).acknowledge == (wants_acknowledgement(wanted) ? judged.answer : std::string()));
}

void plan(Taps& t) {
    for (int i = 0; i < 8 && t.route().screen != Screen::plan; ++i) t.back();
    REQUIRE(t.route().screen == Screen::plan);
}

// The signing sheet: a name, and for an answer that keeps it where it is, that it was read.
void sign(Taps& t, bool acknowledge) {
    plan(t);
    t.touch("Hand over");
    t.touch("Sign off");
    if (t.log().shows("Whose work is it?")) {
        t.touch("Name of the technician");
        t.hands->type("R. Alder");
        t.touch("Save the name");
    } else {
        t.touch("Handed over by");
        t.hands->type("R. Alder");
    }
    if (acknowledge) {
        CHECK_FALSE(t.tap("Sign"));  // not before it was read
        CHECK_FALSE(t.job().signed_off());
        t.touch("I read this and told the customer");
    }
    const std::string answer = t.session().summary().answer;
    t.touch("Sign");
    REQUIRE(t.job().signed_off());
    CHECK(t.job().only<SignOff>()->acknowledged == (acknowledge ? answer : std::string()));
}

void look_at(Taps& t, std::string_view title) {
    plan(t);
    t.touch("What is looked at");
    (void)t.tap("Each of them");
    t.touch(std::string(title));
    REQUIRE(t.route().screen == Screen::point);
}

void find_wrong(Taps& t, const std::string& entry) {
    t.touch("Something is wrong");
    t.touch(entry);
    t.touch("Record what is wrong");
}

}  // namespace

TEST_CASE("an owner's look: plain questions of one polarity, and it stops at a bad answer") {
    Taps t;
    t.begin();
    t.axles("One", "Single", "None", "Grease");
    t.to_plan();
    t.touch("Work, step by step");
    t.touch("Owner's look");
    CHECK(t.session().settings().owner);
    CHECK(t.visit().role == VisitRole::owner);
    look_at(t, "Both faces of the tire");
    CHECK(t.log().shows("Looks good"));
    t.touch("Looks good");
    CHECK(t.job().all<Look>().back().reach == Reach::outside);
    for (const PointRow& r : points_view(t.session()).open) CHECK(point(r.point).reach == Reach::outside);
    one_answer(t, Towing::cannot_tell);
    look_at(t, "Wheel and rim");
    const std::string worst = point_view(t.session(), Stage::before).entries.front().text;
    find_wrong(t, worst);
    CHECK(t.log().shows("Do not tow"));
    t.touch("May it be towed?");
    CHECK(t.route().screen == Screen::summary);
    CHECK(t.log().shows("Do not tow"));
    one_answer(t, Towing::no);
    sign(t, true);
    one_answer(t, Towing::no);
}

TEST_CASE("a boat trailer on hydraulic drums, metric: a thin lining is judged as it is keyed and becomes a finding") {
    Taps t;
    t.begin();
    t.axles("One", "Single", "Hydraulic drum", "Grease");
    t.to_plan();
    t.touch("Plate and use");
    t.amount("GVWR", "1360", "kg");
    t.words("Kind", "boat trailer");
    t.touch("Brakes and coupling");
    t.choose("The brakes are applied by", "Surge");
    t.choose("Coupler", "Ball");
    t.amount("Ball size it is made for", "50", "mm");
    CHECK(t.trailer().gvwr->text() == "1360 kg");
    plan(t);
    t.touch("Axle 1, left");
    t.touch("Lining thickness");
    t.touch("mm");
    for (const char c : std::string_view("1.2")) t.touch(std::string(1, c));
    const auto entry = corner_view(t.session()).entry;
    REQUIRE(entry.has_value());
    CHECK(entry->judged.grade == Grade::do_not_tow);
    CHECK(entry->judged.limit == "at least 1.588 mm");
    CHECK(t.log().shows("at least 1.588 mm"));
    CHECK(t.log().shows("49 CFR 393.47"));
    t.touch("Save as a finding, and quote it");
    REQUIRE(t.job().all<Reading>().size() == 1);
    REQUIRE(t.job().all<Finding>().size() == 1);
    CHECK(t.job().all<Finding>()[0].grade == Grade::do_not_tow);
    CHECK(t.job().all<Finding>()[0].defect.find("1.2 mm, at least 1.588 mm") != std::string::npos);
    one_answer(t, Towing::no);
    sign(t, true);
    one_answer(t, Towing::no);
}

TEST_CASE("a tandem on electric drums with an idler: the axle without brakes is said, and the rest cannot be told") {
    Taps t;
    t.begin();
    t.axles("Two", "Single", "Electric drum", "Grease");
    t.touch("The axles differ");
    t.touch("Axle 2");
    t.touch("None");
    t.to_plan();
    CHECK(t.trailer().axles[0].brake == BrakeKind::electric_drum);
    CHECK(t.trailer().axles[1].brake == BrakeKind::none);
    t.touch("Plate and use");
    t.amount("GVWR", "7000", "lb");
    t.touch("Use");
    t.choose("Used by", "Carrier");
    one_answer(t, Towing::after_repair);  // a carrier's brakes act on all wheels
    plan(t);
    t.touch("Axle 1, left");
    t.touch("Magnet current");
    t.key_points({"3.1"});
    REQUIRE(t.job().all<Reading>().size() == 1);
    one_answer(t, Towing::after_repair);
    sign(t, true);
    one_answer(t, Towing::after_repair);
}

TEST_CASE("three axles with duals: each of twelve tires has its own answer") {
    Taps t;
    t.begin();
    t.axles("Three", "Dual", "Hydraulic disc", "Oil bath");
    t.to_plan();
    t.touch("What is looked at");
    std::size_t tires = 0;
    for (const PointRow& r : points_view(t.session()).open) tires += r.point == PointId::tire_face ? 1 : 0;
    CHECK(tires == 12);
    for (int i = 0; i < 3; ++i) {
        look_at(t, "Both faces of the tire");
        t.touch("Looks good");
    }
    std::size_t left = 0;
    plan(t);
    t.touch("What is looked at");
    for (const PointRow& r : points_view(t.session()).open) left += r.point == PointId::tire_face ? 1 : 0;
    CHECK(left == 9);
    one_answer(t, Towing::cannot_tell);
    sign(t, true);
    one_answer(t, Towing::cannot_tell);
}
