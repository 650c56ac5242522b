// The signs of the grades as outlines in a field of 24 × 24, told apart without colour; x runs right and y down. For
// whoever draws them: on a screen, on paper. Constant; any thread.
#pragma once

#include <span>

namespace cotter {

enum class Sign {
    washer,      // with its pin through
    worn_block,  // a gauge block worn to half
    broken_nut,  // a piece broken out
    apart,       // two halves pulled apart
};

inline constexpr float kSignField = 24;

struct SignPoint {
    float x = 0, y = 0;
};

// Drawn in turn, later ones on top. What is filled is convex and holds the colour; lines hold the ink.
struct SignPart {
    std::span<const SignPoint> points;  // a closed outline; two of them are a line, one is a circle's middle
    bool filled = false;
    float line = 0;    // thickness; 0: none
    float radius = 0;  // of a circle
};

[[nodiscard]] std::span<const SignPart> parts_of(Sign sign);

}  // namespace cotter
