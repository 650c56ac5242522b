// What the shipped procedures ask for, case by case: air axles, holds that a test must pass, every wheel and every hub,
// what is said where somebody can be hurt.
#include <doctest/doctest.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/work/tried.h"
#include "tests/core/work/work_yard.h"

using namespace cotter;
using namespace cotter::test;

namespace {

const Place kCorner = Place::corner(1, Side::left);
const Place kRight = Place::corner(1, Side::right);
const Place kTrailer = Place::at(Station::trailer);

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

const Step& step_of(const WorkBook& book, const char* id) {
    const Step* step = book.step(id).step;
    REQUIRE_MESSAGE(step != nullptr, id);
    return *step;
}

bool proved(const Yard& yard, const WorkBook& book, const char* step) {
    return step_state(book, step, yard.job, kTrailer).missing_proof.empty();
}

void read_at(Yard& yard, const char* what, Place place, Stage stage, std::vector<ReadingPoint> points = {}) {
    Reading r = sample_reading();
    r.id = {yard.new_id()};
    r.what = what;
    r.place = place;
    r.stage = stage;
    if (!points.empty()) r.points = std::move(points);
    r.at = yard.now();
    yard.put(r);
}

void look_at(Yard& yard, Place place, LookResult result) {
    Look look;
    look.id = {yard.new_id()};
    look.point = "brk.works";
    look.place = place;
    look.result = result;
    look.reach = Reach::wheel_on;
    look.at = yard.now();
    look.by = "A. Tester";
    yard.put(look);
}

}  // namespace

TEST_CASE("A41: 'Wheel off' and 'Bearings' are not offered on an air axle") {
    const WorkBook book = shipped_work();
    for (const BrakeKind air :
         {BrakeKind::air_untyped, BrakeKind::air_cam, BrakeKind::air_wedge, BrakeKind::air_disc}) {
        const Yard yard({BrakeKind::electric_drum, air});
        for (const char* id : {"wheel-off", "bearing"}) {
            const Procedure& procedure = *book.procedure(id);
            CHECK(places_of(procedure, yard.job).size() == 2);
            CHECK(applies(procedure, yard.job, kCorner));
            CHECK_FALSE(applies(procedure, yard.job, Place::corner(2, Side::left)));
            CHECK(procedure_state(book, procedure, yard.job, Place::corner(2, Side::left)).empty());
        }
    }
    Yard yard({BrakeKind::air_cam});
    const StepMark mark = yard.mark(book, "U8", kCorner, StepWord::done);
    REQUIRE_FALSE(objections(book, yard.job, mark).empty());
    CHECK(has(objections(book, yard.job, mark).front(), "is not done at axle1-left of this trailer"));
}

TEST_CASE("procedures: spring brakes are held before air is let out, on air brakes only") {
    const WorkBook book = shipped_work();
    Yard air({BrakeKind::air_cam});
    for (const char* step : {"U1", "U3"}) air.do_step(book, step, kTrailer);
    const StepView held = step_state(book, "U4a", air.job, kTrailer);
    CHECK(held.cautions.size() == 2);
    air.read_cautions(book, "U4a", kTrailer);
    StepMark mark = air.mark(book, "U4a", kTrailer, StepWord::done);
    REQUIRE_FALSE(objections(book, air.job, mark).empty());
    CHECK(has(objections(book, air.job, mark).front(), "Do not drain the air until each chamber is named"));
    mark.note = "1 left and right: type 30, caged; two tools in";
    CHECK(objections(book, air.job, mark).empty());
    CHECK(has(step_of(book, "U4a").plain, "APPLIES spring brakes"));
    const Yard electric({BrakeKind::electric_drum});
    CHECK(step_state(book, "U4a", electric.job, kTrailer).state == StepState::other_hub);
    CHECK(has(step_of(book, "U4").plain, "Air brakes: stop"));
    CHECK_FALSE(has(step_of(book, "U4").plain, "drop to zero"));
}

TEST_CASE("procedures: fluid is asked of hydraulic brakes, and nobody declares it not needed") {
    const WorkBook book = shipped_work();
    const Yard electric({BrakeKind::electric_drum}), mixed({BrakeKind::electric_drum, BrakeKind::hydraulic_disc});
    for (const char* step : {"R3", "P4"}) {
        CHECK(step_state(book, step, electric.job, kTrailer).state == StepState::other_hub);
        CHECK(step_state(book, step, mixed.job, kTrailer).state != StepState::other_hub);
        CHECK(step_of(book, step).optional.empty());
    }
    CHECK(step_of(book, "U7").optional.empty());
}

TEST_CASE("procedures: a hold that lost more than a tenth closes nothing") {
    const auto held = [](const char* start, const char* end) {
        return held_pressure(hold_of(sample_reading(), start, end));
    };
    CHECK(held("1000", "985"));
    CHECK(held("1000", "900"));
    CHECK_FALSE(held("1000", "880"));
    CHECK_FALSE(held("1600", "400"));
    CHECK_FALSE(held("0", "0"));
    Reading two = hold_of(sample_reading(), "1000", "970");
    two.points[1].where = "after 2 min";
    CHECK(held_pressure(two));
    two.points[1].value = Number::parse("950").value();  // as fast as 12.5 % in 5 minutes
    CHECK_FALSE(held_pressure(two));
    two.points[1].where = "after a while";
    CHECK_FALSE(held_pressure(two));
    two.points = {{"inner", Number::parse("3.2").value()}, {"outer", Number::parse("6.9").value()}};
    CHECK_FALSE(held_pressure(two));  // any pair of numbers is no hold
    const WorkBook book = shipped_work();
    for (const char* id : {"D16", "H7", "F8"}) {
        Yard yard({BrakeKind::hydraulic_disc});
        const Proof& proof = step_of(book, id).proofs.front();
        Reading bad = hold_of(sample_reading(), "1000", "880");
        bad.id = {yard.new_id()};
        bad.stage = Stage::after;
        yard.put(bad);
        CHECK_FALSE(holds_proof(yard.job, proof, kTrailer, nullptr));
        yard.prove(proof, kTrailer);
        CHECK(holds_proof(yard.job, proof, kTrailer, nullptr));
    }
}

TEST_CASE("procedures: pressures of every tire and heat of every hub, one proves none of the others") {
    const WorkBook book = shipped_work();
    for (const char* step : {"R7", "P5"}) {
        Yard yard({BrakeKind::electric_drum});
        read_at(yard, "tyre pressure, cold", kCorner, Stage::before);
        CHECK_FALSE(proved(yard, book, step));
        read_at(yard, "tyre pressure, cold", kRight, Stage::before);
        CHECK(proved(yard, book, step));
        Trailer duals = *yard.job.only<Trailer>();
        duals.axles[0].wheels = Wheels::dual;
        yard.put(duals);
        CHECK_FALSE(proved(yard, book, step));
        for (const Side side : {Side::left, Side::right})
            for (const Wheel wheel : {Wheel::inner, Wheel::outer})
                read_at(yard, "tyre pressure, cold", Place::corner(1, side, wheel), Stage::before);
        CHECK(proved(yard, book, step));
    }
    Yard yard({BrakeKind::electric_drum});
    const Number warm = Number::parse("48").value();
    read_at(yard, "hub temperature after road test", kTrailer, Stage::after,
            {{"axle 1 left", warm}, {"ambient", warm}});
    CHECK_FALSE(proved(yard, book, "R9"));
    read_at(yard, "hub temperature", kRight, Stage::after);
    CHECK(proved(yard, book, "R9"));
    StepMark mark = yard.mark(book, "R9", kTrailer, StepWord::done);
    attach_evidence(book, yard.job, mark);
    CHECK(mark.readings.size() == 2);
}

TEST_CASE("procedures: each braked wheel is tried by itself, since the work on it") {
    const WorkBook book = shipped_work();
    Yard yard({BrakeKind::electric_drum, BrakeKind::none});
    look_at(yard, kCorner, LookResult::good);
    CHECK_FALSE(proved(yard, book, "R4"));
    look_at(yard, kRight, LookResult::cannot_tell);
    CHECK_FALSE(proved(yard, book, "R4"));
    look_at(yard, kRight, LookResult::good);
    CHECK(proved(yard, book, "R4"));  // the idler has no brake to try
    StepMark opened = yard.mark(book, "E10", kRight, StepWord::done);
    yard.put(opened);
    CHECK_FALSE(proved(yard, book, "R4"));
    look_at(yard, kRight, LookResult::good);
    CHECK(proved(yard, book, "R4"));
}

TEST_CASE("procedures: the breakaway test is proved by the clock, by each wheel and by the pin") {
    const WorkBook book = shipped_work();
    const auto passes = [&](auto&& change, const std::vector<BrakeKind>& brakes = {BrakeKind::electric_drum}) {
        Yard yard(brakes);
        BreakawayTest test = breakaway_of(*yard.job.only<Trailer>(), {yard.new_id()}, yard.now());
        change(test);
        yard.put(test);
        return proved(yard, book, "R5");
    };
    CHECK(passes([](BreakawayTest&) {}));
    CHECK_FALSE(passes([](BreakawayTest& t) { t.ended->unix_s -= 60; }));
    CHECK_FALSE(passes([](BreakawayTest& t) { t.ended.reset(); }));
    CHECK_FALSE(passes([](BreakawayTest& t) { t.pin_in_again = false; }));
    CHECK_FALSE(passes([](BreakawayTest& t) { t.wheels[1].at_end = Held::turns; }));
    CHECK_FALSE(passes([](BreakawayTest& t) { t.wheels[1].at_start = Held::not_tried; }));
    CHECK_FALSE(passes([](BreakawayTest& t) { t.wheels[1].pin_back = Held::holds; }));
    CHECK_FALSE(passes([](BreakawayTest& t) { t.wheels.pop_back(); }));
    const auto rear_free = [](BreakawayTest& t) {
        t.wheels[t.wheels.size() - 1].at_start = t.wheels[t.wheels.size() - 2].at_start = Held::turns;
    };
    const BrakeKind e = BrakeKind::electric_drum;
    CHECK(passes(rear_free, {e, e, e}));  // three axles: it need not act on all
    CHECK_FALSE(passes(rear_free, {e, e}));
    CHECK(has(step_of(book, "R5").plain, "At 15:00 try every wheel again."));
}

TEST_CASE("procedures: nothing drives before it is clear to move") {
    const WorkBook book = shipped_work();
    const auto needs = [&](const char* id, const char* other) {
        const auto& all = step_of(book, id).needs;
        return std::any_of(all.begin(), all.end(), [&](const StepNeed& n) { return n.step == other; });
    };
    CHECK_FALSE(step_of(book, "R7a").hold.empty());
    for (const char* id : {"R8", "P7", "E14b"}) CHECK_MESSAGE(needs(id, "R7a"), id);
    for (const char* before : {"R4", "R5", "R7"}) CHECK_MESSAGE(needs("E14b", before), before);
    CHECK_FALSE(has(ascii_lower(step_of(book, "E14").plain), "stops"));  // current is read standing
    CHECK(step_of(book, "E14b").moves);
}

TEST_CASE("procedures: what hurts is said where it hurts") {
    const WorkBook book = shipped_work();
    for (const char* id : {"E3", "E9", "H1", "H4"})
        CHECK_MESSAGE(has(step_of(book, id).plain, "brake-spring tool"), id);
    CHECK(has(book.caution("compressed-air")->require, "30 psi"));
    CHECK(has(book.caution("compressed-air")->source, "(wording not verified)"));
    CHECK(has(book.caution("solvents")->danger, "poison gas"));
    CHECK(has(book.caution("electric")->require, "No spark"));
    CHECK(has(book.caution("spring-brake")->require, "Never undo the clamp"));
    CHECK(has(step_of(book, "U5").plain, "left-hand"));
    CHECK(has(step_of(book, "U6").plain, "are no jack points unless the maker says so"));
    CHECK_FALSE(has(step_of(book, "H4").plain, "Shoes as they were"));
    for (const char* id : {"E13", "H5"}) CHECK_MESSAGE(has(step_of(book, id).plain, "Self-adjusting"), id);
    CHECK(has(step_of(book, "W6").plain, "only where the maker says"));
    CHECK_FALSE(has(step_of(book, "O6").plain, "hand near"));
    CHECK(has(step_of(book, "R6").plain, "80 inches and wider"));
}

TEST_CASE("procedures: no step's words name a step by its id") {
    const WorkBook book = shipped_work();
    for (const Procedure& p : book.procedures)
        for (const Step& s : p.steps)
            for (const Procedure& q : book.procedures)
                for (const Step& named : q.steps) {
                    const std::string text = " " + s.title + " " + s.plain + " " + s.hold + " ";
                    for (const char* end : {" ", ".", ",", ":"})
                        CHECK_MESSAGE(!has(text, " " + named.id + end), s.id << " names " << named.id);
                }
}
