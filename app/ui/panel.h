// What is read rather than tapped: headings, paragraphs, cautions, progress, the empty list; and columns. For screens.
#pragma once

#include "app/ui/scroll.h"
#include "app/ui/ui.h"
#include "core/base/sign.h"

namespace cotter {

void heading(UiContext& ui, std::string_view text);  // opens a part of a screen
void paragraph(UiContext& ui, std::string_view text, bool lesser = false);
void space(float dp);

// A danger and what to do about it, where it is: before lifting, before opening a line that is under pressure.
void caution(UiContext& ui, std::string_view title, std::string_view text);
// The same form without the hatching, for what is worth knowing: a limit to confirm, a guess to check.
void remark(UiContext& ui, std::string_view title, std::string_view text);

// The number that a page is about, larger than any other on it.
struct FigureSpec {
    std::string title;   // "Pass 2 of 4: set the wrench to"
    std::string number;  // "106.7"
    std::string unit;    // "lb-ft"
    std::string under;   // "120 lb-ft at the nut"; empty: nothing
};
void big_figure(UiContext& ui, const FigureSpec& spec);

// The answer about towing with its sign; `stop`: hatched, as a danger is.
void answer_box(UiContext& ui, Sign sign, std::string_view title, std::string_view text, bool stop);

// A list with nothing in it: what would be here, and how to begin. True when the action was tapped.
bool empty_state(UiContext& ui, std::string_view title, std::string_view text, const Name& action);

struct ProgressSpec {
    std::string doing;    // "Packing 24 photos"
    std::string detail;   // "photo 7 of 24"
    float fraction = -1;  // 0…1; below 0: not known
    bool may_cancel = true;
};
// True when 'cancel' was tapped.
bool progress(UiContext& ui, std::string_view key, const ProgressSpec& spec);

// Two bodies beside each other, the left one `share` (0…1) of the width; below each other when either would be
// narrower than `least` dp.
void side_by_side(UiContext& ui, float share, float least, const Body& left, const Body& right);

}  // namespace cotter
