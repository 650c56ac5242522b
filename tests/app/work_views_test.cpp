// Led work without a screen: marks that are made or refused, bearing settings with their readings, pipes and counts.
#include <algorithm>

#include <doctest/doctest.h>

#include "app/views/bearing_view.h"
#include "app/views/bleed_view.h"
#include "app/views/work_view.h"
#include "core/trade/reading_spec.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

struct LedBench : SessionBench {
    LedBench() { start_tandem(); }
    void go(Screen screen, const Place& place, const char* record = "") { apply(GoTo{{screen, place, record}}); }
    void read(const char* step, const Place& place) {
        const WorkBook& work = session().work_book();
        REQUIRE(work.step(step).step != nullptr);
        for (const std::string& c : work.step(step).step->cautions)
            apply(PutStepMark{new_mark(work, step, place, StepWord::caution_read, {}, c), {}});
    }
    void mark(const char* step, const Place& place, StepWord word = StepWord::done) {
        read(step, place);
        StepMark m = new_mark(session().work_book(), step, place, word, {});
        m.note = "seen";
        if (word != StepWord::done) m.reason = "no tool here";
        apply(PutStepMark{m, {}});
    }
    [[nodiscard]] StepItem step(const char* id) {
        for (const StepItem& s : procedure_view(session()).steps)
            if (s.id == id) return s;
        FAIL("no such step");
        return {};
    }
};

bool offers(const std::vector<WorkRow>& rows, const char* id) {
    return std::any_of(rows.begin(), rows.end(), [&](const WorkRow& r) { return r.id == id; });
}

BearingSetting castle() {
    BearingSetting s;
    s.place = kLeft;
    s.source = "axle maker's manual, page 12";
    s.threads_per_inch = Number::parse("14").value();
    s.lock_positions = 6;
    s.play_min = make_amount("0.001", "[in_i]").value();
    s.play_max = make_amount("0.005", "[in_i]").value();
    return s;
}

Reading dial(const char* value) {
    Reading r;
    r.place = kLeft;
    r.what = what::end_play;
    r.stage = Stage::after;
    r.unit = "[in_i]";
    r.points = {{"first", Number::parse(value).value()}};
    return r;
}

PipeRoute tandem_route() {
    PipeRoute route;
    for (const auto& [to, metres] : {std::pair{"axle1-left", "3"}, std::pair{"axle1-right", "4"},
                                     std::pair{"axle2-left", "5"}, std::pair{"axle2-right", "6"}})
        route.legs.push_back({"actuator", to, make_amount(metres, "m").value(), std::nullopt});
    return route;
}

}  // namespace

TEST_CASE("the axle decides which work is offered; the owner is offered none that opens a hub") {
    LedBench bench;
    auto rows = work_rows(bench.session(), kLeft);
    CHECK(offers(rows, "disc"));
    CHECK(offers(rows, "bearing"));
    CHECK_FALSE(offers(rows, "electric-drum"));
    CHECK_FALSE(offers(rows, "start"));
    CHECK(offers(work_rows(bench.session(), kTrailer), "bleed"));
    Settings settings = bench.session().settings();
    settings.owner = true;
    bench.apply(PutSettings{settings});
    bench.reopen();
    rows = work_rows(bench.session(), kLeft);
    CHECK(offers(rows, "owner-corner"));
    CHECK_FALSE(offers(rows, "bearing"));
    CHECK_FALSE(offers(rows, "disc"));
}

TEST_CASE("a step asks for its caution first, then for its proof, then for one tap") {
    LedBench bench;
    bench.go(Screen::work, kTrailer, "start");
    CHECK(bench.step("U1").move == StepMove::read);
    CHECK(procedure_view(bench.session()).next == 0U);
    bench.read("U1", kTrailer);
    CHECK(bench.step("U1").move == StepMove::prove);
    REQUIRE(bench.step("U1").missing() != nullptr);
    CHECK(bench.step("U1").missing()->lead == Route{Screen::intake, kTrailer, "data plate"});
    bench.apply(TakePhotos{{demo_photo("05_axle1-left_brake-exposed.jpg")}, kTrailer, Slot::data_plate, Stage::before});
    bench.run_tasks();
    CHECK(bench.step("U1").move == StepMove::done);
    bench.mark("U1", kTrailer);
    CHECK(bench.step("U1").state == StepState::done);
    CHECK(bench.step("U2").state == StepState::possible);
    CHECK(procedure_view(bench.session()).progress == "1 of 5 steps");
}

TEST_CASE("what waits says for what, leads there, and is refused even when it is asked for") {
    LedBench bench;
    bench.go(Screen::work, kLeft, "disc");
    const ProcedureView view = procedure_view(bench.session());
    CHECK_FALSE(view.next.has_value());
    REQUIRE(view.waits == 0U);
    REQUIRE_FALSE(view.steps[0].blocks.empty());
    REQUIRE(view.steps[0].blocks[0].lead.has_value());
    CHECK(view.steps[0].blocks[0].lead->record != "disc");
    bench.apply(PutStepMark{mark_of(view, view.steps[0], StepWord::done), {}});
    REQUIRE(bench.session().notice().has_value());
    CHECK(bench.session().notice()->error);
    CHECK(bench.job().all<StepMark>().empty());
}

TEST_CASE("a hold point is closed by its note, or passed with a reason; a taken back mark opens it again") {
    LedBench bench;
    bench.go(Screen::work, kTrailer, "start");
    bench.mark("U1", kTrailer);
    bench.read("U3", kTrailer);
    CHECK(bench.step("U3").move == StepMove::note);
    CHECK_FALSE(bench.step("U3").notes.empty());
    StepMark m = mark_of(procedure_view(bench.session()), bench.step("U3"), StepWord::done);
    bench.apply(PutStepMark{m, {}});
    CHECK(bench.step("U3").state == StepState::possible);
    m.word = StepWord::overridden;
    bench.apply(PutStepMark{m, {}});
    CHECK(bench.step("U3").state == StepState::possible);
    m.reason = "held by the tow vehicle";
    m.by = "R. Alder";
    bench.apply(PutStepMark{m, {}});
    CHECK(bench.step("U3").state == StepState::overridden);
    CHECK(bench.step("U3").reason == "held by the tow vehicle");
    CHECK(bench.step("U3").closed_by.starts_with("R. Alder, "));
    bench.apply(RemoveStepMark{bench.step("U3").mark});
    CHECK(bench.step("U3").state == StepState::possible);
}

TEST_CASE("an owner's bad answer makes the finding with the mark, one step of undo, and the word is: do not tow") {
    LedBench bench;
    Settings settings = bench.session().settings();
    settings.owner = true;
    bench.apply(PutSettings{settings});
    CHECK(advice_view(bench.session()).towing == Towing::cannot_tell);
    bench.mark("U1", kTrailer);
    bench.mark("U3", kTrailer);
    bench.read("O1", kLeft);
    bench.go(Screen::work, kLeft, "owner-corner");
    const StepItem tyre = bench.step("O1");
    REQUIRE(tyre.bad.has_value());
    const std::size_t before = bench.job().all<StepMark>().size();
    bench.apply(PutStepMark{mark_of(procedure_view(bench.session()), tyre, StepWord::done), tyre.bad});
    REQUIRE(bench.job().all<Finding>().size() == 1);
    CHECK(bench.job().all<Finding>()[0].place == kLeft);
    CHECK(advice_view(bench.session()).towing == Towing::no);
    CHECK(advice_view(bench.session()).reasons[0].find("yre") != std::string::npos);
    bench.apply(UndoStep{});
    CHECK(bench.job().all<Finding>().empty());
    CHECK(bench.job().all<StepMark>().size() == before);
}

TEST_CASE("a reading beyond the law outweighs a kinder word, and is a reason of its own") {
    LedBench bench;
    Settings settings = bench.session().settings();
    settings.owner = true;
    bench.apply(PutSettings{settings});
    Reading tread;
    tread.place = kLeft;
    tread.what = what::tread_depth;
    tread.unit = "[in_i]";
    tread.points = {{"inner groove", Number::parse("1/32").value()}};
    bench.apply(PutReading{tread});
    const AdviceView advice = advice_view(bench.session());
    CHECK(bench.session().summary().towing == Towing::no);
    CHECK(advice.towing == Towing::no);
    REQUIRE_FALSE(advice.reasons.empty());
    CHECK(advice.reasons[0].starts_with("Axle 1, left: Tread depth: 1/32 in"));
    CHECK(advice.reasons[0].find("393.75") != std::string::npos);
}

TEST_CASE("an owner's corner asks for nothing that wants the wheel off; what is recorded stays in sight") {
    LedBench bench;
    bench.go(Screen::corner, kLeft);
    const auto asks = [&](std::string_view what) {
        const auto rows = corner_view(bench.session()).readings_before;
        return std::any_of(rows.begin(), rows.end(), [&](const ReadingRow& r) { return r.what == what; });
    };
    CHECK(asks(what::end_play));
    const std::size_t photos = corner_view(bench.session()).before.size();
    Settings settings = bench.session().settings();
    settings.owner = true;
    bench.apply(PutSettings{settings});
    CHECK(asks(what::tread_depth));
    CHECK_FALSE(asks(what::end_play));
    CHECK_FALSE(asks(what::rotor_thickness));
    CHECK(corner_view(bench.session()).before.size() < photos);
    bench.apply(PutReading{dial("0.003")});
    const auto after = corner_view(bench.session()).readings_after;
    CHECK(std::any_of(after.begin(), after.end(), [](const ReadingRow& r) { return r.what == what::end_play; }));
}

TEST_CASE("the positions predict from the dial; a moved nut is measured anew and the reading before is kept") {
    LedBench bench;
    bench.go(Screen::bearing, kLeft);
    CHECK(bearing_view(bench.session()).options.empty());
    CHECK_FALSE(bearing_view(bench.session()).no_options.empty());
    bench.apply(PutBearing{castle(), dial("0.001")});
    BearingView view = bearing_view(bench.session());
    REQUIRE(view.options.size() == 6);
    CHECK(view.play_words == "0.001 in, within the maker's range");
    CHECK(view.options[3].words == "1 position looser: play grows by about 0.0119 in, to about 0.0129 in");
    CHECK_FALSE(view.options[1].allowed);
    CHECK_FALSE(view.proved);  // the lock has no photo
    bench.apply(PutBearing{moved(view.setting, 1), {}});
    view = bearing_view(bench.session());
    CHECK(view.stands == "1 position looser than at first");
    CHECK_FALSE(view.play.has_value());
    bench.apply(PutBearing{view.setting, dial("0.0129")});
    view = bearing_view(bench.session());
    CHECK(view.play_words == "0.0129 in, too loose");
    CHECK(view.setting.tries.size() == 2);
    CHECK(bench.job().all<Reading>().size() == 2);
    bench.apply(UndoStep{});  // reading and try go back together
    CHECK(bench.job().all<Reading>().size() == 1);
    CHECK_FALSE(bearing_view(bench.session()).play.has_value());
}

TEST_CASE("pound-feet for pound-inches are asked about; the next corner takes figures over, and no reading") {
    LedBench bench;
    BearingSetting s = castle();
    s.seated = make_amount("450", "[lbf_av].[ft_i]").value();
    bench.apply(PutBearing{s, dial("0.003")});
    bench.go(Screen::bearing, kLeft);
    REQUIRE(bearing_view(bench.session()).doubt.has_value());
    CHECK(bearing_view(bench.session()).doubt->suggestion->text() == "450 lb-in");
    bench.go(Screen::bearing, Place::corner(2, Side::right));
    const BearingView view = bearing_view(bench.session());
    CHECK(view.setting.id.nil());
    CHECK(view.setting.source == castle().source);
    CHECK(view.setting.lock_positions == 6);
    CHECK(view.setting.tries.empty());
}

TEST_CASE("the longest pipe comes first, and a corner is done when it ran clear and without bubbles") {
    LedBench bench;
    bench.go(Screen::bleed, kTrailer);
    CHECK(bleed_view(bench.session()).to.size() == 5);
    CHECK_FALSE(bleed_view(bench.session()).no_order.empty());
    bench.apply(PutPipeRoute{tandem_route()});
    REQUIRE(bleed_view(bench.session()).order.size() == 4);
    CHECK(bleed_view(bench.session()).order[0].label == "1 Axle 2, right");
    CHECK(bleed_view(bench.session()).to.empty());
    BleedCount count;
    count.place = Place::corner(2, Side::right);
    count.drawn = make_amount("160", "mL").value();
    count.clear = true;
    bench.apply(PutBleedCount{count});
    CHECK(bleed_view(bench.session()).next == 0U);
    count.bubbles = false;
    count.drawn = make_amount("40", "mL").value();
    bench.apply(PutBleedCount{count});
    const BleedView view = bleed_view(bench.session());
    CHECK(view.order[0].value == "200 mL in 2 rounds");
    CHECK(view.order[0].clean);
    CHECK(view.next == 1U);
    CHECK_FALSE(view.done);
    bench.apply(RemoveBleedCount{bench.job().all<BleedCount>()[1].id});
    CHECK(bleed_view(bench.session()).next == 0U);
}
