// Frontiers made and joined.
#include "core/quote/frontier.h"

#include <algorithm>
#include <limits>

namespace cotter {

namespace {

constexpr std::int64_t kNone = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t kFewUnits = 512;  // so many fit into a table by amount

// Sorted candidates, beaten ones out.
Frontier unbeaten(Frontier all) {
    std::sort(all.begin(), all.end(), [](const Combination& a, const Combination& b) {
        return a.cost != b.cost ? a.cost < b.cost : a.amount > b.amount;
    });
    Frontier out;
    for (const Combination& c : all)
        if (out.empty() || c.amount > out.back().amount) out.push_back(c);
    return out;
}

// Calls take(combination) for every pair; more of `b` than needed is left out, as it only costs more.
template <class F>
void for_pairs(const Frontier& a, const Frontier& b, std::int64_t needed, F&& take) {
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::int64_t amount = std::min(needed, a[i].amount + b[j].amount);
            take(
                Combination{amount, a[i].cost + b[j].cost, static_cast<std::int64_t>(i), static_cast<std::int64_t>(j)});
            if (amount == needed) break;
        }
}

// The same by a table of the cheapest for each amount: no sorting.
Frontier joined_few(const Frontier& a, const Frontier& b, std::int64_t needed) {
    Frontier best(static_cast<std::size_t>(needed) + 1, Combination{0, kNone, 0, 0});
    for_pairs(a, b, needed, [&](const Combination& c) {
        Combination& held = best[static_cast<std::size_t>(c.amount)];
        if (c.cost < held.cost) held = c;
    });
    Frontier out;
    std::int64_t cheapest = kNone;
    for (std::size_t i = best.size(); i-- > 0;)
        if (best[i].cost < cheapest) {
            cheapest = best[i].cost;
            out.push_back(best[i]);
        }
    std::reverse(out.begin(), out.end());
    return out;
}

// Every other one, the largest amount kept.
Frontier thin(Frontier all, bool& thinned) {
    while (all.size() > kMostCombinations) {
        thinned = true;
        Frontier half;
        for (std::size_t i = (all.size() - 1) % 2; i < all.size(); i += 2) half.push_back(all[i]);
        all = std::move(half);
    }
    return all;
}

}  // namespace

Frontier packs_frontier(const Packs& packs, std::int64_t lot, std::int64_t needed, bool& thinned) {
    Frontier out;
    const auto amount_of = [&](std::int64_t n) {  // never multiplies beyond what is needed
        return n > needed / packs.each ? needed : std::min(needed, n * packs.each / lot * lot);
    };
    // So many packs at least are enough, whatever the lot.
    const std::int64_t last = std::min(packs.most, std::max(packs.least, (needed + packs.each - 1) / packs.each));
    const std::int64_t step = (last - packs.least) / static_cast<std::int64_t>(kMostCombinations) + 1;
    thinned = thinned || step > 1;
    for (std::int64_t n = packs.least;; n = std::min(n + step, last)) {
        const std::int64_t amount = amount_of(n);
        if (out.empty() || amount > out.back().amount) out.push_back({amount, n * packs.price, n, 0});
        if (amount == needed || n == last) break;
    }
    if (packs.price == 0) out.erase(out.begin(), out.end() - 1);  // for nothing: as many as it takes
    return out;
}

Frontier joined_frontier(const Frontier& a, const Frontier& b, std::int64_t needed, bool& thinned) {
    if (needed <= kFewUnits) return joined_few(a, b, needed);
    Frontier all;
    all.reserve(a.size() * b.size());
    for_pairs(a, b, needed, [&](const Combination& c) { all.push_back(c); });
    return thin(unbeaten(std::move(all)), thinned);
}

const Combination* enough(const Frontier& frontier, std::int64_t needed) {
    return frontier.empty() || frontier.back().amount < needed ? nullptr : &frontier.back();
}

}  // namespace cotter
