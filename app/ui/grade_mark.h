// The signs of the grades and of the answer about towing (core/base/sign.h) on a screen. For widgets, and for screens
// that put a sign beside their own things.
#pragma once

#include "app/ui/ui.h"
#include "core/survey/grade_sign.h"

namespace cotter {

[[nodiscard]] constexpr Tone tone_of(Grade grade) {
    constexpr Tone kTones4[]{Tone::serviceable, Tone::watch, Tone::repair, Tone::do_not_tow};
    return kTones4[static_cast<int>(grade)];
}

// In the middle of `box`, as large as its shorter side; `writing`: the color of the text on the same ground.
void draw_sign(Sign sign, const Rect& box, Rgb writing);

// A plate with sign and word, as high as a line of text with some room; for findings and summaries. Not a target.
void grade_plate(UiContext& ui, Grade grade);

}  // namespace cotter
