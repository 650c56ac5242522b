// Buying for needs: the worked table of packs, waiting, friction parts, what is missing, what cannot be compared.
#include "core/quote/choose.h"

#include <doctest/doctest.h>

#include "tests/core/quote/shop.h"

using namespace cotter;
using namespace cotter::test;

namespace {

Choice bought(const std::vector<Need>& needs, const std::vector<Offer>& offers, std::int64_t second_call_out = 0,
              Aim aim = Aim::cheapest) {
    const auto choice = choose(needs, offers, aim, {"USD", second_call_out});
    REQUIRE_MESSAGE(choice, (choice ? "" : choice.error().line()));
    return *choice;
}

std::int64_t cost(int count, const std::vector<Offer>& offers) {
    const Choice choice = bought(pads_and_hardware(count), offers);
    CHECK(choice.missing.empty());
    return choice.goods + choice.freight;
}

// Corners of pads left over.
std::string pads_left(int count, const std::vector<Offer>& offers) {
    for (const Leftover& left : bought(pads_and_hardware(count), offers).leftovers)
        if (left.item == "brake pads") return left.extent.amount.number.text();
    return "0";
}

std::string why_not(const Offer& offer) {
    const auto can = comparable(offer, "USD");
    return can ? "it can" : can.error().line();
}

}  // namespace

TEST_CASE("choose: packs for 1, 2, 3, 4 and 6 corners from three sources, to the cent") {
    struct Row {
        int corners;
        std::int64_t a, b, c;
        const char* b_left;
        const char* c_left;
    };
    for (const Row& row : {Row{1, 4'720, 9'270, 14'900, "1", "3"}, Row{2, 9'440, 10'190, 14'900, "0", "2"},
                           Row{3, 14'160, 18'060, 14'900, "1", "1"}, Row{4, 18'880, 18'980, 14'900, "0", "0"},
                           Row{6, 28'320, 27'770, 29'800, "0", "2"}}) {
        CAPTURE(row.corners);
        CHECK(cost(row.corners, source_a()) == row.a);
        CHECK(cost(row.corners, source_b()) == row.b);
        CHECK(cost(row.corners, source_c()) == row.c);
        CHECK(pads_left(row.corners, source_a()) == "0");
        CHECK(pads_left(row.corners, source_b()) == row.b_left);
        CHECK(pads_left(row.corners, source_c()) == row.c_left);
    }
}

TEST_CASE("choose: mixed sources are used where they are cheaper") {
    // Six corners: C's kit for four and A for two (243.40) beat each alone.
    const Choice choice = bought(pads_and_hardware(6), all_sources());
    CHECK(choice.goods + choice.freight == 14'900 + 9'440);
}

TEST_CASE("choose: taxes are weighed too, as they differ by kind") {
    // 152.00 taxed against 139.00 taxed and 14.00 freight that is not: the dearer before tax is the cheaper after it.
    const std::vector<Need> needs{need_of(100, "brake pads", corners(4))};
    const std::vector<Offer> offers{source_a()[0], source_b()[0]};
    CHECK(bought(needs, offers).goods == 15'200);
    const auto taxed = choose(needs, offers, Aim::cheapest, {"USD", 0, *Number::parse("8.25")}).value();
    CHECK(taxed.goods == 13'900);
    CHECK(taxed.freight == 1'400);
}

TEST_CASE("choose: a second call-out makes the waiting offer lose") {
    Choice choice = bought(pads_and_hardware(4), all_sources());
    CHECK(choice.goods == 14'900);
    CHECK(choice.ready_days == 5);
    choice = bought(pads_and_hardware(4), source_c(), 8'500);
    CHECK(choice.goods + choice.call_out == 23'400);
    choice = bought(pads_and_hardware(4), all_sources(), 8'500);
    CHECK(choice.goods + choice.freight + choice.call_out == 18'880);
    CHECK(choice.ready_days == 0);
}

TEST_CASE("choose: friction parts go by whole axles first, one lot across an axle") {
    std::vector<Need> needs{need_of(100, "brake pads", corners(3))};
    needs[0].matched = true;
    Choice choice = bought(needs, {source_a()[0]});
    CHECK(choice.wanted[0].units == 4);
    CHECK(choice.bought[0].packs == 4);
    // One corner each of two suppliers would be cheapest for an axle, but the axle takes one lot.
    needs[0].wanted = corners(2);
    Offer last_one = offer_of(230, "D", {{"brake pads", corners(1)}}, 1'000);
    const Offer pair = offer_of(231, "E", {{"brake pads", corners(2)}}, 1'900);
    choice = bought(needs, {last_one, pair});
    REQUIRE(choice.bought.size() == 1);
    CHECK(choice.goods == 1'900);
}

TEST_CASE("choose: fluid by volume, with spill, and what stays in the bottle") {
    std::vector<Need> needs{need_of(100, "hub oil", {Basis::volume, *make_amount("1.80", "L")})};
    const std::vector<Offer> offers{
        offer_of(200, "A", {{"hub oil", {Basis::volume, *make_amount("0.946", "L")}}}, 1'150)};
    Choice choice = bought(needs, offers);
    CHECK(choice.bought[0].packs == 2);
    CHECK(extent_text(choice.leftovers.at(0).extent) == "92 mL");
    needs[0].spill_percent = *Number::parse("10");
    choice = bought(needs, offers);
    CHECK(choice.bought[0].packs == 3);
    CHECK(choice.wanted[0].units == 1'980'000);
}

TEST_CASE("choose: soonest, best warranty and the maker's own") {
    std::vector<Offer> offers = all_sources();
    offers[2].warranty_months = 24;   // B's pads
    offers[3].maker_supplied = true;  // B's hardware
    CHECK(bought(pads_and_hardware(4), offers, 0, Aim::soonest).ready_days == 0);
    const Choice long_lived = bought(pads_and_hardware(4), offers, 0, Aim::best_warranty);
    for (const Bought& bought : long_lived.bought)
        if (offers[bought.offer].title == "brake pads") CHECK(offers[bought.offer].supplier == "B");
    CHECK(long_lived.goods + long_lived.freight == 2 * 6'950 + 4 * 920 + 1'400);
    const Choice makers = bought(pads_and_hardware(4), offers, 0, Aim::maker_supplied);
    CHECK(makers.goods == 4 * 920);
    CHECK(makers.missing == std::vector<std::string>{"brake pads: no offer covers it"});
}

TEST_CASE("choose: what a cheap offer leaves out is said") {
    std::vector<Need> needs{need_of(100, "calipers", corners(1))};
    needs[0].must_include = {"guide pins", "banjo washers"};
    Offer offer = offer_of(200, "A", {{"calipers", corners(1)}}, 6'400);
    offer.includes = {"Guide pins"};
    offer.excludes = {"bracket"};
    CHECK(bought(needs, {offer}).missing ==
          std::vector<std::string>{"calipers: banjo washers not said to be included by A",
                                   "calipers: bracket not included"});
}

TEST_CASE("choose: offers that cannot be compared say why") {
    Offer offer = source_a()[0];
    CHECK(why_not(offer) == "it can");
    offer.covers.clear();
    CHECK(
        why_not(offer).starts_with("the offer does not say what a pack covers, so it cannot be compared: brake pads"));
    offer = source_a()[0];
    offer.currency = "CAD";
    CHECK(why_not(offer).starts_with("the offer is in CAD, the quote in USD: brake pads"));
    offer = source_a()[0];
    offer.price = -1;
    CHECK(why_not(offer).starts_with("a price is below zero or too large"));
    offer.price = 1'000'000'000'001;
    CHECK(why_not(offer).starts_with("a price is below zero or too large"));
    offer = source_a()[0];
    offer.covers[0].extent = corners(0);
    CHECK(why_not(offer).starts_with("a pack covers nothing of brake pads"));
    offer.covers[0].extent = {Basis::unsaid, {}};
    CHECK(why_not(offer).starts_with("it is not said what is counted: brake pads"));

    Offer by_piece = source_a()[0];
    by_piece.covers[0].extent = pieces(2);
    const Choice choice = bought({need_of(100, "brake pads", corners(1))}, {by_piece, source_a()[0]});
    REQUIRE(choice.not_compared.size() == 1);
    CHECK(choice.not_compared[0].why.line().starts_with(
        "it is sold by pieces, but brake pads are needed by corners: brake pads"));
}

TEST_CASE("choose: needs that cannot be counted are named") {
    const auto line = [](const Need& need) {
        const auto choice = choose(std::vector{need}, source_a(), Aim::cheapest, {});
        return choice ? std::string("accepted") : choice.error().line();
    };
    CHECK(line(need_of(1, "hub oil", {Basis::volume, *make_amount("0", "L")})) ==
          "it is not known how much is needed: hub oil; enter the amount");
    CHECK(line(need_of(1, "pads", {Basis::corners, *make_amount("1.5", "1")})) ==
          "corners are counted in whole numbers: pads: 1.5");
    CHECK(line(need_of(1, "pads", {Basis::corners, *make_amount("-2", "1")})) ==
          "the number is not from 0 to 10,000: pads: -2");
    CHECK_FALSE(choose(pads_and_hardware(1), source_a(), Aim::by_hand, {}));
    CHECK_FALSE(choose(std::vector{need_of(1, "pads", corners(1)), need_of(2, "Pads ", pieces(1))}, source_a(),
                       Aim::cheapest, {}));
}

TEST_CASE("choose: packs chosen by hand are reckoned in the same way") {
    const std::vector<std::int64_t> packs{0, 0, 1, 1, 0};
    const auto choice = chosen_by_hand(pads_and_hardware(2), all_sources(), packs, {}).value();
    CHECK(choice.goods + choice.freight == 6'950 + 920 + 1'400);
    CHECK(choice.missing == std::vector<std::string>{"pad hardware kit: 1 corner short"});
    CHECK_FALSE(chosen_by_hand(pads_and_hardware(2), all_sources(), std::vector<std::int64_t>{-1, 0, 0, 0, 0}, {}));
    CHECK_FALSE(chosen_by_hand(pads_and_hardware(2), all_sources(), std::vector<std::int64_t>{1}, {}));
}
