// The four grades as signs of our own, told apart by outline alone (core/base/sign.h), filled with the grade's colour.
// For widgets, and for screens that put a mark beside their own things.
#pragma once

#include "app/ui/ui.h"
#include "core/survey/words.h"

namespace cotter {

[[nodiscard]] constexpr Tone tone_of(Grade grade) {
    constexpr Tone kTones4[]{Tone::serviceable, Tone::watch, Tone::repair, Tone::do_not_tow};
    return kTones4[static_cast<int>(grade)];
}

// In the middle of `box`; `outline` must stand out from the ground the mark lies on.
void draw_grade_mark(Grade grade, const Rect& box, Rgb fill, Rgb outline);

// A plate with mark and word, as high as a line of text with some room; for findings and summaries. Not a target.
void grade_plate(UiContext& ui, Grade grade);

}  // namespace cotter
