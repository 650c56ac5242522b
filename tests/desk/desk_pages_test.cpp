// The desk's pages drawn without pixels: the laws of the screens with nothing, one and many on file, and hands on them.
#include <array>

#include <fmt/format.h>
#include <imgui.h>

#include "core/store/sql.h"
#include "core/store/sqlite.h"
#include "tests/desk/desk_bench.h"

using namespace cotter;
using namespace cotter::test;
using desk::Page;
using desk::Part;

namespace {

constexpr std::array kSizes{Point{1280, 800}, Point{1024, 700}, Point{1920, 1080}};

int tell(DeskBench& bench, const std::string& where) {
    bench.look();
    const auto found = bench.offences();
    for (const std::string& line : found) MESSAGE(where << ": " << line);
    return static_cast<int>(found.size());
}

// Every page there is something to show on.
int offences_of(int jobs, int trailers) {
    DeskBench bench(jobs, trailers);
    int found = 0;
    for (std::size_t s = 0; s < kSizes.size(); ++s) {
        bench.show(kSizes[s], s == 1 ? ThemeKind::lantern : ThemeKind::sun);
        for (const Page page :
             {Page::trailers, Page::due, Page::orders, Page::failures, Page::take_in, Page::receipts, Page::jobs}) {
            bench.apply(desk::GoTo{{page, {}, {}}});
            if (page == Page::due) bench.apply(desk::AskDue{3650, {}});
            found += tell(bench, fmt::format("{} jobs, {}, {}", jobs, kSizes[s].x, name_of(page)));
        }
        const ledger::JobLine* job = bench.session->job_at(0);
        if (job == nullptr) continue;
        bench.apply(desk::GoTo{{Page::trailer, job->trailer, {}}});
        for (int part = 0; part <= static_cast<int>(Part::packets); ++part) {
            bench.apply(desk::ShowPart{static_cast<Part>(part)});
            found += tell(bench, fmt::format("{} jobs, {}, part {}", jobs, kSizes[s].x, part));
        }
        const auto& visits = bench.session->trailer()->visits.table();
        if (visits.size() < 2) continue;
        bench.apply(desk::GoTo{{Page::compare, visits.row(1)->key, visits.row(0)->key}});
        found += tell(bench, fmt::format("{} jobs, {}, compared", jobs, kSizes[s].x));
    }
    return found;
}

// Makes the ledger unreadable for the desk, as a server that is away does, and readable again.
void take_away(DeskBench& bench, bool away) {
    const auto db = sql_over(good(Sqlite::open(bench.ledger.where, false, "", "ledger")));
    good(db->script(away ? "ALTER TABLE job RENAME TO away" : "ALTER TABLE away RENAME TO job"));
}

std::size_t cursor_rows(DeskBench& bench) {
    return bench.session->list()->table().size();
}

}  // namespace

TEST_CASE("desk pages keep the laws of the screens: nothing on file") {
    CHECK(offences_of(0, 10) == 0);
}
TEST_CASE("desk pages keep the laws of the screens: one job") {
    CHECK(offences_of(1, 10) == 0);
}
TEST_CASE("desk pages keep the laws of the screens: thirty jobs") {
    CHECK(offences_of(30, 10) == 0);
}
TEST_CASE("desk pages keep the laws of the screens: a thousand jobs") {
    CHECK(offences_of(1000, 50) == 0);
}

TEST_CASE("desk pages: one that cannot be read says so and never shows an empty list, until it is read again") {
    DeskBench bench(30);
    const std::string trailer = bench.session->job_at(0)->trailer;
    bench.apply(desk::GoTo{{Page::trailer, trailer, {}}});
    const auto& visits = bench.session->trailer()->visits.table();
    const std::string now = visits.row(0)->key, before = visits.row(1)->key;
    bench.show();
    for (const desk::Route& route : {desk::Route{Page::trailers, {}, {}}, desk::Route{Page::due, {}, {}},
                                     desk::Route{Page::orders, {}, {}}, desk::Route{Page::failures, {}, {}},
                                     desk::Route{Page::receipts, {}, {}}, desk::Route{Page::trailer, trailer, {}},
                                     desk::Route{Page::compare, before, now}, desk::Route{Page::jobs, {}, {}}}) {
        CAPTURE(name_of(route.page));
        bench.apply(desk::GoTo{{Page::take_in, {}, {}}});
        take_away(bench, true);
        bench.apply(desk::GoTo{route});
        CHECK(tell(bench, "unread") == 0);
        CHECK(bench.log().shows("This page could not be read"));
        CHECK(bench.log().shows("The ledger cannot be read"));
        for (const char* empty :
             {"Nothing is due in this time.", "No accepted quote waits for parts.", "Nothing was handed in yet.",
              "No job on file is like that.", "No trailer on file has this answer."})
            CHECK_FALSE(bench.log().shows(empty));
        take_away(bench, false);
        bench.tap("Try again");
        CHECK(bench.session->unread().empty());
        CHECK_FALSE(bench.log().shows("This page could not be read"));
        if (bench.session->list() != nullptr) CHECK(bench.session->list()->table().size() > 0);
    }
}

TEST_CASE("desk pages: rows that cannot be fetched while one scrolls are said, not left blank") {
    DeskBench bench(300, 50);
    bench.show();
    bench.tap("Day");
    take_away(bench, true);
    bench.key("end");
    CHECK(bench.log().shows("This page could not be read"));
    take_away(bench, false);
    bench.tap("Try again");
    CHECK(cursor_rows(bench) == 300);
}

TEST_CASE("desk pages: typing searches at once, arrows walk, Enter opens, Escape goes back") {
    DeskBench bench(30);
    bench.show();
    REQUIRE(bench.host->stage().editing());  // the search field has the keyboard from the start
    bench.hands->type("qry-00003");
    CHECK(cursor_rows(bench) == 3);
    CHECK(bench.log().shows("unit: QRY-00003"));
    bench.key("down");
    bench.key("enter");
    CHECK(bench.session->route().page == Page::trailer);
    CHECK(bench.log().shows("QRY-00003"));
    bench.key("escape");
    CHECK(bench.session->route().page == Page::jobs);
    CHECK(bench.session->asked().words == "qry-00003");
}

TEST_CASE("desk pages: two clicks open a row, one does not") {
    DeskBench bench(30);
    bench.show();
    const std::string label = bench.session->list()->table().row(2)->label;
    bench.tap(label);
    CHECK(bench.session->route().page == Page::jobs);
    bench.tap(label);
    CHECK(bench.session->route().page == Page::trailer);
}

TEST_CASE("desk pages: a column's head sorts by it, another click the other way round") {
    DeskBench bench(30);
    bench.show();
    bench.tap("Unit");
    REQUIRE(bench.session->list()->sort);
    CHECK(*bench.session->list()->sort == TableSort{1, false});
    bench.tap("Unit");
    CHECK(*bench.session->list()->sort == TableSort{1, true});
}

TEST_CASE("desk pages: two visits chosen with Space are compared") {
    DeskBench bench(30);
    bench.show();
    bench.key("enter");
    REQUIRE(bench.session->route().page == Page::trailer);
    bench.key("space");
    CHECK_FALSE(bench.hands->tap("Compare the two"));
    bench.key("down");
    bench.key("space");
    bench.tap("Compare the two");
    CHECK(bench.session->route().page == Page::compare);
    const auto& visits = bench.session->trailer()->visits.table();
    CHECK(bench.session->route().record == visits.row(1)->key);  // the earlier one
    CHECK(bench.session->route().other == visits.row(0)->key);
}

TEST_CASE("desk pages: filters turn on and off, and name the row under the cursor") {
    DeskBench bench(30);
    bench.show();
    bench.tap("Open findings");
    CHECK(bench.session->asked().filter.open_findings);
    bench.tap("Open findings");
    CHECK_FALSE(bench.session->asked().filter.open_findings);
    const std::string who = bench.session->job_at(0)->technician;
    bench.tap("This technician");
    CHECK(bench.session->asked().filter.technician == who);
    bench.tap("Technician: " + who);
    CHECK(bench.session->asked().filter.technician.empty());
}

TEST_CASE("desk pages: files dropped onto the window are taken in, and a column is hidden by its switch") {
    DeskBench bench(0);
    for (int i = 0; i < 5; ++i) (void)bench.ledger.put(office_packet(i, bench.ledger.shape, bench.ledger.photos));
    bench.show();
    bench.apply(desk::TakeIn{{bench.ledger.path("in")}});
    bench.look();
    CHECK(bench.log().shows("5 taken in."));
    bench.tap("Seen");
    CHECK_FALSE(bench.log().shows("5 taken in."));
    bench.tap("Columns");
    bench.tap("Why");
    bench.tap("Done");
    CHECK_FALSE(bench.session->list()->columns[4].shown);
}

TEST_CASE("desk pages: the end of a thousand rows is one key away, and only what is seen is drawn") {
    DeskBench bench(1000, 50);
    bench.show();
    CHECK(cursor_rows(bench) == 1000);
    bench.tap("Day");  // out of the search field, where End is the field's
    bench.key("end");
    const TargetLog& log = bench.log();
    std::size_t rows = 0;
    for (const Target& t : log.targets) rows += t.role == Role::row ? 1 : 0;
    CHECK(rows > 5);
    CHECK(rows < 40);
    CHECK(log.shows(bench.session->list()->table().row(bench.session->list()->table().size() - 1)->cells[0].text));
}

TEST_CASE("desk pages: a letter pressed anywhere begins a search, and more may follow") {
    DeskBench bench(30);
    bench.show();
    bench.tap("Open findings");
    REQUIRE_FALSE(bench.host->stage().editing());
    bench.host->stage().key(ImGuiKey_Q, true);
    bench.look();
    bench.host->stage().key(ImGuiKey_Q, false);
    bench.look();
    CHECK(bench.session->asked().words == "q");
    REQUIRE(bench.host->stage().editing());
    bench.hands->type("ry-00003");
    CHECK(bench.session->asked().words == "qry-00003");
}
