// The session without a screen: what commands do, what survives a restart, what is refused and how it is said.
#include <doctest/doctest.h>

#include "tests/app/app_bench.h"

using namespace cotter;

namespace {
const char* const kLiningPhoto = "05_axle1-left_brake-exposed.jpg";

Reading pad(const char* value) {
    Reading reading;
    reading.place = Place::corner(1, Side::right);
    reading.what = "pad thickness";
    reading.unit = "mm";
    reading.points = {{"inner", Number::parse(value).value()}};
    return reading;
}
}  // namespace

TEST_CASE("a new job leads to its trailer, and is there after a restart") {
    SessionBench bench;
    CHECK(bench.session().route().screen == Screen::yard);
    bench.start_tandem();
    CHECK(bench.session().route().screen == Screen::identify);
    bench.apply(GoInstead{{Screen::plan, {}, {}}});
    bench.apply(GoTo{{Screen::corner, Place::corner(2, Side::left), {}}});
    const Job before = bench.job();

    bench.reopen();
    CHECK(bench.job() == before);
    CHECK(bench.session().route() == Route{Screen::corner, Place::corner(2, Side::left), {}});
    bench.apply(GoBack{});
    CHECK(bench.session().route().screen == Screen::plan);
    bench.apply(GoBack{});
    CHECK(bench.session().route().screen == Screen::yard);
    CHECK(bench.session().jobs().size() == 1);
}

TEST_CASE("a draft outlives the program") {
    SessionBench bench;
    bench.start_tandem();
    Drafts drafts = bench.session().drafts();
    drafts.reading =
        ReadingDraft{"", Place::corner(1, Side::left), "pad thickness", Stage::before, "mm", {"7.", ""}, ""};
    bench.apply(KeepDrafts{drafts});
    bench.reopen();
    CHECK(bench.session().drafts() == drafts);
}

TEST_CASE("undo and redo follow the journal, also after a restart") {
    SessionBench bench;
    bench.start_tandem();
    bench.apply(PutReading{pad("7.1")});
    bench.apply(PutReading{pad("6.8")});
    REQUIRE(bench.job().all<Reading>().size() == 2);
    bench.apply(UndoStep{});
    CHECK(bench.job().all<Reading>().size() == 1);
    CHECK(bench.session().can_redo());
    bench.reopen();
    CHECK(bench.session().can_redo());
    bench.apply(RedoStep{});
    CHECK(bench.job().all<Reading>().size() == 2);
    CHECK_FALSE(bench.session().can_redo());
    for (int i = 0; i < 3; ++i) bench.apply(UndoStep{});
    CHECK_FALSE(bench.session().can_undo());
    CHECK(bench.job().only<Visit>() != nullptr);
}

TEST_CASE("photos are taken in beside the screen, one bad one does not stop the others") {
    SessionBench bench;
    bench.start_tandem();
    const std::string empty = join_path(bench.folder.path(), "empty.jpg");
    REQUIRE(replace_file(*bench.files, empty, {}).has_value());
    bench.apply(TakePhotos{{empty, demo_photo(kLiningPhoto), demo_photo("16_data-plate.jpg")},
                           Place::corner(1, Side::right),
                           Slot::lining,
                           Stage::before});
    REQUIRE(bench.session().work().has_value());
    CHECK(bench.session().work()->total == 3);
    bench.run_tasks();
    CHECK_FALSE(bench.session().work().has_value());
    const auto& shots = bench.job().all<Shot>();
    REQUIRE(shots.size() == 2);
    CHECK(shots[0].original_name == "16_data-plate.jpg");  // by the time they were taken
    CHECK(shots[1].original_name == kLiningPhoto);
    REQUIRE(bench.session().not_taken().size() == 1);
    CHECK(bench.session().not_taken()[0].find("empty.jpg") != std::string::npos);
    CHECK(shots[0].slot == Slot::lining);
    CHECK(shots[0].photo.width > 1000);
    CHECK(shots[0].photo.sharpness > 0);
}

TEST_CASE("a photo that cannot be used is named in one line") {
    SessionBench bench;
    bench.start_tandem();
    bench.apply(TakePhotos{{join_path(bench.folder.path(), "gone.jpg")}, {}, Slot::other, Stage::before});
    bench.run_tasks();
    REQUIRE(bench.session().notice().has_value());
    CHECK(bench.session().notice()->error);
    CHECK(bench.session().notice()->text.find("gone.jpg") != std::string::npos);
    CHECK(bench.job().all<Shot>().empty());
}

TEST_CASE("the rest of the photos can be called off") {
    SessionBench bench;
    bench.start_tandem();
    const Place place = Place::corner(1, Side::right);
    for (const char* name : {kLiningPhoto, "16_data-plate.jpg", "01_whole-trailer.jpg"})
        bench.apply(TakePhotos{{demo_photo(name)}, place, Slot::lining, Stage::before});
    bench.apply(CancelWork{});
    bench.run_tasks();
    CHECK(bench.job().all<Shot>().size() == 1);  // the one under way
    CHECK_FALSE(bench.session().work().has_value());
    bench.apply(TakePhotos{{demo_photo("16_data-plate.jpg"), demo_photo("01_whole-trailer.jpg")}, place, Slot::lining});
    bench.apply(CancelWork{});  // while their times are being looked at
    bench.run_tasks();
    CHECK(bench.job().all<Shot>().size() == 1);
    CHECK_FALSE(bench.session().work().has_value());
}

TEST_CASE("a photo is taken into a job once") {
    SessionBench bench;
    bench.start_tandem();
    for (int n = 0; n < 2; ++n)
        bench.apply(TakePhotos{{demo_photo(kLiningPhoto)}, Place::corner(1, Side::right), Slot::lining});
    bench.run_tasks();
    CHECK(bench.job().all<Shot>().size() == 1);
    REQUIRE(bench.session().not_taken().size() == 1);
    CHECK(bench.session().not_taken()[0].find("already") != std::string::npos);
}

TEST_CASE("a finding with its mark is one step of undo") {
    SessionBench bench;
    bench.start_tandem();
    bench.apply(TakePhotos{{demo_photo(kLiningPhoto)}, Place::corner(1, Side::right), Slot::lining, Stage::before});
    bench.run_tasks();
    FindingDraft draft;
    draft.shot = bench.job().all<Shot>()[0].id.text();
    draft.place = Place::corner(1, Side::right);
    draft.points = {{0.4, 0.5}};
    draft.component = "pad";
    draft.defect = "worn";
    SUBCASE("with a grade") {
        draft.grade = Grade::repair;
        bench.apply(PutFinding{draft});
        REQUIRE(bench.job().all<Finding>().size() == 1);
        REQUIRE(bench.job().all<Tag>().size() == 1);
        CHECK(bench.job().all<Tag>()[0].finding == bench.job().all<Finding>()[0].id);
        bench.apply(UndoStep{});
        CHECK(bench.job().all<Finding>().empty());
        CHECK(bench.job().all<Tag>().empty());
    }
    SUBCASE("not without one") {
        bench.apply(PutFinding{draft});
        CHECK(bench.job().all<Finding>().empty());
        REQUIRE(bench.session().notice().has_value());
        CHECK(bench.session().notice()->error);
    }
    SUBCASE("and it goes with all its marks") {
        draft.grade = Grade::watch;
        bench.apply(PutFinding{draft});
        bench.apply(RemoveFinding{bench.job().all<Finding>()[0].id});
        CHECK(bench.job().all<Finding>().empty());
        CHECK(bench.job().all<Tag>().empty());
    }
    SUBCASE("as the marks of a photo go with it") {
        draft.grade = Grade::watch;
        bench.apply(PutFinding{draft});
        bench.apply(RemoveShot{bench.job().all<Shot>()[0].id});
        CHECK(bench.job().all<Shot>().empty());
        CHECK(bench.job().all<Tag>().empty());
        CHECK(bench.job().all<Finding>().size() == 1);
    }
}

TEST_CASE("a nut clicks once a pass") {
    SessionBench bench;
    bench.start_tandem();
    Torque torque;
    torque.place = Place::corner(1, Side::left);
    torque.joint = "wheel nuts";
    torque.fasteners = 8;
    torque.target = make_amount("90", "[lbf_av].[ft_i]").value();
    torque.target_source = "the maker's sheet";
    torque.wrench = "W-1";
    bench.apply(PutTorque{torque});
    REQUIRE(bench.job().all<Torque>().size() == 1);
    const auto id = bench.job().all<Torque>()[0].id;
    bench.apply(TightenNut{id, 1});
    CHECK(bench.session().notice()->error);  // no pass yet
    bench.apply(StartPass{bench.job().all<Torque>()[0], make_amount("90", "[lbf_av].[ft_i]").value()});
    for (const int nut : {1, 5, 3}) bench.apply(TightenNut{id, nut});
    REQUIRE_MESSAGE(bench.job().all<Torque>()[0].passes.size() == 1, bench.session().notice()->text);
    CHECK(bench.job().all<Torque>()[0].passes[0].tightened == std::vector{1, 5, 3});
    bench.apply(TightenNut{id, 5});
    CHECK(bench.session().notice()->error);
    bench.apply(TightenNut{id, 9});
    CHECK(bench.session().notice()->error);
    CHECK(bench.job().all<Torque>()[0].passes[0].tightened == std::vector{1, 5, 3});
}

TEST_CASE("after the sign-off a change needs its reason") {
    SessionBench bench;
    bench.start_tandem();
    bench.apply(PutReading{pad("7.1")});
    bench.apply(SignJob{"", "said", bench.session().summary().answer});
    CHECK(bench.session().notice()->error);
    bench.apply(SignJob{"R. Alder", "said", "nothing speaks against it"});
    CHECK(bench.session().notice()->error);
    CHECK_FALSE(bench.job().signed_off());
    bench.apply(SignJob{"R. Alder", "said", bench.session().summary().answer});
    REQUIRE(bench.job().signed_off());
    Reading again = bench.job().all<Reading>()[0];
    again.points[0].value = Number::parse("7.3").value();
    bench.apply(PutReading{again});
    CHECK(bench.session().asks_reason());
    CHECK(bench.job().all<Reading>()[0].points[0].value.text() == "7.1");
    SUBCASE("and stays as it was without one") {
        bench.apply(GiveReason{""});
        CHECK_FALSE(bench.session().asks_reason());
        CHECK(bench.job().amendments.empty());
    }
    SUBCASE("and becomes an amendment with one") {
        bench.apply(GiveReason{"misread the gauge"});
        CHECK(bench.job().all<Reading>()[0].points[0].value.text() == "7.3");
        REQUIRE(bench.job().amendments.size() == 1);
        CHECK(bench.job().amendments[0].reason == "misread the gauge");
    }
}

TEST_CASE("a packet is made beside the screen, and again without a new revision") {
    SessionBench bench;
    bench.start_tandem();
    bench.apply(TakePhotos{{demo_photo(kLiningPhoto)}, Place::corner(1, Side::right), Slot::lining, Stage::before});
    bench.run_tasks();
    bench.apply(ExportPacket{});
    bench.run_tasks();
    REQUIRE_MESSAGE(bench.session().packed().has_value(), bench.session().notice()->text);
    const std::string path = bench.session().packed()->path;
    CHECK(bench.files->info(path).has_value());
    CHECK(bench.session().packets().size() == 1);
    bench.apply(ExportPacket{});
    bench.run_tasks();
    CHECK(bench.session().packed()->unchanged);
    CHECK(bench.session().packets().size() == 1);
}

TEST_CASE("a second app on the same book is told so") {
    SessionBench bench;
    FrameTaskRunner tasks;
    const auto second = Session::open(
        {*bench.files, bench.clock, bench.random, bench.workers, tasks, COTTER_SHARE_DIR, "Cotter test"}, bench.book);
    REQUIRE_FALSE(second.has_value());
    CHECK(second.error().code == Errc::busy);
}

TEST_CASE("broken state and settings files give a fresh start, never a lost job") {
    SessionBench bench;
    bench.start_tandem();
    for (const char* file : {"app_state.json", "settings.json"})
        REQUIRE(replace_file(*bench.files, join_path(bench.book, file), as_bytes("{\"job\":\"x")).has_value());
    bench.reopen();
    CHECK(bench.session().route().screen == Screen::yard);
    REQUIRE(bench.session().jobs().size() == 1);
    bench.apply(OpenJob{bench.session().jobs()[0].id});
    CHECK(bench.job().only<Trailer>()->unit == "NUR-07");
}

TEST_CASE("what the program judges and leads by is read when a job is opened; its lack is said then") {
    SessionBench bench;
    bench.close();
    const SessionParts parts{*bench.files,  bench.clock, bench.random,
                             bench.workers, bench.tasks, bench.folder.path() + "/nothing",
                             "Cotter"};
    const auto session = Session::open(parts, bench.book).value();
    CHECK_FALSE(session->notice());
    session->apply(StartJob{});
    REQUIRE(session->notice());
    CHECK(session->notice()->error);
    CHECK(session->notice()->text.find("rechecks.json") != std::string::npos);
    CHECK_FALSE(session->judge().trouble().empty());
    CHECK(session->has_job());
    CHECK(session->work_book().procedures.empty());
}
