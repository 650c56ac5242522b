// Random trailers, one random change each, and what may never come of it. For the property test and its bench.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace cotter::test {

struct PropertyRun {
    std::size_t rounds = 0;
    // How often each was put to the test: a draw that never reaches one proves nothing about it.
    std::size_t silences = 0, removals = 0, worsenings = 0, neighbors = 0, strangers = 0, ends = 0;
    std::size_t outcomes[5] = {};  // of the random trailers, by TowOutcome
    std::vector<std::string> failures;
};

// Deterministic: the same seed and rounds give the same draw.
// - what is not answered at all at an essential place never leaves 'nothing found against it';
// - a good answer taken away, or made worse, never improves the outcome;
// - a good answer at one place never answers another place;
// - a visit whose signer is not accepted improves nothing anywhere;
// - before the instant at which an answer is said to run out, it stays the same.
[[nodiscard]] PropertyRun run_properties(unsigned seed, std::size_t rounds);

}  // namespace cotter::test
