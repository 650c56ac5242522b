// What the ledger answers: search, trailers' lives, what is due and what to order.
#include "tests/core/ledger/ledger_bench.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

#include "core/ledger/transfer.h"
#include "core/photo/vault.h"
#include "tests/support/invented.h"

using namespace cotter;
using namespace cotter::test;
using namespace cotter::ledger;

namespace {

const std::string kKeyOf3 = "vin:1x9de0000madm0003";  // of the office's trailer 3

void fill(LedgerBench& bench, int jobs) {
    for (int i = 0; i < jobs; ++i) bench.put(office_packet(i, bench.shape, bench.photos));
    REQUIRE(bench.receive().taken == static_cast<std::size_t>(jobs));
}

std::vector<Hit> search(LedgerBench& bench, const std::string& words, const JobFilter& filter = {}) {
    return good(bench.ledger->search({words, filter, 100, 0}));
}

// How many of them are so.
template <class Is>
std::size_t those(const std::vector<Hit>& hits, Is is) {
    return static_cast<std::size_t>(std::count_if(hits.begin(), hits.end(), is));
}

}  // namespace

TEST_CASE("ledger answers: search by the beginnings of words, newest first, whatever case and accents") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 30);
        const auto by_unit = search(bench, "QRY-00003");
        REQUIRE(by_unit.size() == 3);
        CHECK(by_unit[0].field == "unit");
        CHECK(by_unit[0].text == "QRY-00003");
        CHECK(by_unit[0].job.opened > by_unit[1].job.opened);
        CHECK(search(bench, "qry00003").size() == 3);
        CHECK(search(bench, "qry 00003").size() == 3);
        CHECK(search(bench, "GRUN").size() == 30);  // the company of all, and one of its technicians
        CHECK(search(bench, "ostby").size() == 5);
        CHECK(search(bench, "Øst").size() == 5);
        CHECK(search(bench, "hof grunau").size() == search(bench, "Hof Grünau").size());
        CHECK(search(bench, "ma000004").size() == 3);  // the end of a VIN
        CHECK(search(bench, "000004").size() >= 3);
        CHECK(search(bench, "pad").size() + search(bench, "seal").size() > 0);
        CHECK(search(bench, "zebra").empty());
        CHECK(search(bench, "qry zebra").empty());
        CHECK(search(bench, "").size() == 30);
        CHECK(search(bench, "\" OR 1=1 --").empty());
        CHECK(search(bench, "' & | ! :* (").size() == 30);  // no word in it
        CHECK_FALSE(search(bench, "rot").empty());
        for (const Hit& hit : search(bench, "rot")) CHECK_FALSE(hit.text.empty());
    });
}

TEST_CASE("ledger answers: filters narrow a search") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 30);
        JobFilter filter;
        filter.technician = "m. GRUN";
        CHECK(search(bench, "", filter).size() == 5);
        filter = {};
        filter.from = Date{2021, 6, 1};
        filter.until = Date{2021, 6, 30};
        CHECK(search(bench, "", filter).size() == 10);
        CHECK(those(search(bench, "", filter), [](const Hit& h) { return h.job.opened.local_date().month == 6; }) ==
              10);
        const auto worst = [](const Hit& h) { return h.job.worst == Grade::do_not_tow; };
        const auto open = [](const Hit& h) { return h.job.open_findings > 0; };
        const std::size_t worst_of_all = those(search(bench, ""), worst),
                          open_of_all = those(search(bench, "qry"), open);
        REQUIRE(worst_of_all > 0);
        REQUIRE(worst_of_all < 30);
        REQUIRE(open_of_all > 0);
        filter = {};
        filter.at_least = Grade::do_not_tow;
        CHECK(search(bench, "", filter).size() == worst_of_all);
        CHECK(those(search(bench, "", filter), worst) == worst_of_all);
        filter = {};
        filter.open_findings = true;
        CHECK(search(bench, "qry", filter).size() == open_of_all);
        CHECK(those(search(bench, "qry", filter), open) == open_of_all);
        CHECK(good(bench.ledger->search({"", {}, 7, 28})).size() == 2);
    });
}

TEST_CASE("ledger answers: a trailer is found by what people call it") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 20);
        const std::string key = good(bench.ledger->find_trailer("QRY-00003"));
        CHECK(key == kKeyOf3);
        CHECK(good(bench.ledger->find_trailer("qry 00003")) == key);
        CHECK(good(bench.ledger->find_trailer("T 000 003")) == key);
        CHECK(good(bench.ledger->find_trailer(invented_vin(3))) == key);
        CHECK(good(bench.ledger->find_trailer(key)) == key);
        const std::string job = office_id(13, 0).text();
        CHECK(good(bench.ledger->find_trailer(job.substr(0, 8))) == key);
        CHECK(good(bench.ledger->find_job("qry-00003")) == job);  // the newer of its two
        CHECK(bench.ledger->find_trailer("nobody").error().code == Errc::not_found);
        CHECK(good(bench.ledger->trailers(100, 0)).size() == 10);
    });
}

TEST_CASE("ledger answers: a trailer's life") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 50);
        const auto page = good(bench.ledger->trailer(good(bench.ledger->find_trailer("QRY-00003"))));
        CHECK(page.trailer.visits == 5);
        CHECK(page.trailer.axle_models == std::vector<std::string>{"HD-72", "HD-72"});
        REQUIRE(page.visits.size() == 5);
        CHECK(page.visits[0].opened > page.visits[4].opened);
        REQUIRE_FALSE(page.wear.empty());
        const Forecast& pads = page.wear[0];
        CHECK(pads.points.size() >= 2);  // since the pads were last changed
        CHECK(pads.way_unit == "mi");
        CHECK_FALSE(pads.source.empty());
        REQUIRE(page.torques.size() == 20);
        CHECK(page.torques[0].retorque);
        CHECK(page.torques[0].first_job == page.visits[1].job);
        CHECK(page.torques[0].complete);
        CHECK_FALSE(page.torques[19].retorque);
        bool closed_seen = false;
        for (const FindingLine& line : page.findings) {
            if (closed_seen) CHECK_FALSE(line.open);
            closed_seen = closed_seen || !line.open;
        }
        CHECK(page.pairs.size() == 5);
        CHECK(good(bench.ledger->photos().original(page.pairs[0].before)).size() > 1000);
        REQUIRE(page.costs.miles);
        CHECK(*page.costs.miles == doctest::Approx(4 * 5200));
        std::int64_t sum = 0;
        for (const YearCost& year : page.costs.years) sum += year.cost.minor;
        REQUIRE(page.costs.total.size() == 1);
        CHECK(page.costs.total[0].minor == sum);
        CHECK(page.costs.per_1000_miles[0].minor == doctest::Approx(static_cast<double>(sum) / 20.8).epsilon(0.001));
        CHECK(page.packets.size() == 5);
        CHECK(bench.ledger->trailer("vin:none").error().code == Errc::not_found);
    });
}

TEST_CASE("ledger answers: what is due comes from each trailer's last word on it") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 50);
        const auto all = good(bench.ledger->due({}));
        std::set<std::pair<std::string, std::string>> seen;
        Date last{1900, 1, 1};
        for (const DueRow& row : all) {
            CHECK(seen.insert({row.trailer, row.rule}).second);
            CHECK(row.day >= last);
            CHECK_FALSE(row.source.empty());
            last = row.day;
        }
        DueAsk ask;
        ask.limit = 7;
        const auto first = good(bench.ledger->due(ask));
        REQUIRE(first.size() == 7);
        for (std::size_t i = 0; i < first.size(); ++i) CHECK(first[i].rule + first[i].job == all[i].rule + all[i].job);
        ask.limit = 0;
        ask.kinds.assign(1, DueKind::wear);
        const auto wear = good(bench.ledger->due(ask));
        REQUIRE_FALSE(wear.empty());
        for (const DueRow& row : wear) CHECK(row.due);
        ask.kinds.assign(1, DueKind::oil);
        ask.trailer = good(bench.ledger->find_trailer("QRY-00003"));
        const auto oil = good(bench.ledger->due(ask));
        REQUIRE(oil.size() == 2);  // the day after, and the change
        CHECK(oil[0].job == office_id(43, 0).text());
        ask.until = oil[0].day;
        CHECK(good(bench.ledger->due(ask)).size() == 1);
        const std::string calendar = due_ics(all, bench.clock.now(), "Cotter 0.1.0");
        CHECK(calendar.starts_with("BEGIN:VCALENDAR\r\n"));
        CHECK(due_csv(all).find("QRY-00003") != std::string::npos);
    });
}

TEST_CASE("ledger answers: accepted packs are summed by supplier") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 20);  // the second visits' quotes are not done yet
        const auto rows = good(bench.ledger->orders());
        REQUIRE_FALSE(rows.empty());
        std::int64_t packs = 0;
        std::size_t jobs = 0;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            if (i > 0) CHECK(rows[i - 1].supplier <= rows[i].supplier);
            CHECK(rows[i].cost.minor == rows[i].packs * rows[i].price);
            packs += rows[i].packs;
            jobs += rows[i].jobs.size();
        }
        std::size_t accepted = 0;
        for (int i = 10; i < 20; ++i) accepted += office_job(i, bench.shape).all<Quote>().size();
        CHECK(jobs == accepted);
        CHECK(packs == static_cast<std::int64_t>(2 * accepted));
        CHECK(orders_csv(rows).find(rows[0].part_number) != std::string::npos);
    });
}

TEST_CASE("ledger answers: what fails on which axle") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 30);
        const auto rows = good(bench.ledger->failures());
        REQUIRE_FALSE(rows.empty());
        std::size_t findings = 0, expected = 0;
        for (const AxleFailure& row : rows) {
            findings += row.findings;
            CHECK(row.trailers <= row.trailers_with_model);
            CHECK(row.worst >= Grade::repair);
        }
        for (int i = 0; i < 30; ++i) {
            const Job job = office_job(i, bench.shape);
            for (const Finding& f : job.all<Finding>()) expected += f.grade >= Grade::repair ? 1 : 0;
        }
        CHECK(findings == expected);
    });
}

TEST_CASE("ledger answers: two visits side by side") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 20);
        const auto c = good(bench.ledger->compare(office_id(3, 0).text(), office_id(13, 0).text()));
        CHECK(c.before.job == office_id(3, 0).text());
        bool pads = false;
        for (const ReadingChange& r : c.readings) pads = pads || (r.what == "pad thickness" && r.change == "−1.1 mm");
        CHECK(pads);
        CHECK(bench.ledger->compare("none", "none").error().code == Errc::not_found);
    });
}

TEST_CASE("ledger answers: a visit without a VIN joins the unit's only VIN, whatever comes first") {
    on_each_engine([](LedgerBench& bench) {
        const auto without_vin = [&](int number) {
            Job job = office_job(number, bench.shape);
            job.all<Trailer>()[0].vin.clear();
            return seal(office_parts(job, number, bench.photos));
        };
        bench.receive({bench.put(without_vin(3))});
        CHECK(good(bench.ledger->find_trailer("QRY-00003")) == "unit:qry00003");
        bench.receive({bench.put(office_packet(13, bench.shape, bench.photos))});
        CHECK(good(bench.ledger->find_trailer("QRY-00003")) == kKeyOf3);
        CHECK(good(bench.ledger->trailers(10, 0)).size() == 1);
        CHECK(good(bench.ledger->trailer(kKeyOf3)).visits.size() == 2);
        bench.receive({bench.put(without_vin(23))});
        CHECK(good(bench.ledger->trailer(kKeyOf3)).visits.size() == 3);
        Job other = office_job(33, bench.shape);  // the unit is given to another trailer
        other.all<Trailer>()[0].vin = invented_vin(999);
        bench.receive({bench.put(seal(office_parts(other, 33, bench.photos)))});
        CHECK(good(bench.ledger->trailers(10, 0)).size() == 3);
        CHECK(bench.ledger->find_trailer("QRY-00003").error().code == Errc::refused);
    });
}

TEST_CASE("ledger answers: other rules give other due dates without taking in again") {
    on_each_engine([](LedgerBench& bench) {
        fill(bench, 10);
        const auto before = good(bench.ledger->due({}));
        bench.rechecks.rules.resize(1);
        bench.open();
        const auto after = good(bench.ledger->due({}));
        CHECK(after.size() < before.size());
        CHECK_FALSE(after.empty());
        CHECK(good(bench.ledger->search({"qry", {}, 100, 0})).size() == 5);
    });
}
