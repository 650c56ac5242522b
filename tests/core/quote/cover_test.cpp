// Packs and covers: the worked tables, and the search against trying everything.
#include "core/quote/cover.h"

#include <doctest/doctest.h>

#include <limits>
#include <random>

using namespace cotter;

namespace {

// Does `packs` cover everything? By the words of the header, not by the search's arithmetic.
bool covers(const CoverTask& task, const std::vector<std::int64_t>& packs) {
    for (std::size_t d = 0; d < task.demands.size(); ++d) {
        const std::int64_t lot = task.demands[d].lot;
        std::int64_t lots = 0;
        for (std::size_t o = 0; o < packs.size(); ++o)
            for (const CoverPart& part : task.offers[o].parts)
                if (part.demand == d) lots += packs[o] * part.amount / lot;
        if (lots * lot < task.demands[d].amount) return false;
    }
    return true;
}

std::int64_t cost_of(const CoverTask& task, const std::vector<std::int64_t>& packs) {
    std::int64_t cost = 0;
    bool waits = false;
    std::vector<bool> used(task.freight.size());
    for (std::size_t o = 0; o < packs.size(); ++o) {
        if (packs[o] == 0) continue;
        cost += packs[o] * task.offers[o].price;
        used[task.offers[o].delivery] = true;
        waits = waits || task.offers[o].waits;
    }
    for (std::size_t d = 0; d < used.size(); ++d) cost += used[d] ? task.freight[d] : 0;
    return cost + (waits ? task.wait_cost : 0);
}

std::int64_t most_packs(const CoverTask& task, const CoverOffer& offer) {
    std::int64_t most = 0;
    for (const CoverPart& part : offer.parts) {
        const CoverDemand& demand = task.demands[part.demand];
        const std::int64_t rounded = (demand.amount + demand.lot - 1) / demand.lot * demand.lot;
        most = std::max(most, (rounded + part.amount - 1) / part.amount);
    }
    return most;
}

void try_all(const CoverTask& task, std::size_t offer, std::vector<std::int64_t>& packs, std::int64_t& best) {
    if (offer == task.offers.size()) {
        if (covers(task, packs)) best = std::min(best, cost_of(task, packs));
        return;
    }
    for (packs[offer] = 0; packs[offer] <= most_packs(task, task.offers[offer]); ++packs[offer])
        try_all(task, offer + 1, packs, best);
    packs[offer] = 0;
}

class CaseMaker {
public:
    explicit CaseMaker(std::uint64_t seed) : random_(seed) {}

    CoverTask next() {
        CoverTask task;
        const int items = 1 + below(3);
        for (int i = 0; i < items; ++i) task.demands.push_back({below(7), below(3) == 0 ? 2 : 1});
        for (int d = 1 + below(3); d > 0; --d) task.freight.push_back(below(2) * below(30));
        task.wait_cost = below(2) * below(60);
        for (int o = 1 + below(5); o > 0; --o) task.offers.push_back(offer(task));
        return task;
    }

private:
    int below(int n) { return static_cast<int>(random_() % static_cast<std::uint64_t>(n)); }
    CoverOffer offer(const CoverTask& task) {
        CoverOffer out;
        out.delivery = static_cast<std::size_t>(below(static_cast<int>(task.freight.size())));
        out.price = below(100);
        out.waits = below(4) == 0;
        for (std::size_t d = 0; d < task.demands.size(); ++d)
            if (below(2) == 0) out.parts.push_back({d, 1 + below(4)});
        if (out.parts.empty()) out.parts.push_back({0, 1 + below(4)});
        return out;
    }
    std::mt19937_64 random_;
};

}  // namespace

TEST_CASE("cover: 10,000 small cases cost what trying everything finds") {
    CaseMaker maker(20260514);
    int differences = 0;
    int solved = 0;
    for (int n = 0; n < 10'000; ++n) {
        const CoverTask task = maker.next();
        std::int64_t best = std::numeric_limits<std::int64_t>::max();
        std::vector<std::int64_t> packs(task.offers.size());
        try_all(task, 0, packs, best);
        const auto answer = cheapest_cover(task);
        const bool possible = best != std::numeric_limits<std::int64_t>::max();
        if (answer.has_value() != possible) ++differences;
        if (!answer || !possible) continue;
        ++solved;
        if (answer->cost != best || !answer->proved || cost_of(task, answer->packs) != best ||
            !covers(task, answer->packs))
            ++differences;
    }
    CHECK(differences == 0);
    CHECK(solved > 5'000);
}

TEST_CASE("cover: fluid in bottles") {
    // Four hubs of 0.45 L from bottles of 0.946 L, in µL; with 10 % spill a third bottle.
    CoverTask task{{{1'800'000}}, {{0, 1'150, false, {{0, 946'000}}}}, {0}, 0};
    CHECK(cheapest_cover(task)->packs[0] == 2);
    task.demands[0].amount = 1'980'000;
    CHECK(cheapest_cover(task)->packs[0] == 3);
    task.offers.push_back({0, 700, false, {{0, 473'000}}});
    const auto mixed = cheapest_cover(task).value();
    CHECK(mixed.packs == std::vector<std::int64_t>{2, 1});
    CHECK(mixed.cost == 3'000);
}

TEST_CASE("cover: an axle is fitted from one lot") {
    // Two corners of an axle: one piece of each of two suppliers is cheaper, but not one lot.
    CoverTask task{{{2, 1}}, {{0, 10, false, {{0, 1}}}, {0, 25, false, {{0, 2}}}}, {0}, 0};
    CHECK(cheapest_cover(task)->cost == 20);
    task.demands[0] = {2, 2};
    task.offers = {{0, 10, false, {{0, 1}}}, {0, 15, false, {{0, 3}}}};
    CHECK(cheapest_cover(task)->packs == std::vector<std::int64_t>{0, 1});
    task.demands[0] = {4, 2};  // one of three and one of one make four pieces, but the second axle would be mixed
    CHECK(cheapest_cover(task)->packs == std::vector<std::int64_t>{0, 2});
}

TEST_CASE("cover: nothing needed, nothing bought") {
    const CoverTask task{{{0}, {0}}, {{0, 10, false, {{0, 1}, {1, 1}}}}, {50}, 85};
    CHECK(cheapest_cover(task)->cost == 0);
    CHECK(cheapest_cover({})->cost == 0);
}

// Overlapping kits of two and three items, each with a single of its own: what the bound alone cannot settle.
CoverTask knotted_task(int items) {
    std::mt19937_64 random(7);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<std::uint64_t>(n)); };
    CoverTask task;
    task.freight = {0, 900, 1'100};
    for (int i = 0; i < items; ++i) {
        const auto item = static_cast<std::size_t>(i);
        task.demands.push_back({3 + below(6), 1});
        task.offers.push_back({static_cast<std::size_t>(below(3)), 900 + below(300), false, {{item, 1}}});
        CoverOffer kit{static_cast<std::size_t>(below(3)), 1'500 + below(500), false, {{item, 2}}};
        for (int more = 1 + below(2); more > 0; --more)
            kit.parts.push_back({static_cast<std::size_t>((i + more * 3) % items), 1 + below(2)});
        task.offers.push_back(kit);
    }
    return task;
}

TEST_CASE("cover: a search cut short says that it is not proved, and is never under the true price") {
    const CoverTask task = knotted_task(12);
    const auto whole = cheapest_cover(task).value();
    CHECK(whole.proved);
    CHECK(covers(task, whole.packs));
    const auto cut = cheapest_cover(task, 1).value();
    CHECK_FALSE(cut.proved);
    CHECK(covers(task, cut.packs));
    CHECK(cut.cost == cost_of(task, cut.packs));
    CHECK(cut.cost >= whole.cost);
}

TEST_CASE("cover: bad tasks are refused in words") {
    const auto line = [](const CoverTask& task) {
        const auto answer = cheapest_cover(task);
        return answer ? std::string("accepted") : answer.error().line();
    };
    CHECK(line({{{1}}, {}, {}, 0}) == "no offer covers it: item 1");
    CHECK(line({{{-1}}, {}, {}, 0}) == "the amount needed is below zero or too large: item 1");
    CHECK(line({{{1}}, {{0, -5, false, {{0, 1}}}}, {0}, 0}) == "the price is below zero or too large: offer 1");
    CHECK(line({{{1}}, {{0, 5, false, {{0, 0}}}}, {0}, 0}) == "a pack must hold something, and not too much: offer 1");
    CHECK(line({{{10'000'000'000}}, {{0, 1'000'000'000'000, false, {{0, 1}}}}, {0}, 0})
              .starts_with("the sum would be too large: offer 1"));
    CHECK(line({{{1}}, {{0, 5, false, {{0, 1}}}}, {-1}, 0}) == "a freight is below zero or too large");
}
