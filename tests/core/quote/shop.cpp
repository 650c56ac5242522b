// The worked examples' needs and offers.
#include "tests/core/quote/shop.h"

#include "tests/core/survey/sample_job.h"

namespace cotter::test {

Need need_of(int id, const char* item, Extent wanted) {
    Need need;
    need.id = {numbered(id)};
    need.item = item;
    need.wanted = std::move(wanted);
    need.at = moment(10);
    need.by = "A. Tester";
    return need;
}

Offer offer_of(int id, const char* supplier, std::vector<Cover> covers, std::int64_t price) {
    Offer offer;
    offer.id = {numbered(id)};
    offer.supplier = supplier;
    offer.title = covers.empty() ? "something" : covers[0].item;
    offer.covers = std::move(covers);
    offer.price = price;
    offer.seen = Date{2026, 5, 14};
    offer.at = moment(11);
    offer.by = "A. Tester";
    return offer;
}

std::vector<Need> pads_and_hardware(int count) {
    return {need_of(100, "brake pads", corners(count)), need_of(101, "pad hardware kit", corners(count))};
}

std::vector<Offer> source_a() {
    return {offer_of(200, "A", {{"brake pads", corners(1)}}, 3'800),
            offer_of(201, "A", {{"pad hardware kit", corners(1)}}, 920)};
}

std::vector<Offer> source_b() {
    std::vector<Offer> out{offer_of(210, "B", {{"brake pads", corners(2)}}, 6'950),
                           offer_of(211, "B", {{"pad hardware kit", corners(1)}}, 920)};
    for (Offer& offer : out) offer.freight = 1'400;
    return out;
}

std::vector<Offer> source_c() {
    std::vector<Offer> out{offer_of(220, "C", {{"brake pads", corners(4)}, {"pad hardware kit", corners(4)}}, 14'900)};
    out[0].lead_days = 5;
    return out;
}

std::vector<Offer> all_sources() {
    std::vector<Offer> out = source_a();
    for (const auto& more : {source_b(), source_c()}) out.insert(out.end(), more.begin(), more.end());
    return out;
}

QuoteStamp stamp() {
    return {moment(20), "A. Tester"};
}

}  // namespace cotter::test
