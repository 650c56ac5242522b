// The desk's session: what its pages show of a ledger, what its commands do. No screen.
#include <algorithm>

#include <fmt/format.h>

#include "core/survey/edit.h"
#include "tests/desk/desk_bench.h"

using namespace cotter;
using namespace cotter::test;
using desk::Page;

namespace {

std::string cell(const desk::List& list, std::size_t row, const std::string& column) {
    for (std::size_t i = 0; i < list.columns.size(); ++i)
        if (list.columns[i].key == column) return list.table().row(row)->cells[i].text;
    return "no such column";
}

bool drawn(const desk::List& list, const std::string& column) {
    return std::any_of(list.columns.begin(), list.columns.end(),
                       [&](const TableColumn& c) { return c.key == column && c.drawn(); });
}

bool rising(const desk::List& list, const std::string& column) {
    for (std::size_t i = 1; i < list.table().size(); ++i)
        if (cell(list, i, column) < cell(list, i - 1, column)) return false;
    return true;
}

void sort_by(DeskBench& bench, const std::string& column, bool falling) {
    const auto& columns = bench.session->list()->columns;
    for (std::size_t i = 0; i < columns.size(); ++i)
        if (columns[i].key == column) bench.apply(desk::SortList{{i, falling}});
}

// The trailer's newest visit's key among the packets.
std::string open_first_trailer(DeskBench& bench) {
    const std::string key = bench.session->job_at(0)->trailer;
    bench.apply(desk::GoTo{{Page::trailer, key, {}}});
    REQUIRE(bench.session->trailer() != nullptr);
    return key;
}

}  // namespace

TEST_CASE("desk: the register shows every job, the newest first, and says where a word was found") {
    DeskBench bench(30);
    const desk::List& list = *bench.session->list();
    CHECK(list.table().size() == 30);
    CHECK(cell(list, 0, "opened") >= cell(list, 29, "opened"));
    CHECK(cell(list, 0, "found").empty());
    CHECK_FALSE(drawn(list, "found"));
    CHECK(drawn(list, "place"));
    bench.apply(desk::AskRegister{"qry 00003", {}});
    REQUIRE(list.table().size() == 3);
    CHECK(cell(list, 0, "unit") == "QRY-00003");
    CHECK(cell(list, 0, "found") == "unit: QRY-00003");
    CHECK(drawn(list, "found"));
    CHECK(bench.session->job_at(0)->unit == "QRY-00003");
    bench.apply(desk::AskRegister{"there is no such word", {}});
    CHECK(list.table().size() == 0);
    CHECK_FALSE(list.empty.empty());
}

TEST_CASE("desk: the register is sorted by the ledger, page by page, and filtered") {
    DeskBench bench(230, 40);
    const desk::List& list = *bench.session->list();
    CHECK(list.table().size() == 230);
    CHECK(list.table().row(99) != nullptr);
    CHECK(list.table().row(150) == nullptr);
    bench.apply(desk::WantRows{{90, 230}});
    CHECK(list.table().row(229) != nullptr);
    sort_by(bench, "unit", false);
    bench.apply(desk::WantRows{{0, 230}});
    CHECK(rising(list, "unit"));
    sort_by(bench, "customer", false);
    bench.apply(desk::WantRows{{0, 230}});
    CHECK(cell(list, 0, "customer") <= cell(list, 229, "customer"));
    ledger::JobFilter filter;
    filter.technician = bench.session->job_at(0)->technician;
    bench.apply(desk::AskRegister{"", filter});
    CHECK(list.table().size() < 230);
    CHECK(list.table().size() > 0);
    CHECK(cell(list, list.table().size() > 100 ? 99 : list.table().size() - 1, "technician") == filter.technician);
}

TEST_CASE("desk: a trailer's page tells its life, and two visits are compared with the earlier one first") {
    DeskBench bench(30);
    const std::string key = open_first_trailer(bench);
    const desk::Trailer& trailer = *bench.session->trailer();
    CHECK(trailer.visits.table().size() == 3);
    CHECK(trailer.packets.table().size() == 3);
    CHECK(trailer.torques.table().size() > 0);
    CHECK(trailer.findings.table().size() > 0);
    REQUIRE_FALSE(trailer.wear.empty());
    CHECK(trailer.wear.front().told);
    CHECK(trailer.wear.front().points.size() >= 2);
    CHECK_FALSE(trailer.pairs.empty());
    CHECK(good(bench.session->photos().thumbnail(trailer.pairs.front().before)).size() > 100);
    bench.apply(desk::ShowPart{desk::Part::findings});
    CHECK(bench.session->list() == &trailer.findings);
    const std::string newest = trailer.visits.table().row(0)->key, oldest = trailer.visits.table().row(2)->key;
    bench.apply(desk::GoTo{{Page::compare, oldest, newest}});
    REQUIRE(bench.session->compared() != nullptr);
    CHECK(bench.session->compared()->readings.table().size() > 0);
    bench.apply(desk::GoBack{});
    CHECK(bench.session->route() == desk::Route{Page::trailer, key, {}});
    bench.apply(desk::GoBack{});
    CHECK(bench.session->route().page == Page::jobs);
    CHECK(bench.session->at_bottom());
}

TEST_CASE("desk: what is not there is said and leaves the page empty") {
    DeskBench bench(0);
    bench.apply(desk::GoTo{{Page::trailer, "unit:none", {}}});
    CHECK(bench.session->trailer() == nullptr);
    CHECK(bench.session->unread().find("unit:none") != std::string::npos);
    for (const Page page : {Page::due, Page::orders, Page::failures, Page::receipts, Page::take_in}) {
        bench.apply(desk::GoTo{{page, {}, {}}});
        REQUIRE(bench.session->list() != nullptr);
        CHECK(bench.session->list()->table().size() == 0);
        CHECK_FALSE(bench.session->notice().bad);
        CHECK(bench.session->unread().empty());
    }
}

TEST_CASE("desk: a trailer that cannot be read does not leave another one standing in its place") {
    DeskBench bench(10);
    open_first_trailer(bench);
    REQUIRE(bench.session->trailer() != nullptr);
    bench.apply(desk::GoTo{{Page::trailer, "unit:none", {}}});
    CHECK(bench.session->trailer() == nullptr);
    bench.apply(desk::GoBack{});
    CHECK(bench.session->unread().empty());
    CHECK(bench.session->trailer() != nullptr);
}

TEST_CASE("desk: due, orders and failures are lists of their own, with the trailer that a row leads to") {
    DeskBench bench(30);
    bench.apply(desk::GoTo{{Page::due, {}, {}}});
    bench.apply(desk::AskDue{3650, {}});
    const desk::List& due = *bench.session->list();
    REQUIRE(due.table().size() > 5);
    for (std::size_t i = 1; i < due.table().size(); ++i)
        CHECK(*due.table().row(i)->cells[0].number >= *due.table().row(i - 1)->cells[0].number);
    const std::size_t all = due.table().size();
    CHECK_FALSE(bench.session->trailer_of(due.table().row(0)->key).empty());
    bench.apply(desk::AskDue{3650, {ledger::DueKind::retorque}});
    CHECK(due.table().size() < all);
    for (std::size_t i = 0; i < due.table().size(); ++i) CHECK(cell(due, i, "kind") == "re-torque");
    bench.apply(desk::GoTo{{Page::orders, {}, {}}});
    CHECK(bench.session->list()->table().size() > 0);
    bench.apply(desk::GoTo{{Page::failures, {}, {}}});
    const desk::List& fails = *bench.session->list();
    REQUIRE(fails.table().size() > 0);
    bench.apply(desk::NarrowList{cell(fails, 0, "defect")});
    CHECK(fails.table().size() >= 1);
    bench.apply(desk::NarrowList{"there is no such word"});
    CHECK(fails.table().size() == 0);
}

TEST_CASE(
    "desk: packets are taken in beside the screen, bad ones refused with their reason, the rest at once on file") {
    DeskBench bench(0);
    LedgerBench& office = bench.ledger;
    for (int i = 0; i < 40; ++i) (void)office.put(office_packet(i, office.shape, office.photos));
    const BadPacket bad = bad_packet(0, 50, office.shape, office.photos);
    good(replace_file(*office.files, office.path("in/zz bad.zip"), bad.zip));
    bench.apply(desk::TakeIn{{office.path("in")}});
    CHECK(bench.session->route().page == Page::take_in);
    CHECK(bench.session->take_in().running);
    bench.run_tasks();
    const desk::TakeInState& state = bench.session->take_in();
    CHECK_FALSE(state.running);
    CHECK(state.taken == 40);
    CHECK(state.refused == 1);
    CHECK(bench.session->notice().bad);
    const desk::List& came = *bench.session->list();
    REQUIRE(came.table().size() == 41);
    CHECK(came.table().row(40)->marked);
    CHECK(cell(came, 40, "why").find(bad.says) != std::string::npos);
    CHECK(bench.session->counts().jobs == 40);
    bench.apply(desk::GoTo{{Page::receipts, {}, {}}});
    CHECK(bench.session->list()->table().size() == 41);
    bench.apply(desk::TakeIn{{office.path("in")}});
    bench.run_tasks();
    CHECK(bench.session->take_in().there == 40);
    CHECK(bench.session->counts().jobs == 40);
}

TEST_CASE("desk: a batch that is cancelled stops soon; what is in stays in, and the next batch takes the rest") {
    DeskBench bench(0);
    LedgerBench& office = bench.ledger;
    for (int i = 0; i < 60; ++i) (void)office.put(office_packet(i, office.shape, office.photos));
    bench.apply(desk::TakeIn{{office.path("in")}});
    bench.session->collect();  // they are found
    bench.session->collect();  // the first ones are in
    bench.apply(desk::CancelTakeIn{});
    bench.run_tasks();
    const std::size_t in = bench.session->take_in().taken;
    CHECK(in > 0);
    CHECK(in < 60);
    CHECK(bench.session->counts().jobs == static_cast<std::int64_t>(in));
    bench.apply(desk::TakeIn{{office.path("in")}});
    bench.run_tasks();
    CHECK(bench.session->counts().jobs == 60);
}

TEST_CASE("desk: a folder without packets, and a second batch beside the first, are said") {
    DeskBench bench(0);
    bench.apply(desk::TakeIn{{bench.ledger.path("in")}});
    bench.apply(desk::TakeIn{{bench.ledger.path("in")}});
    CHECK(bench.session->notice().bad);
    bench.apply(desk::DismissNotice{});
    bench.run_tasks();
    CHECK(bench.session->notice().text == "There was no packet in what was handed in.");
}

TEST_CASE("desk: a key that is not the technician's is flagged, and a person may accept it") {
    DeskBench bench(10);
    LedgerBench& office = bench.ledger;
    PacketParts parts = office_parts(office_job(12, office.shape), 12, office.photos);
    parts.signer = "somebody else";
    (void)office.put(seal(parts), "other key.zip");
    bench.apply(desk::TakeIn{{office.path("in/other key.zip")}});
    bench.run_tasks();
    CHECK(bench.session->doubtful() == 1);
    bench.apply(desk::GoTo{{Page::jobs, {}, {}}});
    ledger::JobFilter doubtful;
    doubtful.doubtful = true;
    bench.apply(desk::AskRegister{"", doubtful});
    REQUIRE(bench.session->list()->table().size() == 1);
    CHECK(bench.session->list()->table().row(0)->marked);
    open_first_trailer(bench);
    bench.apply(desk::ShowPart{desk::Part::packets});
    const desk::Trailer& trailer = *bench.session->trailer();
    const auto flagged = std::find_if(trailer.packet_lines.begin(), trailer.packet_lines.end(),
                                      [](const auto& p) { return ledger::flagged(p.standing); });
    REQUIRE(flagged != trailer.packet_lines.end());
    CHECK(desk::standing_words(*flagged, false).find("not known to sign with this key") != std::string::npos);
    bench.apply(desk::AcceptKey{flagged->technician, flagged->signer});
    CHECK_FALSE(bench.session->notice().bad);
    CHECK(bench.session->doubtful() == 0);
    CHECK_FALSE(bench.session->trailer()->doubtful(bench.session->trailer()->packet_lines.front()));
    CHECK(bench.session->trailer()->part == desk::Part::packets);
}

TEST_CASE("desk: lists are written as PDF, CSV and calendar, the same bytes each time") {
    DeskBench bench(30);
    bench.apply(desk::GoTo{{Page::due, {}, {}}});
    bench.apply(desk::AskDue{3650, {}});
    const auto written = [&](desk::ListFile as, const std::string& name) {
        bench.apply(desk::WriteList{as});
        bench.run_tasks();
        REQUIRE_MESSAGE(!bench.session->notice().bad, bench.session->notice().text);
        CHECK(bench.session->notice().text.find(name) != std::string::npos);
        return bench.file(name);
    };
    const std::string pdf = written(desk::ListFile::pdf, "2026-05-14_due.pdf");
    CHECK(pdf.starts_with("%PDF"));
    CHECK(written(desk::ListFile::pdf, "2026-05-14_due.pdf") == pdf);
    const std::string csv = written(desk::ListFile::csv, "2026-05-14_due.csv");
    const auto lines = static_cast<std::size_t>(std::count(csv.begin(), csv.end(), '\n'));
    CHECK(lines == bench.session->list()->table().size() + 1);
    CHECK(csv.starts_with("Due,When,Unit,"));
    bench.apply(desk::ShowColumn{1, false});
    CHECK(written(desk::ListFile::csv, "2026-05-14_due_2.csv").starts_with("Due,Unit,"));
    CHECK(written(desk::ListFile::ics, "2026-05-14_due.ics").starts_with("BEGIN:VCALENDAR"));
    bench.apply(desk::GoTo{{Page::jobs, {}, {}}});
    const std::string jobs = written(desk::ListFile::csv, "2026-05-14_register.csv");
    CHECK(jobs.find("Found in") == std::string::npos);
    CHECK(std::count(jobs.begin(), jobs.end(), '\n') == 31);
}

TEST_CASE("desk: two different lists of one day are two files, the same one is one") {
    DeskBench bench(30);
    bench.apply(desk::GoTo{{Page::due, {}, {}}});
    const auto write = [&](const std::string& words) {
        bench.apply(desk::NarrowList{words});
        bench.apply(desk::WriteList{desk::ListFile::csv});
        bench.run_tasks();
        REQUIRE_MESSAGE(!bench.session->notice().bad, bench.session->notice().text);
        return bench.session->notice().text;
    };
    bench.apply(desk::AskDue{3650, {}});
    const std::string depot = write("nursery"), quarry = write("quarry");
    CHECK(depot != quarry);
    CHECK(write("nursery") == depot);
    const std::string first = bench.file("2026-05-14_due.csv"), second = bench.file("2026-05-14_due_2.csv");
    CHECK(first.find("nursery") != std::string::npos);
    CHECK(second.find("nursery") == std::string::npos);
    CHECK(second.find("quarry") != std::string::npos);
    CHECK(good(bench.ledger.files->list(bench.ledger.path("lists"))).size() == 2);
}

TEST_CASE("desk: a grade that a revision made less severe stands on the trailer's page, with who and why") {
    DeskBench bench(0);
    LedgerBench& office = bench.ledger;
    Job job = office_job(3, office.shape);
    Finding studs;
    studs.id = {office_id(3, 900)};
    studs.place = Place::corner(1, Side::left);
    studs.component = "wheel studs";
    studs.defect = "broken";
    studs.grade = Grade::do_not_tow;
    studs.at = job.only<Visit>()->opened;
    studs.by = "R. Alder";
    job.all<Finding>().push_back(studs);
    const PacketParts first = office_parts(job, 3, office.photos);
    const SealedPacket sealed = seal(first);
    PacketParts second = revised(first, sealed.fingerprint);
    studs.grade = Grade::serviceable;
    second.document.job =
        good(apply(first.document.job,
                   {job.id(), job.only<SignOff>()->at, "T. Tester", "another trailer", {Put{studs, std::nullopt}}}));
    (void)office.put(sealed, "1.zip");
    (void)office.put(seal(second), "2.zip");
    bench.apply(desk::TakeIn{{office.path("in")}});
    bench.run_tasks();
    const desk::List& came = *bench.session->list();
    REQUIRE(came.table().size() == 2);
    CHECK(came.table().row(1)->marked);
    CHECK(cell(came, 1, "why").find("less severe than before: wheel studs, broken at axle 1, left") == 0);
    bench.apply(desk::GoTo{{Page::jobs, {}, {}}});
    open_first_trailer(bench);
    const desk::Trailer& trailer = *bench.session->trailer();
    CHECK(trailer.eased.find("'do not tow' before, 'serviceable' now. Changed by T. Tester") != std::string::npos);
    bench.apply(desk::ShowPart{desk::Part::changes});
    const desk::List& changes = *bench.session->list();
    REQUIRE(changes.table().size() == 1);
    CHECK(cell(changes, 0, "before") == "do not tow");
    CHECK(cell(changes, 0, "now") == "serviceable");
    CHECK(cell(changes, 0, "reason") == "another trailer");
    CHECK(cell(changes, 0, "by") == "T. Tester");
    bench.show();
    CHECK(bench.log().shows("A revision made a grade less severe"));
}

TEST_CASE("desk: a finding that the customer declined is said to be declined, not just open") {
    ledger::FindingLine line;
    line.open = true;
    const auto state = [&](Outcome outcome) {
        line.finding.outcome = outcome;
        return desk::finding_row(line).cells[3].text;
    };
    CHECK(state(Outcome::open) == "open");
    CHECK(state(Outcome::declined) == "declined, still open");
    CHECK(state(Outcome::deferred) == "deferred, still open");
    line.open = false;
    CHECK(state(Outcome::repaired) == "repaired");
    CHECK(state(Outcome::open) == "settled at a later visit");
}

TEST_CASE("desk: at least one column stays") {
    DeskBench bench(1);
    const std::size_t columns = bench.session->list()->columns.size();
    for (std::size_t i = 0; i < columns; ++i) bench.apply(desk::ShowColumn{i, false});
    const auto& all = bench.session->list()->columns;
    CHECK(std::count_if(all.begin(), all.end(), [](const TableColumn& c) { return c.shown; }) == 1);
}
