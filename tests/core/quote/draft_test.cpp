// A quote's arithmetic: the worked example to the cent, rounding, caps, discounts, allowances, promises.
#include "core/quote/draft.h"

#include <doctest/doctest.h>

#include "core/quote/exact.h"
#include "core/quote/totals.h"
#include "core/survey/quote_rules.h"
#include "tests/core/quote/shop.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

Number number(const char* text) {
    return Number::parse(text).value();
}

// Parts 188.80 + 2 × 64.00 + 28.50; labour 3.2–4.6 h × 110; supplies 6 % of labour, at most 35; disposal 6.50; tax
// 8.25 % on parts and supplies; two cores of 25.
struct Example {
    std::vector<Need> needs = pads_and_hardware(4);
    std::vector<Offer> offers = source_a();
    QuoteTerms terms;

    Example() {
        needs.push_back(need_of(102, "calipers", corners(2)));
        needs.push_back(need_of(103, "brake fluid", {Basis::volume, *make_amount("946", "mL")}));
        offers.push_back(offer_of(202, "A", {{"calipers", corners(1)}}, 6'400));
        offers.back().core = 2'500;
        offers.push_back(offer_of(203, "A", {{"brake fluid", {Basis::volume, *make_amount("946", "mL")}}}, 2'850));
        terms.tax_percent = number("8.25");
        terms.tax_name = "sales tax";
        terms.labour = {{"Brakes, two axles",
                         LabourBy::book_time,
                         number("3.2"),
                         number("4.6"),
                         {},
                         {},
                         {},
                         11'000,
                         0,
                         0,
                         "shop's own list",
                         false}};
        terms.supplies = Supplies{"Shop supplies: cleaner, rags", number("6"), SuppliesOf::labour, 0, 3'500, true};
        terms.charges = {{LineKind::disposal, "Old brake fluid", 650, 650, "", false}};
        terms.high_because = "a guide pin seizes";
    }
    Result<Quote> draft() { return draft_for(needs, offers, Aim::cheapest, terms, {numbered(300)}, stamp()); }
    Quote good() {
        const auto quote = draft();
        REQUIRE_MESSAGE(quote, (quote ? "" : quote.error().line()));
        return *quote;
    }
    std::string line() {
        const auto quote = draft();
        return quote ? "accepted" : quote.error().line();
    }
};

const QuoteLine& line_of(const Quote& quote, LineKind kind) {
    for (const QuoteLine& line : quote.lines)
        if (line.kind == kind) return line;
    FAIL("no such line");
    return quote.lines[0];
}

}  // namespace

TEST_CASE("draft: the worked example of low and high, to the cent") {
    const Quote quote = Example().good();
    CHECK(line_of(quote, LineKind::labour).low == 35'200);
    CHECK(line_of(quote, LineKind::labour).high == 50'600);
    CHECK(line_of(quote, LineKind::labour).basis == "3.2–4.6 h × 110.00, book time (shop's own list)");
    CHECK(line_of(quote, LineKind::supplies).low == 2'112);
    CHECK(line_of(quote, LineKind::supplies).high == 3'036);
    REQUIRE(quote.taxes.size() == 1);
    CHECK(quote.taxes[0].on_low == 34'530 + 2'112);
    CHECK(quote.taxes[0].low == 3'023);
    CHECK(quote.taxes[0].high == 3'099);
    CHECK(quote.total_low == 75'515);
    CHECK(quote.total_high == 91'915);
    CHECK(quote.cores == 5'000);
    CHECK(quote.total_low + quote.cores == 80'515);
    CHECK(quote.total_high + quote.cores == 96'915);
}

TEST_CASE("draft: what is drafted keeps the rules of the record") {
    Example example;
    Job job = sample_job();
    std::vector<Change> changes;
    for (const Need& need : example.needs) changes.push_back(Put{need, {}});
    for (const Offer& offer : example.offers) changes.push_back(Put{offer, {}});
    changes.push_back(Put{example.good(), {}});
    const auto after = apply(job, edit_of(changes, 30));
    CHECK_MESSAGE(after, (after ? "" : after.error().line()));
}

TEST_CASE("draft: supplies keep their cap and floor") {
    Example example;
    example.terms.supplies->cap = 2'500;
    Quote quote = example.good();
    CHECK(line_of(quote, LineKind::supplies).low == 2'112);
    CHECK(line_of(quote, LineKind::supplies).high == 2'500);
    CHECK(line_of(quote, LineKind::supplies).basis == "6 % of labour, at most 25.00");
    example.terms.supplies->cap.reset();
    example.terms.supplies->floor = 2'800;
    quote = example.good();
    CHECK(line_of(quote, LineKind::supplies).low == 2'800);
    CHECK(line_of(quote, LineKind::supplies).high == 3'036);
    example.terms.supplies->cap = 100;
    CHECK(example.line().starts_with("the cap is below the floor"));
}

TEST_CASE("draft: set-up hours go by trailer, axle and corner") {
    Example example;
    for (int axle = 1; axle <= 2; ++axle) {
        example.needs[0].places.push_back(Place::corner(axle, Side::left));
        if (axle == 1) example.needs[0].places.push_back(Place::corner(axle, Side::right));
    }
    Labour& labour = example.terms.labour[0];
    labour.per_trailer = number("0.5");
    labour.per_axle = number("0.25");
    labour.per_corner = number("0.1");
    // 3.2 + 0.5 + 2 × 0.25 + 3 × 0.1 = 4.5 h
    CHECK(line_of(example.good(), LineKind::labour).low == 49'500);
    CHECK(per_corner(example.good())->low == (example.good().total_low * 2 + 3) / 6);
}

TEST_CASE("draft: a discount before tax lowers the tax, one after it does not") {
    Example example;
    const Quote plain = example.good();
    example.terms.discount = Discount{"Fleet", number("10"), 0, true};
    const Quote before = example.good();
    CHECK(before.taxes[0].low == 2'721);  // 8.25 % of 366.42 − 36.64
    CHECK(before.total_low == 75'515 - 3'023 - (3'664 + 3'585) + 2'721 - 0);
    example.terms.discount->before_tax = false;
    const Quote after = example.good();
    CHECK(after.taxes[0].low == plain.taxes[0].low);
    CHECK(after.total_low == 75'515 - 7'552);  // 10 % of 755.15, half-up
    example.terms.discount = Discount{"Voucher", {}, 5'000, true};
    CHECK(line_of(example.good(), LineKind::discount).low < 0);
    std::int64_t off = 0;
    for (const QuoteLine& line : example.good().lines) off += line.kind == LineKind::discount ? line.low : 0;
    CHECK(off == -5'000);
    example.terms.discount->amount = 9'999'999;
    CHECK(example.line().starts_with("the discount is more than what it is taken from: Voucher"));
}

TEST_CASE("draft: rates are taxed apart, each rounded once") {
    std::vector<QuoteLine> lines(3);
    for (QuoteLine& line : lines) {
        line.low = line.high = 10;  // each alone would be taxed 1 cent, together they are 2.475
        line.tax_percent = number("8.25");
    }
    CHECK(totals_of(lines, "")->taxes[0].low == 2);
    lines[0].tax_percent = number("5");
    const auto totals = totals_of(lines, "").value();
    REQUIRE(totals.taxes.size() == 2);
    CHECK(totals.taxes[0].low == 1);  // 0.5, half-up
    CHECK(totals.taxes[1].low == 2);  // 1.65
    CHECK(totals.total_low == 33);
}

TEST_CASE("draft: a seized part's allowance has its own line, nothing at best") {
    Example example;
    example.terms.seized = SeizedAllowance{"If a guide pin is seized", 9'000, false};
    example.terms.approval_limit = 9'000;
    const Quote quote = example.good();
    CHECK(quote.total_low == 75'515);
    CHECK(quote.total_high == 91'915 + 9'000);
    CHECK(quote.approval_limit == 9'000);
}

TEST_CASE("draft: a 'not to exceed' is a promise with a last day") {
    Example example;
    example.terms.not_to_exceed = 95'000;
    CHECK(example.line().starts_with("a 'not to exceed' needs a last day"));
    example.terms.expires = Date{2026, 6, 14};
    CHECK(example.good().not_to_exceed == 95'000);
    example.terms.not_to_exceed = 90'000;
    CHECK(example.line().starts_with("the 'not to exceed' is below the high total: 900.00 and 919.15"));
}

TEST_CASE("draft: amounts out of range are refused in words") {
    Example example;
    example.terms.charges[0].low = -1;
    CHECK(example.line() == "an amount is below zero or too large: Old brake fluid; correct it");
    example.terms.charges[0] = {LineKind::disposal, "Old brake fluid", 2, 1, "", false};
    CHECK(example.line().starts_with("the low amount is above the high one"));
    example = Example();
    example.terms.labour[0].hours_low = number("5");
    CHECK(example.line().starts_with("the low hours are above the high ones"));
    example.terms.labour[0].hours_high = number("999999999");
    CHECK(example.line().starts_with("the amount is too large"));
    example = Example();
    example.offers[0].price = 999'999'999'999;
    CHECK(example.line().starts_with("the amount is too large"));
    example = Example();
    example.terms.tax_percent = number("-1");
    CHECK(example.line().starts_with("the tax is not from 0 to 100 %"));
}

TEST_CASE("exact: factors as written, half-up, no binary rounding") {
    CHECK(times(11'000, number("3.2")) == 35'200);
    CHECK(percent_of(36'642, number("8.25")) == 3'023);
    CHECK(percent_of(1'050, number("5")) == 53);  // 52.5
    CHECK(percent_of(-1'050, number("5")) == -53);
    CHECK(percent_of(1'005, number("10")) == 101);  // 100.5, which a double makes 100.49999…
    CHECK(times(1'600, number("1 3/32")) == 1'750);
    CHECK(times(kLargestAmount, number("2")).error().what == "the amount is too large");
    CHECK(times(1, number("1.0000000001")).error().what == "the number is too long to count with");
    CHECK(plus(kLargestAmount, 1).error().what == "the sum is too large");
}
