// The price shelf in a book: kept across openings, all or none, apart from the jobs.
#include "core/quote/shelf.h"

#include "tests/core/book/book_bench.h"

using namespace cotter;
using namespace cotter::test;

namespace {

Offer shelf_offer(std::uint8_t id, Date seen) {
    Offer offer;
    offer.id.uuid.bytes[15] = id;
    offer.supplier = "Yardside Supply (invented)";
    offer.title = "brake pads";
    offer.covers = {{"brake pads", {Basis::corners, *make_amount("2", "1")}}};
    offer.price = 6'950;
    offer.seen = seen;
    offer.by = "A. Tester";
    return offer;
}

}  // namespace

TEST_CASE("book shelf: offers are kept, newest seen first, replaced by id and forgotten") {
    BookBench bench;
    const auto shelf = bench.book->shelf();
    CHECK(good(shelf->all()).empty());
    good(shelf->keep({shelf_offer(1, {2025, 9, 1}), shelf_offer(2, {2026, 5, 1})}));
    auto all = good(shelf->all());
    REQUIRE(all.size() == 2);
    CHECK(all[0] == shelf_offer(2, {2026, 5, 1}));
    Offer again = shelf_offer(1, {2026, 5, 2});
    again.price = 7'100;
    good(shelf->keep({again}));
    all = good(shelf->all());
    REQUIRE(all.size() == 2);
    CHECK(all[0].price == 7'100);
    good(shelf->forget(again.id));
    CHECK(good(shelf->all()).size() == 1);
    CHECK(shelf->forget(again.id).error().code == Errc::not_found);
    good(bench.book->verify());
}

TEST_CASE("book shelf: one bad offer keeps all of them out") {
    BookBench bench;
    const auto shelf = bench.book->shelf();
    Offer bad = shelf_offer(2, {2026, 5, 1});
    const auto line = [&] {
        const auto kept = shelf->keep({shelf_offer(1, {2026, 5, 1}), bad});
        return kept ? std::string("kept") : kept.error().line();
    };
    bad.price = -1;
    CHECK(line() == "a price is below zero or too large: brake pads");
    bad = shelf_offer(2, {2026, 5, 1});
    bad.seen.reset();
    CHECK(line() == "it is not said on which day the price was seen: brake pads");
    bad = shelf_offer(2, {2026, 5, 1});
    bad.note = "\xff";
    CHECK(line() == "the offer holds a value that cannot be written down: brake pads");
    CHECK(good(shelf->all()).empty());
}
