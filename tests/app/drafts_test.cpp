// What was begun and not handed in belongs to its job: nothing of it turns up, or is saved, in another.
#include <doctest/doctest.h>

#include "app/views/identify_view.h"
#include "app/views/settings_view.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

constexpr const char* kVin = "1X9DEM0F0MADM0014";  // invented; its check digit is right

// One of each kind.
Drafts all_kinds(std::string job) {
    Drafts drafts;
    drafts.job = std::move(job);
    drafts.reading = ReadingDraft{"", kLeft, "pad thickness", Stage::before, "mm", {"7."}, "", Taken::measured};
    drafts.finding = FindingDraft{};
    drafts.finding->component = "rotor";
    drafts.put_timer(TimerDraft{});
    drafts.put_words("unit", "TRK");
    drafts.answer = AnswerDraft{};
    drafts.answer->name = "M. Weld";
    drafts.offer = Offer{};
    drafts.offer->supplier = "Invented Parts";
    drafts.figure = MakerLimit{};
    drafts.figure->what = "pad thickness";
    drafts.vin = "1X9D";
    return drafts;
}

void write_state(SessionBench& bench, const std::string& text) {
    REQUIRE(replace_file(*bench.files, join_path(bench.book, "app_state.json"), as_bytes(text)).has_value());
}

}  // namespace

TEST_CASE("a VIN half typed in one job is not in the next, and waits in its own") {
    AppBench bench;
    bench.start_tandem();
    const JobId first = bench.job().id();
    bench.look();
    bench.touch("VIN");
    bench.hands->type("1X9D");
    REQUIRE(identify_view(bench.session()).vin == "1X9D");

    bench.start_tandem();
    bench.look();
    CHECK(identify_view(bench.session()).vin.empty());
    bench.touch("VIN");
    bench.hands->type(kVin);  // in full: what stood in the other job would be in front of it
    bench.touch("Unit");
    CHECK(bench.job().only<Trailer>()->vin == kVin);

    bench.apply(OpenJob{first});
    bench.apply(GoTo{{Screen::identify, {}, {}}});
    bench.look();
    CHECK(identify_view(bench.session()).vin == "1X9D");
    CHECK(bench.job().only<Trailer>()->vin.empty());
}

TEST_CASE("every kind of draft stays with its job, over another job and over a restart") {
    SessionBench bench;
    bench.start_tandem();
    Drafts first = all_kinds(bench.job().id().text());
    bench.apply(KeepDrafts{first});
    bench.start_tandem();
    const std::string second = bench.job().id().text();
    Drafts none;
    none.job = second;
    none.page = bench.session().route();
    CHECK(bench.session().drafts() == none);
    // A page that was drawn for the first job hands its drafts back after the second was opened.
    bench.apply(KeepDrafts{first});
    CHECK(bench.session().drafts() == none);
    bench.reopen();
    CHECK(bench.session().drafts() == none);
    bench.apply(OpenJob{Id<Visit>{Uuid::parse(first.job).value()}});
    first.page = bench.session().route();
    CHECK(bench.session().drafts() == first);
}

TEST_CASE("words half typed on one page are not handed in on another that has such a field") {
    AppBench bench;
    bench.start_tandem();
    for (const Place& place : {kLeft, kRear}) {
        bench.apply(GoTo{{Screen::level, place, {}}});
        bench.look();
        bench.touch("Before: below");
    }
    bench.touch("Product");
    bench.touch("Product");  // the field in its sheet
    bench.hands->type("gear oil X");
    bench.apply(GoTo{{Screen::level, kLeft, {}}});  // as by the back key while the field is being edited
    bench.look();
    bench.touch("Product");
    bench.look();
    for (const Level& level : bench.job().all<Level>()) CHECK((level.place == kRear || level.product.empty()));
    bench.apply(GoTo{{Screen::level, kRear, {}}});
    bench.look();
    bench.touch("Product");
    bench.look();
    REQUIRE(bench.job().all<Level>().size() == 2);
    for (const Level& level : bench.job().all<Level>())
        CHECK(level.product == (level.place == kRear ? "gear oil X" : ""));
}

TEST_CASE("what is typed into the settings is of no job") {
    SessionBench bench;
    bench.start_tandem();
    SettingsView view = settings_view(bench.session());
    view.drafts.put_words("technician", "R. Alv");
    bench.apply(KeepDrafts{view.drafts});
    CHECK(bench.session().drafts().all_words.empty());
    bench.start_tandem();
    bench.reopen();
    CHECK(settings_view(bench.session()).drafts.all_words == view.drafts.all_words);
}

TEST_CASE("drafts of a program that had one set for all jobs: only what names a record of the job is taken over") {
    SessionBench bench;
    bench.start_tandem();
    const std::string job = bench.job().id().text();
    Reading reading;
    reading.place = kLeft;
    reading.what = "pad thickness";
    reading.unit = "mm";
    reading.points = {{"inner", Number::parse("7.1").value()}};
    bench.apply(PutReading{reading});
    const std::string id = bench.job().all<Reading>()[0].id.text();
    const std::string place = kLeft.text();
    bench.close();
    SUBCASE("a VIN and words may be of any job: they are said once, and kept for nobody") {
        write_state(bench, R"({"job": ")" + job + R"(", "stack": [{"screen": "yard"}, {"screen": "identify"}],
            "drafts": {"words": {"field": "plate", "text": "TR 44"}, "vin": "1X9D"}})");
        bench.reopen();
        CHECK(bench.session().drafts().vin.empty());
        CHECK(bench.session().drafts().all_words.empty());
        REQUIRE(bench.session().notice().has_value());
        CHECK(bench.session().notice()->text.find("'1X9D', 'TR 44'") != std::string::npos);
        bench.apply(GoTo{{Screen::plan, {}, {}}});
        bench.reopen();
        CHECK_FALSE(bench.session().notice().has_value());
    }
    SUBCASE("a reading being changed that the job has goes on") {
        write_state(bench, R"({"job": ")" + job + R"(", "drafts": {"reading": {"id": ")" + id + R"(", "place": ")" +
                               place + R"(", "what": "pad thickness", "unit": "mm", "texts": ["6."]}}})");
        bench.reopen();
        REQUIRE(bench.session().drafts().reading.has_value());
        CHECK(bench.session().drafts().reading->texts == std::vector<std::string>{"6."});
        CHECK_FALSE(bench.session().notice().has_value());
    }
    SUBCASE("one that the job does not have is said") {
        write_state(bench, R"({"job": ")" + job + R"(", "drafts": {"reading": {"place": ")" + place +
                               R"(", "what": "pad thickness", "unit": "mm", "texts": ["6."]}}})");
        bench.reopen();
        CHECK_FALSE(bench.session().drafts().reading.has_value());
        REQUIRE(bench.session().notice().has_value());
        CHECK(bench.session().notice()->text.find("'6.'") != std::string::npos);
    }
}
