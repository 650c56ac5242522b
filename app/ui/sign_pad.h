// A field to sign in with a finger: strokes as they are drawn, kept as shares of its width and height. For screens.
#pragma once

#include <optional>
#include <span>

#include "app/ui/ui.h"
#include "core/survey/quote_records.h"

namespace cotter {

struct SignPadState {
    std::vector<Point> drawing;  // the stroke under the finger, relative to the field, in dp
};

// Full width, at most 160 dp high. Gives a stroke when the finger leaves; a tap is a dot.
std::optional<PenStroke> sign_pad(UiContext& ui, const Name& name, std::span<const PenStroke> strokes,
                                  SignPadState& state);

}  // namespace cotter
