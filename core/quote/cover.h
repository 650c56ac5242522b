// The cheapest way to buy what is needed in whole packs, mixed across packs, kits and suppliers. Exact, not greedy.
// Whole numbers only; knows nothing of records. Pure; any thread.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/base/error.h"

namespace cotter {

// So many units of one item. Units of one lot (2 corners of an axle) must come from one offer.
struct CoverDemand {
    std::int64_t amount = 0;
    std::int64_t lot = 1;
};

struct CoverPart {
    std::size_t demand = 0;   // index
    std::int64_t amount = 0;  // units in one pack, from 1
};

// A pack that can be bought any number of times. A kit has several parts.
struct CoverOffer {
    std::size_t delivery = 0;  // index
    std::int64_t price = 0;    // of one pack, 0…kLargestAmount
    bool waits = false;        // cannot be had on the day
    std::vector<CoverPart> parts;
};

struct CoverTask {
    std::vector<CoverDemand> demands;
    std::vector<CoverOffer> offers;
    std::vector<std::int64_t> freight;  // of each delivery, once when anything is bought with it
    std::int64_t wait_cost = 0;         // once when any offer bought waits
};

struct CoverAnswer {
    std::vector<std::int64_t> packs;  // of each offer
    std::int64_t cost = 0;            // packs, freight and waiting
    bool waits = false;
    bool proved =
        true;  // false: the search was cut short by its budget; `cost` is the best found, perhaps not the least
};

// Method: for each item, the few combinations of packs that no other beats in both amount and price (a frontier).
// Freight and kits tie items together; their cost is split over the items so that the sum over items is a lower bound,
// raised by subgradient steps (cover_tighten.cpp), and branch and bound over 'this delivery or not' and 'so many of
// this kit' closes the gap. `budget`: how many such branches are looked at; a real quote takes tens. The same task
// gives the same answer. `refused`: an item that no offer covers, an amount or price below zero, too large a sum.
[[nodiscard]] Result<CoverAnswer> cheapest_cover(const CoverTask& task, std::size_t budget = 100'000);

}  // namespace cotter
