// The work page by hand: cautions read one by one, a step ticked by a tap, a hold point that blocks in words and is
// passed by a named person with a reason, what a closed step rests on, and the owner's look.
#include <doctest/doctest.h>

#include "app/views/work_view.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

struct WorkBench : AppBench {
    WorkBench() { start_tandem(); }
    void look() {
        host->stage().happened();
        hands->settle();
    }
    void go(const Place& place, const char* procedure) {
        apply(GoTo{{Screen::work, place, procedure}});
        look();
    }
    void touch(const std::string& label) {
        CAPTURE(label);
        REQUIRE(tap(label));
    }
    void read(const char* step, const Place& place) {
        const auto found = session().work_book().step(step);
        REQUIRE(found.step != nullptr);
        for (const std::string& c : found.step->cautions)
            apply(PutStepMark{new_mark(session().work_book(), step, place, StepWord::caution_read, {}, c), {}});
    }
    void mark(const char* step, const Place& place) {
        read(step, place);
        StepMark m = new_mark(session().work_book(), step, place, StepWord::done, {});
        m.note = "seen";
        apply(PutStepMark{m, {}});
    }
    void photograph(const Place& place, Slot slot) {
        apply(TakePhotos{{demo_photo("05_axle1-left_brake-exposed.jpg")}, place, slot, Stage::before});
        run_tasks();
    }
    [[nodiscard]] StepItem step(const char* id) {
        for (const StepItem& s : procedure_view(session()).steps)
            if (s.id == id) return s;
        FAIL("no such step");
        return {};
    }
};

}  // namespace

TEST_CASE("a caution is acknowledged, the photo is asked for, and one tap ticks the step") {
    WorkBench bench;
    bench.go(kTrailer, "start");
    CHECK(bench.log().shows("Traffic"));
    bench.touch("I have read it");
    REQUIRE(bench.job().all<StepMark>().size() == 1);
    CHECK(bench.job().all<StepMark>()[0].caution == "traffic");
    bench.touch("Take the photo");
    CHECK(bench.session().route() == Route{Screen::intake, kTrailer, "data plate"});
    bench.photograph(kTrailer, Slot::data_plate);
    bench.go(kTrailer, "start");
    bench.touch("Done");
    CHECK(bench.step("U1").state == StepState::done);
    CHECK(bench.job().all<StepMark>().back().shots == std::vector{bench.job().all<Shot>()[0].id});
}

TEST_CASE("a closed step shows the records it rests on, and a removed photo is let go by it") {
    WorkBench bench;
    bench.photograph(kTrailer, Slot::data_plate);
    bench.mark("U1", kTrailer);
    bench.go(kTrailer, "start");
    bench.touch(bench.step("U1").title);
    CHECK(bench.log().shows("It rests on"));
    bench.touch("Photo: data plate");
    const Id<Shot> shot = bench.job().all<Shot>()[0].id;
    CHECK(bench.session().route() == Route{Screen::photo, kTrailer, shot.text()});
    bench.apply(RemoveShot{shot});
    CHECK(bench.job().all<Shot>().empty());
    CHECK(bench.job().all<StepMark>().back().shots.empty());
    bench.apply(UndoStep{});
    CHECK(bench.job().all<StepMark>().back().shots == std::vector{shot});
}

TEST_CASE("a hold point blocks in words, and its note closes it without typing") {
    WorkBench bench;
    bench.mark("U1", kTrailer);
    bench.read("U3", kTrailer);
    bench.go(kTrailer, "start");
    bench.touch(bench.step("U3").title);
    CHECK(bench.log().shows("Hold point"));
    bench.touch("Done");
    CHECK(bench.step("U3").state == StepState::possible);
    bench.touch(bench.step("U3").notes.at(0));
    bench.touch("Done");
    CHECK(bench.step("U3").state == StepState::done);
    CHECK(bench.step("U3").note == bench.step("U3").notes.at(0));
}

TEST_CASE("a hold point is passed only with a reason, by a person whose name can be another one") {
    WorkBench bench;
    Settings settings = bench.session().settings();
    settings.technician = "R. Alder";
    bench.apply(PutSettings{settings});
    for (const char* step : {"U1", "U3"}) bench.mark(step, kTrailer);
    bench.read("U3", kTrailer);
    for (const char* step : {"U5", "U6", "U8", "W1", "W2", "W3", "W4", "W5"}) bench.mark(step, kLeft);
    bench.go(kLeft, "wheels");
    CHECK(bench.step("W6").state == StepState::held);
    bench.touch(bench.step("W6").title);
    CHECK(bench.log().shows("Go on without"));
    bench.touch("Go on without");
    CHECK(bench.log().shows("Who decides it"));
    CHECK_FALSE(bench.tap("Go on"));  // not without a reason
    CHECK(bench.step("W6").state == StepState::held);
    bench.touch("no tool here");
    bench.touch("Who decides it");
    std::string typed;
    for (int i = 0; i < 8; ++i) typed += "key backspace\n";
    REQUIRE(bench.hands->run(parse_script(typed + "text \"K. Linde\"\n").value()));
    bench.touch("Go on");
    CHECK(bench.step("W6").state == StepState::overridden);
    CHECK(bench.step("W6").reason == "no tool here");
    CHECK(bench.step("W6").closed_by.starts_with("K. Linde, "));
}

TEST_CASE("two cautions of one step are read one after the other in its sheet, which stays open") {
    WorkBench bench;
    bench.photograph(kTrailer, Slot::data_plate);
    bench.mark("U1", kTrailer);
    bench.mark("U3", kTrailer);
    bench.go(kTrailer, "start");
    REQUIRE(bench.step("U4").cautions.size() == 2);
    const std::string second = bench.step("U4").cautions[1].title;
    bench.touch(bench.step("U4").title);
    bench.touch("Read: " + second);
    CHECK(bench.step("U4").cautions.size() == 1);
    CHECK(bench.log().shows(bench.step("U4").plain));
    bench.touch("I have read it");
    CHECK(bench.step("U4").cautions.empty());
    bench.touch("Done");
    CHECK(bench.step("U4").state == StepState::done);
}

TEST_CASE("what waits names the corner as people do, in their own words for the sides") {
    WorkBench bench;
    Settings settings = bench.session().settings();
    settings.sides = SideWords::roadside_curbside;
    bench.apply(PutSettings{settings});
    bench.go(kLeft, "disc");
    bool named = false;
    for (const StepItem& s : procedure_view(bench.session()).steps)
        for (const StepBlock& b : s.blocks) {
            CHECK(b.words.find("axle1-") == std::string::npos);
            named = named || b.words.find("axle 1, curbside") != std::string::npos;
        }
    CHECK(named);
}

TEST_CASE("the owner's look has plain words, opens no hub, and ends in an answer with reasons in plain places") {
    WorkBench bench;
    bench.go(kTrailer, "");
    CHECK(bench.log().shows("Bearing and seal service") == false);
    bench.touch("Owner's look");
    CHECK(bench.session().settings().owner);
    const WorkListView list = work_list_view(bench.session());
    REQUIRE(list.advice.has_value());
    CHECK(list.advice->word == TowWord::show_to_shop);
    for (const std::string& reason : list.advice->reasons) CHECK(reason.find("axle1-") == std::string::npos);
    for (const WorkGroup& group : list.groups)
        for (const WorkRow& r : group.rows) CHECK_FALSE(bench.session().work_book().procedure(r.id)->opens_hub);
    bench.mark("U1", kTrailer);
    bench.mark("U3", kTrailer);
    bench.go(kLeft, "owner-corner");
    bench.touch("I have read it");
    bench.touch("Take the photo");
    bench.photograph(kLeft, Slot::tread);
    bench.go(kLeft, "owner-corner");
    bench.touch("Yes");
    REQUIRE(bench.job().all<Finding>().size() == 1);
    bench.go(kTrailer, "owner");
    CHECK(bench.log().shows("Do not tow it"));
    CHECK(bench.log().shows("Axle 1, left"));
}
