// Where records stand in their list, as numbers with room between them, so that putting one in or taking one out
// writes that one record and no other. Pure functions.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace cotter {

inline constexpr std::int64_t kPositionStep = std::int64_t{1} << 20;

// The positions of a list's records in order, strictly rising. `old` has what each record had before, nothing for a
// new one. A record keeps its position unless the room between two neighbours is used up or the order has changed;
// then the whole list is numbered anew.
[[nodiscard]] std::vector<std::int64_t> assign_positions(const std::vector<std::optional<std::int64_t>>& old);

}  // namespace cotter
