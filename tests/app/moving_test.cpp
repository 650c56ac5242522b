// Photos and findings at the wrong place: a photo takes its findings along, and a finding can be given another place,
// part, defect and grade by taps. One step of undo each.
#include <doctest/doctest.h>

#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

struct MovingBench : AppBench {
    MovingBench() : AppBench({412, 1400}) { start_tandem(); }
    Id<Shot> photograph(const char* file, const Place& place) {
        apply(TakePhotos{{demo_photo(file)}, place, Slot::cap, Stage::before});
        run_tasks();
        return job().all<Shot>().back().id;
    }
    Id<Finding> find_on(const Id<Shot>& shot, const Place& place) {
        FindingDraft draft;
        draft.shot = shot.text();
        draft.place = place;
        draft.points = {{0.4, 0.5}};
        draft.component = "hub cap";
        draft.defect = "cracked";
        draft.grade = Grade::repair;
        apply(PutFinding{draft});
        return job().all<Finding>().back().id;
    }
    void move(const Id<Shot>& shot, const Place& to) {
        Shot moved = *job().find(shot);
        moved.place = to;
        apply(PutShot{moved});
    }
    [[nodiscard]] Place place_of(const Id<Finding>& finding) { return job().find(finding)->place; }
    [[nodiscard]] std::string said() { return session().notice() ? session().notice()->text : std::string(); }
};

constexpr const char* kOne = "05_A1-R_brake-exposed.jpg";
constexpr const char* kOther = "16_data-plate.jpg";

}  // namespace

TEST_CASE("a photo that is moved to another corner takes its findings along, and one undo brings both back") {
    MovingBench bench;
    const auto shot = bench.photograph(kOne, kLeft);
    const auto finding = bench.find_on(shot, kLeft);
    bench.apply(GoTo{{Screen::photo, kLeft, shot.text()}});
    bench.look();
    bench.touch("Move or remove this photo");
    bench.touch("Axle 2, right");
    CHECK(bench.job().find(shot)->place == kRear);
    CHECK(bench.place_of(finding) == kRear);
    CHECK(bench.said() == "The photo is at Axle 2, right now, with 1 finding.");
    bench.apply(UndoStep{});
    CHECK(bench.job().find(shot)->place == kLeft);
    CHECK(bench.place_of(finding) == kLeft);
}

TEST_CASE("a finding that another photo of the old place shows stays there until that photo moves too") {
    MovingBench bench;
    const auto first = bench.photograph(kOne, kLeft), second = bench.photograph(kOther, kLeft);
    const auto finding = bench.find_on(first, kLeft);
    bench.apply(PutTag{Tag{{}, second, finding, TagShape::point, {{0.2, 0.2}}}});
    bench.move(first, kRear);
    CHECK(bench.place_of(finding) == kLeft);
    CHECK(bench.said() ==
          "The photo is at Axle 2, right now. 1 finding stays at Axle 1, left: another photo there shows it too.");
    bench.move(second, kRear);
    CHECK(bench.place_of(finding) == kRear);
}

TEST_CASE("a finding of another place than the photo's stays where it is, and another slot moves nothing") {
    MovingBench bench;
    const auto shot = bench.photograph(kOne, kLeft);
    const Place frame = Place::at(Station::frame);
    const auto elsewhere = bench.find_on(shot, frame), here = bench.find_on(shot, kLeft);
    Shot changed = *bench.job().find(shot);
    changed.slot = Slot::tread;
    bench.apply(PutShot{changed});
    CHECK(bench.place_of(here) == kLeft);
    CHECK(bench.said().empty());
    bench.move(shot, kRear);
    CHECK(bench.place_of(elsewhere) == frame);
    CHECK(bench.place_of(here) == kRear);
}

TEST_CASE("place, part, defect and grade of a finding are changed by taps on its page") {
    MovingBench bench;
    const auto shot = bench.photograph(kOne, kLeft);
    const auto finding = bench.find_on(shot, kLeft);
    const auto open = [&](const Place& place, const char* title) {
        bench.apply(GoTo{{Screen::corner, place, {}}});
        bench.look();
        bench.touch(title);
        bench.touch("Change part, defect, grade or place");
    };
    open(kLeft, "1 Hub cap: cracked");
    bench.touch("Place");
    bench.touch("Axle 1, right");
    bench.touch("do not tow");
    bench.touch("Done");
    CHECK(bench.place_of(finding) == kRight);
    CHECK(bench.job().find(finding)->grade == Grade::do_not_tow);
    CHECK(bench.said() == "The finding is at Axle 1, right now; its photo stays where it is.");
    CHECK_FALSE(bench.session().drafts().finding.has_value());
    bench.apply(UndoStep{});
    CHECK(bench.place_of(finding) == kLeft);
    CHECK(bench.job().find(finding)->grade == Grade::repair);

    open(kLeft, "1 Hub cap: cracked");
    bench.touch("Other words");
    bench.touch("Something else");
    bench.touch("Rotor");
    bench.touch("Heat checks");
    bench.touch("Done");
    CHECK(bench.job().find(finding)->component == "rotor");
    CHECK(bench.job().find(finding)->defect == "heat checks");
    CHECK(bench.job().all<Tag>().size() == 1);

    bench.apply(GoTo{{Screen::photo, kLeft, shot.text()}});
    bench.look();
    bench.touch("1  Rotor: heat checks");
    bench.touch("Place");
    bench.touch("Frame and springs");
    bench.touch("Done");
    CHECK(bench.place_of(finding) == Place::at(Station::frame));
}
