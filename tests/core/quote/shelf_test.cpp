// The shelf's ages and CSV; needs from findings.
#include "core/quote/shelf.h"

#include <doctest/doctest.h>

#include "core/quote/needs.h"
#include "tests/core/quote/shop.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

class CountingRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override {
        for (std::uint8_t& byte : out) byte = next_++;
    }

private:
    std::uint8_t next_ = 1;
};

CsvOffers read(const std::string& csv) {
    CountingRandom random;
    const auto offers = offers_from_csv(csv, moment(11), "A. Tester", random);
    REQUIRE_MESSAGE(offers, (offers ? "" : offers.error().line()));
    return *offers;
}

std::string line(const std::string& csv) {
    CountingRandom random;
    const auto offers = offers_from_csv(csv, moment(0), "A. Tester", random);
    return offers ? "accepted" : offers.error().line();
}

const std::string kHead = "supplier,title,covers,price,currency\r\n";

std::string problem(const std::string& row) {
    const auto offers = read(kHead + row + "\r\n");
    return offers.problems.empty() ? "none" : offers.problems[0].what;
}

Job with_finding(const char* component, Place place, Grade grade = Grade::repair) {
    Job job = sample_job();
    Finding& finding = job.all<Finding>()[0];
    finding.component = component;
    finding.place = place;
    finding.grade = grade;
    return job;
}

std::vector<Need> derived(const Job& job, NeedScope scope = {}) {
    CountingRandom random;
    return derive_needs(job, scope, stamp(), random);
}

}  // namespace

TEST_CASE("shelf: how old a price is, in words") {
    const Date today{2026, 5, 14};
    const auto age = [&](Date seen) { return age_text(seen, today); };
    CHECK(age({2026, 5, 14}) == "seen today");
    CHECK(age({2026, 5, 13}) == "seen yesterday");
    CHECK(age({2026, 5, 9}) == "seen 5 days ago");
    CHECK(age({2026, 4, 20}) == "seen 3 weeks ago");
    CHECK(age({2025, 9, 14}) == "seen 8 months ago");
    CHECK(age({2025, 9, 15}) == "seen 7 months ago");
    CHECK(age({2023, 5, 14}) == "seen 3 years ago");
    CHECK(age({2026, 5, 15}) == "seen on a day to come");
    CHECK(age_text({}, today) == "not known when seen");
    CHECK_FALSE(is_old(Date{2026, 2, 14}, today));
    CHECK(is_old(Date{2026, 2, 13}, today));
    CHECK(is_old({}, today));
}

TEST_CASE("shelf: CSV out and in again loses nothing") {
    std::vector<Offer> offers = all_sources();
    offers[0].title = "=pads, \"good\" ones\r\nand cheap";
    offers[0].note = "'quoted";
    offers[1].excludes = {"clips", "pins"};
    offers[2].warranty_months = 24;
    offers[2].warranty_labour = offers[3].maker_supplied = offers[3].untaxed = true;
    offers[3].covers = {{"brake fluid", {Basis::volume, *make_amount("0.946", "L")}}};
    offers[3].core = 2'500;
    offers[4].covers.clear();
    offers[4].seen.reset();
    const CsvOffers back = read(offers_to_csv(offers));
    CHECK(back.problems.empty());
    CHECK(back.offers == offers);
}

TEST_CASE("shelf: each bad line is named, the good ones are taken") {
    const CsvOffers offers = read(kHead + "A,pads,2 corners of pads,69.50,USD\n\nA,pads,2 corners of pads,abc,USD\r\n" +
                                  "\"A\nB\",pads,,1,USD\nA,pads,,1\n");
    REQUIRE(offers.offers.size() == 2);
    CHECK(offers.offers[0].price == 6'950);
    CHECK(offers.offers[1].supplier == "A\nB");
    REQUIRE(offers.problems.size() == 2);
    CHECK(offers.problems[0].line == 4);
    CHECK(offers.problems[0].what == "price: not an amount of money: 'abc'");
    CHECK(offers.problems[1].line == 7);
    CHECK(offers.problems[1].what == "4 fields where the header has 5");
    CHECK(problem(",pads,,1,USD") == "supplier: it is empty");
    CHECK(problem("A,pads,,-1,USD") == "price: '-1' is below zero or too large");
    CHECK(problem("A,pads,,99999999999999,USD").starts_with("price: "));
    CHECK(problem("A,pads,,1,usd") == "currency: 'usd' is no currency code such as USD");
    CHECK(problem("A,pads,a pair,1,USD") == "covers: 'a pair' is not like '2 corners of brake pads'");
    CHECK(problem("A,pads,2 pairs of pads,1,USD") ==
          "covers: 'pairs' is neither corners, pieces, a volume nor a length");
    CHECK(problem("A,pads,0 corners of pads,1,USD") == "covers: a pack covers something");
}

TEST_CASE("shelf: a file that is no such table is refused in one line") {
    CHECK(line("") == "the file is empty");
    CHECK(line("supplier,title\r\n") == "the column 'covers' is missing: line 1; the first line names the columns");
    CHECK(line("supplier,colour\r\n").starts_with("there is no column 'colour': line 1"));
    CHECK(line("supplier,supplier\r\n").starts_with("the column 'supplier' is there twice: line 1"));
    CHECK(line(kHead + "A,\"pads,1\n").starts_with("a quotation mark is never closed: line 2"));
    CHECK(line(kHead + "A,pa\"ds,,1,USD").starts_with("a quotation mark stands inside a field"));
    CHECK(line(kHead + "A,\"pads\" x,,1,USD").starts_with("text stands behind a closing quotation mark: line 2"));
    CHECK(line("\xff") == "the file is not UTF-8 text; save it as UTF-8 CSV");
}

TEST_CASE("needs: friction parts by axle, hardware by wheel, fluid by volume, tyres in pairs") {
    auto needs = derived(with_finding("Pads", Place::corner(1, Side::left)));
    REQUIRE(needs.size() == 2);  // and the kit that always goes with them
    CHECK(needs[0].item == "brake pads");
    CHECK(needs[1].item == "pad hardware kit");
    CHECK(needs[1].wanted == corners(2));
    CHECK(needs[0].matched);
    CHECK(needs[0].wanted == corners(2));
    CHECK(needs[0].places == std::vector{Place::corner(1, Side::left), Place::corner(1, Side::right)});
    CHECK(derived(with_finding("banjo", Place::corner(2, Side::right)))[0].wanted == corners(1));
    const Need fluid = derived(with_finding("brake fluid", Place::at(Station::actuator)))[0];
    CHECK(fluid.rule == ReplacedBy::volume);
    CHECK(fluid.wanted.amount.number.value() == 0);
    Job duals = with_finding("tyre", Place::corner(2, Side::right, Wheel::outer));
    CHECK(derived(duals)[0].wanted == pieces(2));
    duals.all<Trailer>()[0].axles[1].wheels = Wheels::dual;
    CHECK(derived(duals)[0].wanted == pieces(2));  // the matched pair of the corner
    CHECK(derived(with_finding("ladder rack", Place::at(Station::frame)))[0].note ==
          "no rule says what is replaced with it");
    CHECK(derived(with_finding("guide pin", Place::corner(1, Side::left)))[0].item == "pad hardware kit");
}

TEST_CASE("needs: grades and outcomes decide what is looked at, hands what is kept") {
    CHECK(derived(with_finding("pads", Place::corner(1, Side::left), Grade::watch)).empty());
    CHECK(derived(with_finding("pads", Place::corner(1, Side::left), Grade::watch), {true, false}).size() == 2);
    Job job = with_finding("pads", Place::corner(1, Side::left));
    job.all<Finding>()[0].outcome = Outcome::repaired;
    CHECK(derived(job).empty());
    CHECK(derived(job, {false, true}).size() == 2);
    job = with_finding("pads", Place::corner(1, Side::left));
    job.all<Need>() = derived(job);
    CHECK(derived(job).empty());
    Finding more = job.all<Finding>()[0];
    more.id = {numbered(44)};
    more.place = Place::corner(2, Side::left);
    job.all<Finding>().push_back(more);
    const auto changed = derived(job);
    REQUIRE(changed.size() == 2);
    CHECK(changed[0].id == job.all<Need>()[0].id);
    CHECK(changed[0].wanted == corners(4));
    for (Need& need : job.all<Need>()) need.by_hand = true;
    CHECK(derived(job).empty());
    CHECK(corners_touched(changed) == 4);
    CHECK(axles_touched(changed) == 2);
}
