// Checks of the task, and the question whether to wait at all.
#include "core/quote/cover.h"

#include <algorithm>
#include <fmt/format.h>
#include <limits>

#include "core/quote/cover_search.h"
#include "core/quote/exact.h"

namespace cotter {

namespace {

constexpr std::int64_t kMostUnits = 10'000'000'000;
constexpr std::int64_t kNoBound = std::numeric_limits<std::int64_t>::max();

Result<> check_offer(const CoverTask& task, std::size_t index) {
    const CoverOffer& offer = task.offers[index];
    const std::string where = fmt::format("offer {}", index + 1);
    if (offer.price < 0 || offer.price > kLargestAmount)
        return fail(Errc::refused, "the price is below zero or too large", where);
    if (offer.delivery >= task.freight.size()) return fail(Errc::refused, "there is no such delivery", where);
    for (const CoverPart& part : offer.parts) {
        if (part.demand >= task.demands.size()) return fail(Errc::refused, "there is no such item", where);
        if (part.amount < 1 || part.amount > kMostUnits)
            return fail(Errc::refused, "a pack must hold something, and not too much", where);
        const std::int64_t packs = task.demands[part.demand].amount / part.amount + 2;
        std::int64_t cost = 0;
        if (__builtin_mul_overflow(packs, offer.price, &cost) || cost > 1000 * kLargestAmount)
            return fail(Errc::refused, "the sum would be too large", where, "look for a digit too many");
    }
    return {};
}

Result<> check_task(const CoverTask& task) {
    for (std::size_t d = 0; d < task.demands.size(); ++d)
        if (task.demands[d].amount < 0 || task.demands[d].amount > kMostUnits || task.demands[d].lot < 1)
            return fail(Errc::refused, "the amount needed is below zero or too large", fmt::format("item {}", d + 1));
    for (const std::int64_t freight : task.freight)
        if (freight < 0 || freight > kLargestAmount) return fail(Errc::refused, "a freight is below zero or too large");
    if (task.wait_cost < 0 || task.wait_cost > kLargestAmount)
        return fail(Errc::refused, "the cost of waiting is below zero or too large");
    for (std::size_t o = 0; o < task.offers.size(); ++o) COTTER_TRY(check_offer(task, o));
    return {};
}

Result<> check_covered(const CoverTask& task) {
    std::vector<bool> offered(task.demands.size());
    for (const CoverOffer& offer : task.offers)
        for (const CoverPart& part : offer.parts) offered[part.demand] = true;
    for (std::size_t d = 0; d < offered.size(); ++d)
        if (!offered[d] && task.demands[d].amount > 0)
            return fail(Errc::refused, "no offer covers it", fmt::format("item {}", d + 1));
    return {};
}

}  // namespace

Result<CoverAnswer> cheapest_cover(const CoverTask& task, std::size_t budget) {
    COTTER_TRY(check_task(task));
    COTTER_TRY(check_covered(task));
    CoverTask only = task;  // without items of which nothing is needed, which need no source
    for (CoverOffer& offer : only.offers)
        std::erase_if(offer.parts, [&](const CoverPart& part) { return task.demands[part.demand].amount == 0; });
    std::erase_if(only.demands, [](const CoverDemand& demand) { return demand.amount == 0; });
    std::vector<std::size_t> now_at(task.demands.size());
    for (std::size_t d = 0, next = 0; d < task.demands.size(); ++d)
        if (task.demands[d].amount > 0) now_at[d] = next++;
    for (CoverOffer& offer : only.offers)
        for (CoverPart& part : offer.parts) part.demand = now_at[part.demand];

    std::vector<bool> at_once(only.offers.size());
    bool any_waits = false;
    for (std::size_t o = 0; o < only.offers.size(); ++o) {
        at_once[o] = !only.offers[o].waits;
        any_waits = any_waits || only.offers[o].waits;
    }
    auto best = CoverSearch(only, at_once, budget).run(kNoBound);
    if (any_waits) {
        const std::int64_t bound = best ? best->cost : kNoBound;
        if (bound >= task.wait_cost) {
            const std::vector<bool> all(only.offers.size(), true);
            const std::int64_t below = bound == kNoBound ? kNoBound : bound - task.wait_cost;
            if (auto waiting = CoverSearch(only, all, budget).run(below)) {
                waiting->cost += waiting->waits ? task.wait_cost : 0;
                waiting->proved = waiting->proved && (!best || best->proved);
                best = std::move(waiting);
            }
        }
    }
    if (!best) return fail(Errc::refused, "what is needed cannot be covered by the offers");
    return std::move(*best);
}

}  // namespace cotter
