// Areas that scroll by finger, wheel and keys; and areas that take drags and pinches for themselves. For widgets.
#pragma once

#include <functional>

#include "app/ui/ui.h"

namespace cotter {

using Body = std::function<void()>;

struct ScrollSpec {
    std::string key;
    float pad_x = 0, pad_y = 0;  // dp of space round the content, scrolled with it
    bool sideways = false;
};

// Draws `body` in `rect`, clipped, scrolled by whatever the user did; a bar at the edge shows how far.
void scroll_area(UiContext& ui, const ScrollSpec& spec, const Rect& rect, const Body& body);
// A strip of `height` that scrolls sideways: photos of a slot. Within it, keep on one line with same_line().
void scroll_strip(UiContext& ui, std::string_view key, float height, const Body& body);
void same_line();

// What happened within a free area, relative to its top left, in dp.
struct AreaInput {
    std::optional<Point> tapped, long_pressed;
    bool dragging = false;    // one finger; from `start` to `at`
    bool drag_ended = false;  // in this frame
    bool broken = false;      // it did not end by the finger that left: nothing is to come of it
    Point start, at, by;
    float zoom = 1;  // two fingers or the wheel, about `at`
    std::uint32_t id = 0;
};

// Makes `rect` a free area: drags and pinches that begin in it are its own. Logged as a picture to tap.
AreaInput free_area(UiContext& ui, const Name& name, const Rect& rect);

// Called by the UiStage before a frame: who has the gestures of this frame.
void route_gestures(UiState& state, const std::vector<Gesture>& gestures);

}  // namespace cotter
