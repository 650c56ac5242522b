// Items joined, offers made comparable.
#include "core/quote/market.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

#include "core/quote/exact.h"

namespace cotter {

namespace {

Result<std::int64_t> units_needed(const Need& need) {
    const auto units = units_of(need.wanted);
    if (!units) return unexpected(context(units.error(), need.item));
    return with_spill(*units, need.spill_percent);
}

// Items whose amount nobody knows yet are not priced, and are named; when there is nothing else, nothing is chosen.
Result<std::vector<Wanted>> joined_needs(std::span<const Need> needs, std::vector<std::string>& unknown) {
    std::vector<Wanted> out;
    std::map<std::string, std::size_t> at;
    for (std::size_t n = 0; n < needs.size(); ++n) {
        if (needs[n].left_out) continue;
        COTTER_ASSIGN(const std::int64_t units, units_needed(needs[n]));
        if (units == 0) {
            unknown.push_back(needs[n].item);
            continue;
        }
        const auto [it, fresh] = at.emplace(item_key(needs[n].item), out.size());
        if (fresh) out.push_back({needs[n].item, needs[n].wanted.basis, 0, false, {}});
        Wanted& wanted = out[it->second];
        if (wanted.basis != needs[n].wanted.basis)
            return fail(Errc::refused, "the same item is needed in two ways of counting", needs[n].item,
                        "count both in the same way");
        wanted.units += units;
        wanted.matched = wanted.matched || needs[n].matched;
        wanted.needs.push_back(n);
    }
    if (out.empty() && !unknown.empty())
        return fail(Errc::refused, "it is not known how much is needed", unknown.front(), "enter the amount");
    for (Wanted& wanted : out)
        if (wanted.matched) wanted.units += wanted.units % 2;  // whole axles first
    return out;
}

// The parts of an offer that are wanted; an error when it has a wanted item in another way of counting.
Result<std::vector<CoverPart>> parts_of(const Offer& offer, const std::vector<Wanted>& wanted,
                                        const std::map<std::string, std::size_t>& at) {
    std::map<std::size_t, std::int64_t> sums;
    for (const Cover& cover : offer.covers) {
        const auto it = at.find(item_key(cover.item));
        if (it == at.end()) continue;
        const Wanted& item = wanted[it->second];
        if (item.basis != cover.extent.basis)
            return fail(Errc::refused,
                        fmt::format("it is sold by {}, but {} are needed by {}", name_of(cover.extent.basis), item.item,
                                    name_of(item.basis)),
                        offer.title, "say what a pack covers in the need's way of counting");
        auto units = units_of(cover.extent);
        if (!units) return unexpected(context(units.error(), offer.title));
        if (*units > 0) sums[it->second] += *units;
    }
    std::vector<CoverPart> out;
    for (const auto& [item, units] : sums) out.push_back({item, units});
    return out;
}

}  // namespace

Result<> comparable(const Offer& offer, const std::string& currency) {
    if (offer.covers.empty())
        return fail(Errc::refused, "the offer does not say what a pack covers, so it cannot be compared", offer.title,
                    "enter the item and how many corners, pieces or how much of it a pack is for");
    if (offer.currency != currency)
        return fail(Errc::refused, fmt::format("the offer is in {}, the quote in {}", offer.currency, currency),
                    offer.title, "enter a price in the quote's currency");
    for (const std::int64_t amount : {offer.price, offer.core, offer.freight})
        if (amount < 0 || amount > kLargestAmount)
            return fail(Errc::refused, "a price is below zero or too large", offer.title, "correct it");
    for (const Cover& cover : offer.covers) {
        const auto units = units_of(cover.extent);
        if (!units) return unexpected(context(units.error(), offer.title));
        if (*units == 0)
            return fail(Errc::refused, fmt::format("a pack covers nothing of {}", cover.item), offer.title,
                        "correct what it covers");
    }
    return {};
}

Result<Market> open_market(std::span<const Need> needs, std::span<const Offer> offers, const std::string& currency) {
    Market market;
    COTTER_ASSIGN(market.wanted, joined_needs(needs, market.unknown));
    std::map<std::string, std::size_t> at;
    for (std::size_t i = 0; i < market.wanted.size(); ++i) at.emplace(item_key(market.wanted[i].item), i);
    for (std::size_t o = 0; o < offers.size(); ++o) {
        if (auto can = comparable(offers[o], currency); !can) {
            market.not_compared.push_back({o, can.error()});
            continue;
        }
        auto parts = parts_of(offers[o], market.wanted, at);
        if (!parts)
            market.not_compared.push_back({o, parts.error()});
        else if (!parts->empty())
            market.stalls.push_back({o, std::move(*parts)});
    }
    return market;
}

std::vector<std::size_t> deliveries(std::span<const Offer> offers, std::vector<std::int64_t>& freight) {
    std::map<std::pair<std::string, std::int64_t>, std::size_t> known;
    std::vector<std::size_t> out;
    for (const Offer& offer : offers) {
        const auto [it, fresh] = known.emplace(std::pair(item_key(offer.supplier), offer.freight), freight.size());
        if (fresh) freight.push_back(offer.freight);
        out.push_back(it->second);
    }
    return out;
}

}  // namespace cotter
