// What a frame put on the screen, as data: every target and every piece of text. Filled by the widgets, read by the
// audit, the test driver and the mirror for screen readers. Pure; one thread; emptied at the start of each frame.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/ui/colour.h"
#include "app/ui/touch.h"

namespace cotter {

struct Rect {  // dp; right and bottom are x + w, y + h
    float x = 0, y = 0, w = 0, h = 0;

    bool operator==(const Rect&) const = default;
    [[nodiscard]] float right() const { return x + w; }
    [[nodiscard]] float bottom() const { return y + h; }
    [[nodiscard]] bool empty() const { return w <= 0 || h <= 0; }
    [[nodiscard]] bool contains(Point p) const { return p.x >= x && p.x < right() && p.y >= y && p.y < bottom(); }
    [[nodiscard]] Point middle() const { return {x + w / 2, y + h / 2}; }
};

[[nodiscard]] Rect intersection(const Rect& a, const Rect& b);  // empty when they do not meet
[[nodiscard]] Rect grown(const Rect& r, float by);
// True when `inner` lies in `outer`, give or take `slack` dp.
[[nodiscard]] bool inside(const Rect& inner, const Rect& outer, float slack = 0.5F);

enum class Role { button, row, tile, chip, choice, toggle, field, key, picture };
[[nodiscard]] std::string_view role_name(Role role);

struct Target {
    std::uint32_t id = 0;  // ImGui's, stable over frames
    std::string label;     // what it says
    std::string value;     // a field's text, a row's lesser text; may be empty
    Role role = Role::button;
    Rect rect;  // the whole of it
    Rect seen;  // the part that is not scrolled away
    bool enabled = true;
    bool chosen = false;  // switched on, selected
    bool main = false;    // the screen's main action
    int layer = 0;        // 0 the screen, 1 and up the sheets over it; only the highest one takes input
};

struct TextInk {
    std::string text;
    Rect ink;   // what the letters cover
    Rect box;   // what they must stay in
    Rect seen;  // ink that is not scrolled away
    Rgb colour, ground;
    float size = 0;  // dp
    int layer = 0;
    std::uint32_t target = 0;  // it belongs to this one; 0: to none
};

// An area that scrolls, or takes drags for itself.
struct ScrollArea {
    std::uint32_t id = 0;
    Rect whole;  // as laid out
    Rect rect;   // the part of it that is not scrolled away itself
    bool sideways = false;
    bool free = false;      // no list but a picture that takes drags and pinches itself
    float at = 0, end = 0;  // dp scrolled, and at most
    int layer = 0;
};

struct TargetLog {
    std::vector<Target> targets;
    std::vector<TextInk> texts;
    std::vector<ScrollArea> scrolls;
    int drawing = 0;  // the layer that widgets are being drawn in
    int layer = 0;    // the highest one so far; after the frame, the one that takes input

    void clear();
    // Targets of the top layer whose label is exactly that, in the order drawn.
    [[nodiscard]] std::vector<const Target*> find(std::string_view label) const;
    // True when `text` is seen somewhere in the top layer, as a label or within any text.
    [[nodiscard]] bool shows(std::string_view text) const;
};

}  // namespace cotter
