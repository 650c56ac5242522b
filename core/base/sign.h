// The signs of the grades and of the answer about towing: one drawing each, for screens, marks in photos and paper.
// A field of 24 × 24, x to the right and y down. Told apart by outline alone, and ordered by weight: the worse, the
// more of the field is dark. Constant; any thread.
#pragma once

#include <span>

#include "core/base/rgb.h"

namespace cotter {

// A plate that goes to pieces. On a road: the whole trailer's answer, not one finding's grade.
enum class Sign {
    whole,      // a plate lying flat, thin
    chipped,    // a piece out of its edge, filled up to there
    sheared,    // in two halves, out of line
    shattered,  // solid, points on both sides
    whole_on_road,
    shaded_on_road,  // a plate seen from one side, the other in shadow
    fading_on_road,  // half a plate, the rest in bits; so is the road
    sheared_on_road,
    shattered_on_road,
};

inline constexpr float kSignField = 24;

struct SignPoint {
    float x = 0, y = 0;
};

enum class SignInk : std::uint8_t {
    tint,  // filled with the sign's colour
    ink,   // filled with the colour of the writing beside it
    line,  // an outline in that colour, closed; a stroke where there are two points
};

// Drawn in turn, later ones on top. What is filled is convex and turns to the right.
struct SignPart {
    SignInk ink = SignInk::tint;
    std::span<const SignPoint> points;
    float width = 0;  // of a line
};

inline constexpr std::size_t kMostSignPoints = 12;  // of a part

[[nodiscard]] std::span<const SignPart> parts_of(Sign sign);

// The same on screens, in photos and on paper. The worse, the darker. The signs without a tint have that of the sign
// they are nearest to in gravity.
[[nodiscard]] constexpr Rgb tint_of(Sign sign) {
    constexpr Rgb kWhole = rgb(0xD0ECFA), kChipped = rgb(0xFDD23A), kSheared = rgb(0xE8804C),
                  kShattered = rgb(0x8A0A2A);
    constexpr Rgb kTints[]{kWhole, kChipped, kSheared, kShattered, kWhole, kWhole, kChipped, kSheared, kShattered};
    return kTints[static_cast<int>(sign)];
}

}  // namespace cotter
