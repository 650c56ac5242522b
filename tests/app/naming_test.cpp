// A job that was begun before anybody entered a name: it gets it later, and nothing is handed over under no name.
#include <doctest/doctest.h>

#include "core/packet/bag.h"
#include "core/packet/bag_source.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

void read_pad(SessionBench& bench) {
    Reading reading;
    reading.place = kLeft;
    reading.what = "pad thickness";
    reading.unit = "mm";
    reading.points = {{"inner", Number::parse("7.1").value()}};
    bench.apply(PutReading{reading});
}

const std::string& technician(SessionBench& bench) {
    return bench.job().only<Visit>()->technician;
}

void enter_name(SessionBench& bench, const char* name) {
    Settings settings = bench.session().settings();
    settings.technician = name;
    bench.apply(PutSettings{settings});
}

std::string contact_in(SessionBench& bench) {
    bench.run_tasks();
    REQUIRE(bench.session().packed().has_value());
    const auto bag = open_bag(*bench.files, bench.session().packed()->path, {});
    REQUIRE(bag.has_value());
    const auto file = (*bag)->find("bag-info.txt");
    REQUIRE(file.has_value());
    const BagInfo info = parse_bag_info(as_text(read_whole(**bag, *file, 1u << 20).value())).value();
    const std::string* name = value_of(info, "Contact-Name");
    return name == nullptr ? std::string() : *name;
}

}  // namespace

TEST_CASE("a job begun before the name was set gets it when it is set, in every record, and by one step of undo") {
    SessionBench bench;
    bench.start_tandem();
    read_pad(bench);
    const JobId first = bench.job().id();
    bench.start_tandem();
    read_pad(bench);
    CHECK(technician(bench) == "unnamed");
    enter_name(bench, "R. Alder");
    CHECK(technician(bench) == "R. Alder");
    CHECK(bench.job().all<Reading>()[0].by == "R. Alder");
    REQUIRE(bench.session().notice().has_value());
    CHECK(bench.session().notice()->text.find("2 jobs") != std::string::npos);
    bench.apply(UndoStep{});
    CHECK(technician(bench) == "unnamed");
    CHECK(bench.job().all<Reading>()[0].by == "unnamed");
    bench.apply(RedoStep{});
    bench.apply(OpenJob{first});
    CHECK(technician(bench) == "R. Alder");
    CHECK(bench.job().all<Reading>()[0].by == "R. Alder");
    bench.apply(UndoStep{});
    CHECK(technician(bench) == "unnamed");
}

TEST_CASE("another name later changes no job, and a name that a job has stays") {
    SessionBench bench;
    enter_name(bench, "R. Alder");
    bench.start_tandem();
    enter_name(bench, "K. Linde");
    CHECK(technician(bench) == "R. Alder");
    bench.apply(NameTechnician{"M. Weld"});
    CHECK(technician(bench) == "R. Alder");
}

TEST_CASE("a signed-off job gets a name only with a reason, as any change then") {
    SessionBench bench;
    bench.start_tandem();
    bench.apply(SignJob{"R. Alder", "The record shows what was seen.", bench.session().summary().answer});
    enter_name(bench, "R. Alder");
    CHECK(technician(bench) == "unnamed");
    bench.apply(NameTechnician{"R. Alder"});
    CHECK(bench.session().asks_reason());
    bench.apply(GiveReason{"the name was not entered then"});
    CHECK(technician(bench) == "R. Alder");
    CHECK_FALSE(bench.job().amendments.empty());
}

TEST_CASE("an offered quote stays as the customer got it when the name comes later") {
    Job job;
    Quote drafted, offered;
    drafted.by = offered.by = kUnnamed;
    offered.state = QuoteState::offered;
    job.all<Quote>() = {drafted, offered};
    const Changes changes = naming_changes(job, "R. Alder");
    REQUIRE(changes.size() == 1);
    CHECK(std::get<Quote>(std::get<Put>(changes[0]).record).state == QuoteState::drafted);
}

TEST_CASE("the hand-over asks for a name that is missing, and the packet's bag-info says it") {
    AppBench bench({412, 1400});
    bench.start_tandem();
    bench.apply(GoTo{{Screen::hand_over, {}, {}}});
    bench.look();
    CHECK(bench.log().shows("the packet would say 'unnamed'"));
    bench.touch("Make the packet");
    CHECK(bench.log().shows("Whose work is it?"));
    CHECK_FALSE(bench.session().work().has_value());
    CHECK_FALSE(bench.tap("Save the name"));  // not without one
    bench.touch("Name of the technician");
    bench.hands->type("R. Alder");
    bench.touch("Save the name");
    CHECK(contact_in(bench) == "R. Alder");
    CHECK(bench.session().settings().technician == "R. Alder");
    bench.look();
    CHECK_FALSE(bench.log().shows("the packet would say 'unnamed'"));
}
