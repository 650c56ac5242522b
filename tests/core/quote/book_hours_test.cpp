// Labor by operation: the shop's own hours, never a default, overlaps once.
#include "core/quote/book_hours.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/core/quote/shop.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

Number entered(const char* text) {
    return Number::parse(text).value();
}

Need need_at(int id, const char* item, std::vector<Place> places) {
    Need need = need_of(id, item, corners(static_cast<int>(places.size())));
    need.places = std::move(places);
    return need;
}

const std::vector<Place> kAxle{Place::corner(1, Side::left), Place::corner(1, Side::right)};

ShopHours all_hours() {
    ShopHours hours;
    for (const Operation& op : kOperations)
        hours[std::string(op.id)] = {entered("0.5"), entered("0.8"), "shop's own list"};
    hours["pads"] = {entered("0.4"), entered("0.6"), "shop's own list"};
    hours["rotor"] = {entered("0.7"), entered("1.1"), "shop's own list"};
    return hours;
}

const BookedHours* line(const BookLabour& book, const char* title) {
    const auto it = std::find_if(book.lines.begin(), book.lines.end(),
                                 [&](const BookedHours& l) { return l.text.starts_with(title); });
    return it == book.lines.end() ? nullptr : &*it;
}

}  // namespace

TEST_CASE("A39: bearings at two corners and pads at two have hours of their own") {
    const std::vector<Need> bearings{need_at(1, "bearing set", kAxle), need_at(2, "hub seal", kAxle)};
    const std::vector<Need> pads{need_at(1, "brake pads", kAxle), need_at(2, "pad hardware kit", kAxle)};
    const BookLabour one = book_labour(bearings, all_hours()).value();
    const BookLabour two = book_labour(pads, all_hours()).value();
    REQUIRE(line(one, "Bearings and seal") != nullptr);
    CHECK(line(one, "Bearings and seal")->low == 1'000);
    CHECK(line(one, "Pads") == nullptr);
    REQUIRE(line(two, "Pads") != nullptr);
    CHECK(line(two, "Pads")->high == 1'200);
    CHECK(line(two, "Wheel off and on, 2 times")->low == 1'000);
    CHECK(line(two, "Set-up, chock and lift")->low == 500);
    CHECK(line(two, "Set-up, each axle")->low == 500);
    CHECK(two.not_entered.empty());
}

TEST_CASE("A39: hours that the shop did not enter read so, and are never zero") {
    const std::vector<Need> bearings{need_at(1, "bearing set", kAxle)};
    const BookLabour none = book_labour(bearings, {}).value();
    CHECK(none.lines.empty());
    CHECK(none.not_entered == std::vector<std::string>{"Set-up, chock and lift", "Set-up, each axle",
                                                       "Wheel off and on", "Bearings and seal"});
    ShopHours hours = all_hours();
    hours.erase("bearings");
    CHECK(book_labour(bearings, hours)->not_entered == std::vector<std::string>{"Bearings and seal"});
}

TEST_CASE("hours: work that two operations share is charged once, by the longer one") {
    const std::vector<Need> needs{need_at(1, "brake pads", kAxle),
                                  need_at(2, "rotors", {Place::corner(1, Side::left)})};
    const BookLabour book = book_labour(needs, all_hours()).value();
    CHECK(line(book, "Rotor")->low == 700);
    CHECK(line(book, "Pads")->low == 400);  // the other side
    CHECK(line(book, "Wheel off and on, 2 times") != nullptr);
    const std::vector<Need> twice{need_at(1, "brake shoes", kAxle), need_at(2, "brake magnets", kAxle)};
    const BookLabour same = book_labour(twice, all_hours()).value();
    CHECK((line(same, "Shoes") == nullptr) != (line(same, "Magnet") == nullptr));
}

TEST_CASE("hours: pieces by their number, which is asked when nobody knows it") {
    std::vector<Need> needs{need_of(1, "sealed splices", pieces(3))};
    CHECK(line(book_labour(needs, all_hours()).value(), "Sealed splice, 3 times")->low == 1'500);
    needs[0].wanted = pieces(0);
    CHECK(book_labour(needs, all_hours())->not_counted == std::vector<std::string>{"Sealed splice"});
    needs[0].left_out = true;
    CHECK(operations_for(needs).empty());
}

TEST_CASE("hours: what is entered wrongly is refused in words") {
    const std::vector<Need> needs{need_at(1, "brake pads", kAxle)};
    ShopHours hours = all_hours();
    hours["pads"].low = entered("2");
    CHECK(book_labour(needs, hours).error().line().starts_with("the low hours are above the high ones: Pads"));
    hours["pads"].low = entered("-1");
    CHECK(book_labour(needs, hours).error().line().starts_with("hours cannot be below zero: Pads"));
}

TEST_CASE("hours: both sides of an overlap name one another") {
    for (const Operation& op : kOperations)
        for (const Operation& other : kOperations) {
            const auto names = [](const Operation& a, const Operation& b) {
                return ("|" + std::string(a.not_with) + "|").find("|" + std::string(b.id) + "|") != std::string::npos;
            };
            CHECK_MESSAGE(names(op, other) == names(other, op), std::string(op.id), " ", std::string(other.id));
        }
}

TEST_CASE("A39 draft: labor without hours is said to be missing, not priced at nothing") {
    const std::vector<Need> needs{need_at(1, "brake pads", kAxle)};
    const std::vector<Offer> offers{offer_of(200, "A", {{"brake pads", corners(2)}}, 6'950)};
    QuoteTerms terms;
    const auto drafted = [&] {
        auto quote = draft_for(needs, offers, Aim::cheapest, terms, {numbered(300)}, stamp());
        REQUIRE_MESSAGE(quote, (quote ? "" : quote.error().line()));
        for (const QuoteLine& l : quote->lines) CHECK(l.high > 0);
        return std::move(*quote);
    };
    using Words = std::vector<std::string>;
    CHECK(drafted().missing ==
          Words{"hours not entered: Set-up, chock and lift, Set-up, each axle, Wheel off and on, Pads"});
    terms.hours = all_hours();
    CHECK(drafted().missing == Words{"hourly rate not entered"});
    terms.hour_rate = 10'000;
    const Quote booked = drafted();
    CHECK(booked.missing.empty());
    // 69.50 + (0.5 set-up + 0.5 axle + 2 x 0.5 wheels + 2 x 0.4 pads) h x 100.00
    CHECK(booked.total_low == 6'950 + 28'000);
    CHECK(booked.lines.back().basis == "0.8–1.2 h × 100.00, book time (shop's own list)");
    Labour work;
    work.text = "Work";
    work.rate = 11'000;
    terms.labour = {work};
    CHECK(drafted().missing == Words{"hours not entered: Work"});
    terms.labour[0].hours_low = terms.labour[0].hours_high = entered("1");
    CHECK(drafted().missing.empty());
}
