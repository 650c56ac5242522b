// The one way a widget becomes something to tap: an ImGui item, a line in the log, the finger's touch, the key's focus.
// For widgets only.
#pragma once

#include "app/ui/ui.h"

namespace cotter {

struct PressSpec {
    Role role = Role::button;
    bool enabled = true;
    bool chosen = false;
    bool main = false;
    std::string value;
};

struct Press {
    std::uint32_t id = 0;
    bool tapped = false;
    bool long_pressed = false;
    bool held = false;     // a finger or button is on it
    bool hovered = false;  // a mouse is over it
    bool focused = false;  // it has the keyboard
};

[[nodiscard]] std::uint32_t id_of(const Name& name);  // within the current ImGui id scope
// What is tapped by other means than press_area() is logged by this.
void log_target(UiContext& ui, Target target);
Press press_area(UiContext& ui, const Name& name, const Rect& rect, const PressSpec& spec);

// Keys below belong to this group until the end of the scope.
class IdScope {
public:
    explicit IdScope(std::string_view key);
    ~IdScope();
    IdScope(const IdScope&) = delete;
    IdScope& operator=(const IdScope&) = delete;
};

// The plate of something to tap, as it looks now: chosen, off, held, under the mouse, focused.
void draw_press_plate(const UiContext& ui, const Rect& rect, const Press& press, const Paint& paint,
                      const struct Cuts& cuts);

}  // namespace cotter
