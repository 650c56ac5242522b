// Plates, stripes and icons on ImGui's draw list, in dp. For widgets only.
#pragma once

#include <imgui.h>

#include "app/ui/target_log.h"
#include "app/ui/ui.h"

namespace cotter {

[[nodiscard]] inline ImVec2 vec(Point p) {
    return {p.x, p.y};
}
[[nodiscard]] inline ImU32 ink(Rgb c, int alpha = 255) {
    return IM_COL32(c.r, c.g, c.b, alpha);
}

// Which corners of a plate are cut, clockwise from the top left.
struct Cuts {
    bool top_left = false, top_right = true, bottom_right = false, bottom_left = false;
};
inline constexpr Cuts kPlateCuts{};
inline constexpr Cuts kMainCuts{true, false, true, false};
inline constexpr Cuts kNoCuts{false, false, false, false};
inline constexpr Cuts kChipCuts{true, false, false, true};

struct PlateLook {
    Rgb ground, edge;
    float edge_width = Sizes::edge;
    float cut = Sizes::cut;
    Cuts cuts = kPlateCuts;
};

void draw_plate(const Rect& rect, const PlateLook& look);
void draw_fill(const Rect& rect, Rgb colour, int alpha = 255);
void draw_line(Point from, Point to, Rgb colour, float width = Sizes::edge);
// The stripe of paint over nut and stud: along the left side of what is chosen.
void draw_witness(const Rect& rect, Rgb colour);
// The ring round what has the keyboard.
void draw_ring(const Rect& rect, Rgb colour);
// Slanted bars, as on things that can hurt.
void draw_hatch(const Rect& rect, Rgb colour);

enum class Icon {
    none,
    back,
    next,
    undo,
    redo,
    help,
    close,
    check,
    plus,
    minus,
    camera,
    erase,
    pin,
    open_pin,
    search,
    menu,
    sheet
};

// Drawn in the middle of `box`, as large as its shorter side.
void draw_icon(Icon icon, const Rect& box, Rgb colour);

// Edges one pixel soft instead of one dp. Once after each ImGui window has begun.
void sharpen(const UiContext& ui);

// The part of `rect` that the current window's clipping leaves to be seen.
[[nodiscard]] Rect seen_part(const Rect& rect);

}  // namespace cotter
