// Combinations of packs of one item that no other combination beats in amount and price. For cover.cpp. Pure.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace cotter {

// One combination: covers `amount` (capped at what is needed) at `cost`. `first`, `second`: which combinations of the
// two frontiers it was joined from; in a single offer's frontier `first` is the number of packs.
struct Combination {
    std::int64_t amount = 0;
    std::int64_t cost = 0;
    std::int64_t first = 0;
    std::int64_t second = 0;
};

// Rising in amount and in cost.
using Frontier = std::vector<Combination>;

// At most so many combinations are kept; `thinned` is set where some had to be left out.
inline constexpr std::size_t kMostCombinations = 1024;

// `least`…`most` packs of one offer with `each` units, counted in whole lots, up to `needed` units.
struct Packs {
    std::int64_t each = 1;
    std::int64_t price = 0;
    std::int64_t least = 0;
    std::int64_t most = 0;
};
[[nodiscard]] Frontier packs_frontier(const Packs& packs, std::int64_t lot, std::int64_t needed, bool& thinned);

// Every combination of one of `a` with one of `b` that is not beaten.
[[nodiscard]] Frontier joined_frontier(const Frontier& a, const Frontier& b, std::int64_t needed, bool& thinned);

// The cheapest combination that covers `needed`: the last one, or nothing when none does.
[[nodiscard]] const Combination* enough(const Frontier& frontier, std::int64_t needed);

}  // namespace cotter
