// The desk's page of trailers: what it says about towing, for as long as that counts.
#include <algorithm>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/store/sql.h"
#include "tests/core/ledger/towing_bench.h"
#include "tests/desk/desk_bench.h"

using namespace cotter;
using namespace cotter::test;
using desk::Page;

namespace {

std::string cell_of(const desk::List& list, std::size_t row, const std::string& column) {
    const TableRow* found = list.table().row(row);
    REQUIRE(found != nullptr);
    for (std::size_t i = 0; i < list.columns.size(); ++i)
        if (list.columns[i].key == column) return found->cells[i].text;
    return "no such column";
}

// One trailer that may be towed, and one that may not.
void two_trailers(DeskBench& bench) {
    bench.session.reset();
    bench.ledger.open();
    take(bench.ledger, good_visit(kYardDay, 1));
    AnswerYard bad = bad_visit(kYardDay, 2);
    bad.change_trailer([](Trailer& t) {
        t.vin.clear();
        t.unit = "STOP-2";
    });
    take(bench.ledger, bad);
    bench.open(Page::trailers);
}

}  // namespace

TEST_CASE("desk trailers: the desk opens on them, the gravest answer first, with its reason and sign") {
    DeskBench bench(0);
    two_trailers(bench);
    CHECK(desk::Route{}.page == Page::trailers);
    const desk::List& list = *bench.session->list();
    REQUIRE(list.table().size() == 2);
    CHECK(cell_of(list, 0, "towing") == "Do not tow");
    CHECK(cell_of(list, 0, "unit") == "STOP-2");
    CHECK(cell_of(list, 0, "reason").find("one missing") != std::string::npos);
    CHECK(cell_of(list, 0, "last") == kYardDay);
    CHECK(cell_of(list, 1, "towing") == "Nothing found against it");
    CHECK(list.table().row(0)->cells[0].sign == Sign::shattered_on_road);
    CHECK(list.table().row(1)->cells[0].sign == Sign::whole_on_road);
    bench.apply(desk::SortList{{0, true}});
    CHECK(cell_of(list, 1, "unit") == "STOP-2");
}

TEST_CASE("desk trailers: a row leads to the trailer's page, which says the same, as the register does") {
    DeskBench bench(0);
    two_trailers(bench);
    const TableRow row = *bench.session->list()->table().row(0);
    bench.apply(desk::GoTo{{Page::trailer, row.key, {}}});
    REQUIRE(bench.session->trailer() != nullptr);
    CHECK(bench.session->trailer()->outcome == TowOutcome::do_not_tow);
    CHECK(row.detail.find(bench.session->trailer()->towing) != std::string::npos);
    CHECK(bench.session->bottom() == Page::trailers);
    bench.apply(desk::GoTo{{Page::jobs, {}, {}}});
    for (std::size_t i = 0; i < 2; ++i) {
        const desk::List& jobs = *bench.session->list();
        CHECK(cell_of(jobs, i, "towing") ==
              (cell_of(jobs, i, "unit") == "STOP-2" ? "Do not tow" : "Nothing found against it"));
    }
}

TEST_CASE("desk trailers: each outcome has a filter with its number, and words narrow the list") {
    DeskBench bench(0);
    two_trailers(bench);
    bench.show();
    CHECK(bench.log().shows("Do not tow: 1"));
    CHECK(bench.log().shows("Cannot tell: 0"));
    bench.tap("Do not tow: 1");
    CHECK(bench.session->list()->table().size() == 1);
    CHECK(cell_of(*bench.session->list(), 0, "unit") == "STOP-2");
    bench.tap("Nothing found against it: 1");
    CHECK(bench.session->list()->table().size() == 2);
    bench.tap("Do not tow: 1");
    bench.tap("Nothing found against it: 1");
    bench.tap("Cannot tell: 0");
    CHECK(bench.session->list()->table().size() == 0);
    CHECK(bench.log().shows("No trailer on file has this answer."));
    bench.tap("Cannot tell: 0");
    bench.apply(desk::NarrowList{"stop"});
    CHECK(bench.session->list()->table().size() == 1);
    bench.apply(desk::NarrowList{"nowhere"});
    CHECK(bench.session->list()->table().size() == 0);
}

TEST_CASE(
    "desk trailers: an answer that runs out while the page stands open goes, and is made anew beside the screen") {
    DeskBench bench(0);
    two_trailers(bench);
    const desk::List& list = *bench.session->list();
    REQUIRE(bench.session->seconds_to_end());
    CHECK(*bench.session->seconds_to_end() <= 86'400);
    bench.ledger.clock.at.unix_s += static_cast<std::int64_t>(*bench.session->seconds_to_end());
    bench.session->collect();
    CHECK(cell_of(list, 1, "towing") != "Nothing found against it");
    bench.run_tasks();
    CHECK(bench.session->fleet_counts().waiting == 0);
    CHECK(cell_of(list, 0, "towing") == "Do not tow");
    CHECK(cell_of(list, 1, "towing") == "Cannot tell");
    CHECK(list.table().row(1)->cells[0].sign == Sign::fading_on_road);
}

TEST_CASE("desk trailers: the trailer's page read again when its answer has run out says 'cannot tell'") {
    DeskBench bench(0);
    two_trailers(bench);
    bench.apply(desk::GoTo{{Page::trailer, bench.session->list()->table().row(1)->key, {}}});
    CHECK(bench.session->trailer()->outcome == TowOutcome::nothing_against);
    REQUIRE(bench.session->seconds_to_end());
    bench.ledger.clock.at.unix_s += static_cast<std::int64_t>(*bench.session->seconds_to_end());
    bench.session->collect();
    CHECK(bench.session->trailer()->outcome == TowOutcome::cannot_tell);
}

TEST_CASE(
    "desk trailers: other rules are asked beside the screen, and nothing stands in an answer's place until then") {
    DeskBench bench(30);
    bench.session.reset();
    const std::vector<Limit> other = other_limits(bench.ledger);
    bench.ledger.rules.limits = other;
    bench.ledger.open();
    bench.open(Page::trailers);
    const desk::List& list = *bench.session->list();
    REQUIRE(list.table().size() == 10);
    CHECK(bench.session->fleet_counts().waiting == 10);
    for (std::size_t i = 0; i < 10; ++i) CHECK(cell_of(list, i, "towing") == "being worked out");
    bench.show();
    CHECK(bench.log().shows("Trailers"));
    bench.run_tasks();
    CHECK(bench.session->fleet_counts().waiting == 0);
    for (std::size_t i = 0; i < 10; ++i) CHECK(cell_of(list, i, "towing") != "being worked out");
}

TEST_CASE("desk trailers: a key that nobody accepted yet is accepted on the trailer's page, and then permits") {
    DeskBench bench(0);
    bench.session.reset();
    bench.ledger.open();
    take(bench.ledger, good_visit(), {kTechnician, false});
    bench.open(Page::trailers);
    CHECK(cell_of(*bench.session->list(), 0, "towing") == "Cannot tell");
    bench.show();
    bench.key("enter");
    REQUIRE(bench.session->route().page == Page::trailer);
    bench.tap("Packets");
    bench.tap("Accept this key");
    CHECK(bench.session->trailer()->outcome == TowOutcome::nothing_against);
    CHECK_FALSE(bench.hands->tap("Accept this key"));
    bench.key("escape");
    bench.run_tasks();
    CHECK(cell_of(*bench.session->list(), 0, "towing") == "Nothing found against it");
}

TEST_CASE(
    "desk trailers: a list on paper has every trailer, also those no page of which was read, and no answer left out") {
    DeskBench bench(130, 130);
    bench.session.reset();
    bench.ledger.open();
    good(bench.ledger.ledger->db().run("UPDATE towing SET rules='other'"));
    bench.open(Page::trailers);
    REQUIRE(bench.session->list()->table().size() == 130);
    bench.apply(desk::WriteList{desk::ListFile::csv});
    bench.run_tasks();
    const std::string text = bench.file("2026-05-14_trailers.csv");
    CHECK(std::count(text.begin(), text.end(), '\n') == 131);
    CHECK(text.find("being worked out") == std::string::npos);
    CHECK(text.starts_with("Towing now,Unit,First reason,Last seen"));
}

TEST_CASE("desk trailers: no page says that nothing is open where the answer is another") {
    DeskBench bench(0);
    bench.session.reset();
    bench.ledger.open();
    AnswerYard bare = disc_yard(kYardDay, 1);  // nothing was looked at, so no finding is open
    take(bench.ledger, bare);
    bench.open(Page::trailers);
    CHECK(cell_of(*bench.session->list(), 0, "towing") == "Cannot tell");
    bench.show();
    const std::string key = bench.session->list()->table().row(0)->key;
    for (const desk::Route& route :
         {desk::Route{Page::trailers, {}, {}}, desk::Route{Page::jobs, {}, {}}, desk::Route{Page::trailer, key, {}}}) {
        bench.apply(desk::GoTo{route});
        bench.look();
        CHECK(bench.log().shows("Cannot tell"));
        for (const Target& target : bench.log().targets)
            CHECK(ascii_lower(target.label).find("nothing open") == std::string::npos);
        CHECK_FALSE(bench.log().shows("nothing open"));
        CHECK_FALSE(bench.log().shows("Nothing open"));
    }
}
