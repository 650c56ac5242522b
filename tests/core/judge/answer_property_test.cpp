// The answer engine over random trailers with one random change each: it never says more than it was told.
#include "tests/core/judge/answer_property.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/support/effort.h"

using namespace cotter::test;

TEST_CASE("answer property: silence, removal, worsening, neighbors, strangers and time improve nothing") {
    const std::size_t rounds = few() ? 500 : 5000;
    const PropertyRun run = run_properties(20261129, rounds);
    for (std::size_t i = 0; i < std::min<std::size_t>(run.failures.size(), 5); ++i) FAIL_CHECK(run.failures[i]);
    CHECK(run.failures.empty());
    // The draw reaches what it is meant to reach.
    for (const std::size_t times : {run.silences, run.removals, run.worsenings, run.neighbors, run.strangers, run.ends})
        CHECK(times > rounds / 40);
    CHECK(run.outcomes[0] > rounds / 50);
    CHECK(run.outcomes[1] > rounds / 50);
    CHECK(run.outcomes[2] > rounds / 50);
    CHECK(run.outcomes[3] > rounds / 50);
}
