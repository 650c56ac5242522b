// Positions: strictly rising, kept where there is room.
#include <doctest/doctest.h>

#include "core/book/positions.h"

using namespace cotter;

namespace {

using Old = std::vector<std::optional<std::int64_t>>;
using New = std::vector<std::int64_t>;
constexpr std::int64_t S = kPositionStep;

}  // namespace

TEST_CASE("positions: new records get room on both sides") {
    CHECK(assign_positions({}) == New{});
    CHECK(assign_positions(Old(3)) == New{0, S, 2 * S});
    CHECK(assign_positions(Old{0, S, {}, {}}) == New{0, S, 2 * S, 3 * S});
    CHECK(assign_positions(Old{{}, {}, 0}) == New{-2 * S, -S, 0});
    CHECK(assign_positions(Old{0, {}, S}) == New{0, S / 2, S});
    CHECK(assign_positions(Old{0, {}, {}, {}, 7}) == New{0, 1, 3, 5, 7});
    CHECK(assign_positions(Old{0, {}, 2}) == New{0, 1, 2});
}

TEST_CASE("positions: without room, or in another order, the list is numbered anew") {
    CHECK(assign_positions(Old{4, {}, 5, 9}) == New{0, S, 2 * S, 3 * S});
    CHECK(assign_positions(Old{0, {}, {}, 2}) == New{0, S, 2 * S, 3 * S});
    CHECK(assign_positions(Old{S, 0}) == New{0, S});
    CHECK(assign_positions(Old{S, S}) == New{0, S});
}

TEST_CASE("positions: every gap up to 40 with every number of new records rises strictly") {
    for (std::int64_t gap = 1; gap <= 40; ++gap)
        for (std::size_t fresh = 0; fresh <= 40; ++fresh) {
            Old old(fresh + 2);
            old.front() = 100;
            old.back() = 100 + gap;
            const New got = assign_positions(old);
            REQUIRE(got.size() == old.size());
            for (std::size_t i = 1; i < got.size(); ++i) REQUIRE(got[i - 1] < got[i]);
            const bool kept = got.front() == 100 && got.back() == 100 + gap;
            REQUIRE(kept == (static_cast<std::int64_t>(fresh) < gap));
        }
}
