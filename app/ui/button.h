// Buttons: the plain one, the main one, the small square one with an icon. For screens.
#pragma once

#include "app/ui/draw.h"
#include "app/ui/ui.h"

namespace cotter {

struct ButtonSpec {
    Tone tone = Tone::quiet;
    Icon icon = Icon::none;
    bool enabled = true;
    bool main = false;  // 64 dp high, bold
    float width = 0;    // dp; 0: as wide as its words, at most as wide as there is room
};

// True when it was tapped.
bool button(UiContext& ui, const Name& name, const ButtonSpec& spec = {});
// Full width of the column.
bool wide_button(UiContext& ui, const Name& name, ButtonSpec spec = {});

// For widgets that place buttons themselves.
[[nodiscard]] float button_height(const UiContext& ui, const Name& name, const ButtonSpec& spec, float width);
[[nodiscard]] float button_width(const UiContext& ui, const Name& name, const ButtonSpec& spec);
bool button_at(UiContext& ui, const Name& name, const ButtonSpec& spec, const Rect& rect);
bool icon_button_at(UiContext& ui, const Name& name, Icon icon, const Rect& rect, bool enabled = true);

}  // namespace cotter
