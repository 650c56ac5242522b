// The page of a corner: where its tiles and rows lead, the way round the trailer, what became of findings.
#include <doctest/doctest.h>

#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

struct CornerBench : AppBench {
    CornerBench() {
        start_tandem();
        apply(GoInstead{{Screen::plan, {}, {}}});
        apply(GoTo{{Screen::corner, kLeft, {}}});
        host->stage().happened();
        hands->settle();
    }
    void put_finding() {
        FindingDraft draft;
        draft.place = kLeft;
        draft.component = "hub cap";
        draft.defect = "weeps";
        draft.grade = Grade::repair;
        apply(PutFinding{draft});
        host->stage().happened();
        hands->settle();
    }
};

}  // namespace

TEST_CASE("an empty tile leads to taking that photo in, a taken one to its page") {
    CornerBench bench;
    REQUIRE(bench.tap("Rotor face"));
    CHECK(bench.session().route() == Route{Screen::intake, kLeft, "rotor face"});
    bench.apply(GoBack{});
    bench.apply(TakePhotos{{demo_photo("05_axle1-left_brake-exposed.jpg")}, kLeft, Slot::rotor_face, Stage::before});
    bench.run_tasks();
    REQUIRE(bench.job().all<Shot>().size() == 1);
    bench.host->stage().happened();
    bench.hands->settle();
    REQUIRE(bench.tap("Rotor face"));
    CHECK(bench.session().route() == Route{Screen::photo, kLeft, bench.job().all<Shot>()[0].id.text()});
}

TEST_CASE("previous and next go round the trailer, and back leads to the plan at once") {
    CornerBench bench;
    REQUIRE(bench.tap("Next"));
    CHECK(bench.session().route().place == Place::corner(1, Side::right));
    REQUIRE(bench.tap("Next"));
    REQUIRE(bench.tap("Next"));
    REQUIRE(bench.tap("Next"));
    CHECK(bench.session().route().place == kLeft);
    REQUIRE(bench.tap("Previous"));
    CHECK(bench.session().route().place == Place::corner(2, Side::right));
    bench.apply(GoBack{});
    CHECK(bench.session().route().screen == Screen::plan);
    CHECK(neighbour(bench.job(), Place::at(Station::drawbar), -1) == Place::at(Station::trailer));
}

TEST_CASE("the outcome of a finding is recorded with a note that is chosen") {
    CornerBench bench;
    bench.put_finding();
    REQUIRE(bench.tap("1 Hub cap: weeps"));
    REQUIRE(bench.tap("Deferred"));
    CHECK(bench.job().all<Finding>()[0].outcome == Outcome::deferred);
    REQUIRE(bench.tap("part on order"));
    CHECK(bench.job().all<Finding>()[0].outcome_note == "part on order");
    CHECK(bench.job().all<Finding>()[0].grade == Grade::repair);
    REQUIRE(bench.tap("Done"));
    CHECK(bench.log().shows("deferred. part on order"));
    bench.apply(UndoStep{});
    CHECK(bench.job().all<Finding>()[0].outcome_note.empty());
}

TEST_CASE("rows lead to torque and level; readings show their value and what it was before the work") {
    CornerBench bench;
    Reading reading;
    reading.place = kLeft;
    reading.what = "rotor runout";
    reading.unit = "mm";
    reading.points = {{"", Number::parse("0.05").value()}};
    bench.apply(PutReading{reading});
    bench.host->stage().happened();
    bench.hands->settle();
    CornerView view = corner_view(bench.session());
    const auto runout = [](const ReadingRow& r) { return r.what == "rotor runout"; };
    CHECK(std::find_if(view.readings_before.begin(), view.readings_before.end(), runout)->value == "0.05 mm");
    const auto after = std::find_if(view.readings_after.begin(), view.readings_after.end(), runout);
    CHECK(after->value == "not yet");
    CHECK(after->under == "before the work: 0.05 mm");
    REQUIRE(bench.tap("Wheel nuts"));
    CHECK(bench.session().route().screen == Screen::torque);
    bench.apply(GoBack{});
    bench.host->stage().happened();
    bench.hands->settle();
    REQUIRE(bench.tap("Hub oil"));
    CHECK(bench.session().route().screen == Screen::level);
}

TEST_CASE("a reading that was keyed in by mistake is removed from its row by a tap, and undo brings it back") {
    CornerBench bench;
    bench.touch("Rotor runout");
    CHECK_FALSE(bench.log().shows("Remove"));  // nothing is kept yet
    bench.key("0.05");
    REQUIRE(bench.job().all<Reading>().size() == 1);
    bench.touch("Rotor runout");
    bench.touch("Remove");
    CHECK(bench.job().all<Reading>().empty());
    CHECK_FALSE(bench.session().drafts().reading.has_value());
    bench.touch("Undo");
    CHECK(bench.job().all<Reading>().size() == 1);
}

TEST_CASE("what was taken back is done again by a tap beside undo, which is there only then") {
    CornerBench bench;
    bench.put_finding();
    CHECK(bench.log().find("Redo").empty());
    bench.touch("Undo");
    CHECK(bench.job().all<Finding>().empty());
    bench.touch("Redo");
    CHECK(bench.job().all<Finding>().size() == 1);
    CHECK(bench.log().find("Redo").empty());
    bench.touch("Undo");
    bench.put_finding();  // something else was done since
    CHECK(bench.log().find("Redo").empty());
}
