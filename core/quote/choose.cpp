// Offers narrowed to the aim, the search, and what its answer means.
#include "core/quote/choose.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

#include "core/quote/exact.h"
#include "core/quote/market.h"

namespace cotter {

namespace {

// Days until everything that is offered at all can be there.
int first_day(const Market& market, std::span<const Offer> offers) {
    std::vector<int> day(market.wanted.size(), -1);
    for (const Stall& stall : market.stalls)
        for (const CoverPart& part : stall.parts) {
            const int lead = offers[stall.offer].lead_days;
            day[part.demand] = day[part.demand] < 0 ? lead : std::min(day[part.demand], lead);
        }
    return day.empty() ? 0 : std::max(0, *std::max_element(day.begin(), day.end()));
}

std::pair<int, bool> warranty_of(const Offer& offer) {
    return {offer.warranty_months, offer.warranty_labour};
}

void keep_best_warranty(Market& market, std::span<const Offer> offers) {
    std::vector<std::pair<int, bool>> best(market.wanted.size(), {-1, false});
    for (const Stall& stall : market.stalls)
        for (const CoverPart& part : stall.parts)
            best[part.demand] = std::max(best[part.demand], warranty_of(offers[stall.offer]));
    for (Stall& stall : market.stalls)
        std::erase_if(stall.parts,
                      [&](const CoverPart& part) { return warranty_of(offers[stall.offer]) < best[part.demand]; });
}

Result<> narrow(Market& market, std::span<const Offer> offers, Aim aim) {
    switch (aim) {
        case Aim::by_hand:
            return fail(Errc::refused, "a choice by hand is not made by the program");
        case Aim::cheapest:
            break;
        case Aim::soonest: {
            const int day = first_day(market, offers);
            std::erase_if(market.stalls, [&](const Stall& s) { return offers[s.offer].lead_days > day; });
            break;
        }
        case Aim::best_warranty:
            keep_best_warranty(market, offers);
            break;
        case Aim::maker_supplied:
            std::erase_if(market.stalls, [&](const Stall& s) { return !offers[s.offer].maker_supplied; });
            break;
    }
    std::erase_if(market.stalls, [](const Stall& s) { return s.parts.empty(); });
    return {};
}

std::vector<bool> offered_items(const Market& market) {
    std::vector<bool> out(market.wanted.size());
    for (const Stall& stall : market.stalls)
        for (const CoverPart& part : stall.parts) out[part.demand] = true;
    return out;
}

// A cost with its tax, in hundredths of a minor unit: what is weighed.
Result<std::int64_t> weight(std::int64_t minor, bool taxed, const BuyTerms& terms) {
    COTTER_ASSIGN(const std::int64_t plain, times(minor, Number::parse("100").value()));
    if (!taxed) return plain;
    COTTER_ASSIGN(const std::int64_t tax, times(minor, terms.tax_percent));
    return plus(plain, tax);
}

Result<CoverTask> task_of(const Market& market, std::span<const Offer> offers, const BuyTerms& terms) {
    CoverTask task;
    const auto offered = offered_items(market);
    for (std::size_t i = 0; i < market.wanted.size(); ++i)
        task.demands.push_back({offered[i] ? market.wanted[i].units : 0, market.wanted[i].matched ? 2 : 1});
    const auto delivery = deliveries(offers, task.freight);
    for (std::int64_t& freight : task.freight) {
        COTTER_ASSIGN(freight, weight(std::clamp<std::int64_t>(freight, 0, kLargestAmount), terms.tax_freight, terms));
    }
    for (const Stall& stall : market.stalls) {
        const Offer& offer = offers[stall.offer];
        auto price = weight(offer.price, terms.tax_parts && !offer.untaxed, terms);
        if (!price) return unexpected(context(price.error(), offer.title));
        task.offers.push_back({delivery[stall.offer], *price, offer.lead_days > 0, stall.parts});
    }
    COTTER_ASSIGN(task.wait_cost, weight(terms.second_call_out, terms.tax_call_out, terms));
    return task;
}

// Everything that follows from how many packs of each stall are bought.
class Reckoning {
public:
    Reckoning(Market market, std::span<const Need> needs, std::span<const Offer> offers, const BuyTerms& terms)
        : market_(std::move(market)), needs_(needs), offers_(offers), terms_(terms) {}

    Result<Choice> of(const std::vector<std::int64_t>& packs) {
        for (std::size_t s = 0; s < packs.size(); ++s)
            if (packs[s] > 0) COTTER_TRY(buy(market_.stalls[s], packs[s]));
        add_freight();
        if (choice_.ready_days > 0) choice_.call_out = terms_.second_call_out;
        compare_with_needs();
        find_left_out_parts();
        choice_.wanted = std::move(market_.wanted);
        choice_.not_compared = std::move(market_.not_compared);
        return std::move(choice_);
    }

private:
    Result<> buy(const Stall& stall, std::int64_t packs) {
        const Offer& offer = offers_[stall.offer];
        const Number count = Number::parse(std::to_string(packs)).value();
        COTTER_ASSIGN(const std::int64_t goods, times(offer.price, count));
        COTTER_ASSIGN(choice_.goods, plus(choice_.goods, goods));
        COTTER_ASSIGN(const std::int64_t core, times(offer.core, count));
        COTTER_ASSIGN(choice_.cores, plus(choice_.cores, core));
        Bought bought{stall.offer, packs, {}};
        for (const CoverPart& part : stall.parts) {
            const auto& needs = market_.wanted[part.demand].needs;
            bought.needs.insert(bought.needs.end(), needs.begin(), needs.end());
            got_.resize(market_.wanted.size());
            // Of a matched item only whole axles of one offer count.
            const std::int64_t lot = market_.wanted[part.demand].matched ? 2 : 1;
            got_[part.demand].held += packs * part.amount;
            got_[part.demand].fitting += packs * part.amount / lot * lot;
        }
        const auto [months, labour] = warranty_of(offer);
        const bool first = choice_.bought.empty();
        choice_.warranty_months = first ? months : std::min(choice_.warranty_months, months);
        choice_.warranty_labour = (first || choice_.warranty_labour) && labour;
        choice_.ready_days = std::max(choice_.ready_days, offer.lead_days);
        choice_.bought.push_back(std::move(bought));
        return {};
    }

    void add_freight() {
        std::vector<std::int64_t> freight;
        const auto delivery = deliveries(offers_, freight);
        std::set<std::size_t> used;
        for (const Bought& bought : choice_.bought)
            if (used.insert(delivery[bought.offer]).second) choice_.freight += freight[delivery[bought.offer]];
    }

    void compare_with_needs() {
        for (const std::string& item : market_.unknown)
            choice_.missing.push_back(fmt::format("{}: how much is not known, so it is not in the price", item));
        got_.resize(market_.wanted.size());
        for (std::size_t i = 0; i < market_.wanted.size(); ++i) {
            const Wanted& wanted = market_.wanted[i];
            const std::int64_t lacking = wanted.units - got_[i].fitting;
            if (lacking > 0)
                choice_.missing.push_back(
                    got_[i].held == 0
                        ? fmt::format("{}: no offer covers it", wanted.item)
                        : fmt::format("{}: {} short", wanted.item, extent_text(extent_of(wanted.basis, lacking))));
            if (got_[i].held > wanted.units)
                choice_.leftovers.push_back(
                    {wanted.item, extent_of(wanted.basis, got_[i].held - wanted.units), LeftoverTo::nobody});
        }
    }

    // What a need says must come along and no bought offer for it, nor another need, brings.
    void find_left_out_parts() {
        for (std::size_t n = 0; n < needs_.size(); ++n)
            for (const std::string& part : needs_[n].must_include)
                for (const Bought& bought : choice_.bought) {
                    if (std::find(bought.needs.begin(), bought.needs.end(), n) == bought.needs.end()) continue;
                    if (brings(offers_[bought.offer], part) || needed_by_itself(part)) continue;
                    choice_.missing.push_back(fmt::format("{}: {} not said to be included by {}", needs_[n].item, part,
                                                          offers_[bought.offer].supplier));
                }
        for (const Bought& bought : choice_.bought)
            for (const std::string& part : offers_[bought.offer].excludes)
                if (!needed_by_itself(part))
                    choice_.missing.push_back(fmt::format("{}: {} not included", offers_[bought.offer].title, part));
    }

    static bool brings(const Offer& offer, const std::string& part) {
        const auto same = [&](const std::string& other) { return item_key(other) == item_key(part); };
        return std::any_of(offer.includes.begin(), offer.includes.end(), same) ||
               std::any_of(offer.excludes.begin(), offer.excludes.end(), same);  // said below instead
    }
    [[nodiscard]] bool needed_by_itself(const std::string& part) const {
        return std::any_of(needs_.begin(), needs_.end(), [&](const Need& need) {
            return item_key(need.item).find(item_key(part)) != std::string::npos;
        });
    }

    struct Got {
        std::int64_t held = 0;
        std::int64_t fitting = 0;
    };
    Market market_;
    std::span<const Need> needs_;
    std::span<const Offer> offers_;
    const BuyTerms& terms_;
    std::vector<Got> got_;
    Choice choice_;
};

}  // namespace

Result<Choice> choose(std::span<const Need> needs, std::span<const Offer> offers, Aim aim, const BuyTerms& terms) {
    COTTER_ASSIGN(Market market, open_market(needs, offers, terms.currency));
    COTTER_TRY(narrow(market, offers, aim));
    COTTER_ASSIGN(const CoverTask task, task_of(market, offers, terms));
    COTTER_ASSIGN(const CoverAnswer answer, cheapest_cover(task));
    COTTER_ASSIGN(Choice choice, Reckoning(std::move(market), needs, offers, terms).of(answer.packs));
    choice.proved = answer.proved;
    return choice;
}

Result<Choice> chosen_by_hand(std::span<const Need> needs, std::span<const Offer> offers,
                              std::span<const std::int64_t> packs, const BuyTerms& terms) {
    COTTER_ASSIGN(Market market, open_market(needs, offers, terms.currency));
    if (packs.size() != offers.size()) return fail(Errc::refused, "there is not a number of packs for each offer");
    std::vector<std::int64_t> of_stalls(market.stalls.size());
    for (std::size_t o = 0; o < packs.size(); ++o) {
        if (packs[o] < 0 || packs[o] > 1'000'000)
            return fail(Errc::refused, "the packs are not from 0 to 1,000,000", offers[o].title);
        const auto stall =
            std::find_if(market.stalls.begin(), market.stalls.end(), [&](const Stall& s) { return s.offer == o; });
        if (stall != market.stalls.end())
            of_stalls[static_cast<std::size_t>(stall - market.stalls.begin())] = packs[o];
        else if (packs[o] > 0)
            return fail(Errc::refused, "the offer has nothing that is needed, or cannot be compared", offers[o].title);
    }
    return Reckoning(std::move(market), needs, offers, terms).of(of_stalls);
}

}  // namespace cotter
