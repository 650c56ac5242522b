// This visit's readings beside the last visit's, one by one: before, now, the change. For the page of the app. Pure;
// any thread.
//
// Before: as the last visit left the trailer. Now: as it was found at this one. So the change is what the road did.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/judge/judgement.h"

namespace cotter {

// One point of one reading.
struct ReadingChange {
    Place place;
    int axle = 0;  // when the point names an axle as a whole
    std::string what;
    std::string where;
    std::optional<Amount> before, now;  // as entered; at least one is there
    std::string change;                 // "−2.4 mm", "the same", or why it cannot be told; never empty
    bool told = false;                  // the change is a figure, or none at all
};

// Of rotor, drum and end play the worst point stands for all: where they were measured differs from visit to visit.
// In the order of places, then of this visit's readings; what only the last visit has comes at the end of its place.
// Readings dated after `at` are not believed. A part repaired or replaced in between is said, not subtracted over.
[[nodiscard]] std::vector<ReadingChange> changes_since(const Job& last, const Job& job, const Instant& at);

}  // namespace cotter
