// What the search works on: each item's sources, made from the offers.
#include <algorithm>

#include "core/quote/cover_search.h"

namespace cotter {

CoverSearch::CoverSearch(const CoverTask& task, const std::vector<bool>& usable, std::size_t budget)
    : task_(task), budget_(budget), share_(task.freight.size()), seen_(task.demands.size()) {
    for (const CoverDemand& demand : task.demands)
        items_.push_back({(demand.amount + demand.lot - 1) / demand.lot * demand.lot, demand.lot, {}});
    add_singles(usable);
    add_kits(usable);
    spread_kit_prices();
}

// Without those that another one of the list beats or equals in amount and price.
std::vector<std::size_t> CoverSearch::worthwhile(std::vector<std::size_t> offers) const {
    const auto amount = [&](std::size_t o) { return task_.offers[o].parts[0].amount; };
    std::stable_sort(offers.begin(), offers.end(), [&](std::size_t a, std::size_t b) {
        return amount(a) != amount(b) ? amount(a) > amount(b) : task_.offers[a].price < task_.offers[b].price;
    });
    std::vector<std::size_t> out;
    for (const std::size_t o : offers)
        if (out.empty() || task_.offers[o].price < task_.offers[out.back()].price) out.push_back(o);
    return out;
}

void CoverSearch::add_source(std::size_t index, std::size_t delivery, std::vector<std::size_t> offers) {
    Item& item = items_[index];
    Source source;
    source.index = delivery;
    source.offers = worthwhile(std::move(offers));
    source.frontier = {{0, 0, 0, 0}};
    for (const std::size_t o : source.offers) {
        const Packs packs{task_.offers[o].parts[0].amount, task_.offers[o].price, 0, item.needed};
        const Frontier one = packs_frontier(packs, item.lot, item.needed, thinned_);
        source.frontier = joined_frontier(source.frontier, one, item.needed, thinned_);
        source.steps.push_back(source.frontier);
    }
    item.sources.push_back(std::move(source));
}

void CoverSearch::add_singles(const std::vector<bool>& usable) {
    std::map<std::pair<std::size_t, std::size_t>, std::vector<std::size_t>> by_item_and_delivery;
    std::optional<std::size_t> free;  // all deliveries without freight are one
    for (std::size_t o = 0; o < task_.offers.size(); ++o) {
        const CoverOffer& offer = task_.offers[o];
        if (!usable[o] || offer.parts.size() != 1 || items_[offer.parts[0].demand].needed == 0) continue;
        std::size_t delivery = offer.delivery;
        if (task_.freight[delivery] == 0) delivery = *(free = free.value_or(delivery));
        by_item_and_delivery[{offer.parts[0].demand, delivery}].push_back(o);
    }
    for (auto& [key, offers] : by_item_and_delivery) add_source(key.first, key.second, std::move(offers));
}

void CoverSearch::add_kits(const std::vector<bool>& usable) {
    for (std::size_t o = 0; o < task_.offers.size(); ++o) {
        if (!usable[o] || task_.offers[o].parts.size() < 2) continue;
        Kit kit{o, task_.offers[o].parts, {}, {}};
        for (std::size_t p = 0; p < kit.parts.size(); ++p) {
            Item& item = items_[kit.parts[p].demand];
            Source source;
            source.kit = true;
            source.index = kits_.size();
            source.part = p;
            kit.at.push_back(item.sources.size());
            item.sources.push_back(std::move(source));
        }
        kits_.push_back(std::move(kit));
    }
}

// A kit's price over its parts, by what each part's amount costs when bought alone: a good split makes a good bound.
void CoverSearch::spread_kit_prices() {
    for (Kit& kit : kits_) {
        std::vector<double> worth;
        double sum = 0;
        for (const CoverPart& part : kit.parts) {
            const Item& item = items_[part.demand];
            double alone = -1;
            for (const Source& source : item.sources)
                for (const std::size_t o : source.offers) {
                    const double each = static_cast<double>(task_.offers[o].price) /
                                        static_cast<double>(task_.offers[o].parts[0].amount);
                    alone = alone < 0 ? each : std::min(alone, each);
                }
            worth.push_back(std::max(alone, 0.0) * static_cast<double>(std::min(part.amount, item.needed)) + 1e-6);
            sum += worth.back();
        }
        const std::int64_t price = task_.offers[kit.offer].price;
        std::int64_t left = price;
        for (std::size_t p = 0; p < kit.parts.size(); ++p) {
            const bool last = p + 1 == kit.parts.size();
            const auto share = last ? left : static_cast<std::int64_t>(static_cast<double>(price) * worth[p] / sum);
            kit.share.push_back(std::min(share, left));
            left -= kit.share.back();
        }
    }
}

}  // namespace cotter
