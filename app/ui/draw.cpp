// See draw.h.
#include "app/ui/draw.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace cotter {

namespace {

ImDrawList& list() {
    return *ImGui::GetWindowDrawList();
}

// A corner of a plate: where it is, and which way the plate lies from it.
struct Corner {
    float x, y, right, down;
    bool is_cut;
};

std::array<Corner, 4> corners(const Rect& r, const Cuts& cuts) {
    return {Corner{r.x, r.y, 1, 1, cuts.top_left}, Corner{r.right(), r.y, -1, 1, cuts.top_right},
            Corner{r.right(), r.bottom(), -1, -1, cuts.bottom_right}, Corner{r.x, r.bottom(), 1, -1, cuts.bottom_left}};
}

// Whole pixels, and a trifle more, because a renderer may cut off fractions: neighbours must meet.
void block(float left, float top, float right, float bottom, ImU32 colour) {
    const float pixel = list()._FringeScale;
    const auto snap = [&](float at, float more) { return (std::round(at / pixel) + more) * pixel; };
    if (left < right && top < bottom)
        list().AddRectFilled({snap(left, 0.01F), snap(top, 0.01F)}, {snap(right, 0.05F), snap(bottom, 0.05F)}, colour);
}

void shape(std::array<ImVec2, 4> points, const Corner& at, ImU32 colour) {
    if (at.right * at.down < 0) std::reverse(points.begin(), points.end());  // clockwise, as ImGui's soft edges want it
    list().AddConvexPolyFilled(points.data(), 4, colour);
}

// Upright bars, and a small piece in each cut corner that reaches under them, so that no seam shows. Under an edge the
// piece ends in the edge's middle and needs no soft sides.
void fill_plate(const Rect& r, float cut, const Cuts& cuts, float edge, ImU32 colour) {
    const float top = cuts.top_left || cuts.top_right ? cut : 0;
    const float bottom = cuts.bottom_left || cuts.bottom_right ? cut : 0;
    block(r.x + (cuts.top_left ? cut : 0), r.y, r.right() - (cuts.top_right ? cut : 0), r.y + top, colour);
    block(r.x, r.y + top, r.right(), r.bottom() - bottom, colour);
    block(r.x + (cuts.bottom_left ? cut : 0), r.bottom() - bottom, r.right() - (cuts.bottom_right ? cut : 0),
          r.bottom(), colour);
    const float end = cut + edge / 2;
    const ImDrawListFlags flags = list().Flags;
    if (edge > 0) list().Flags &= ~ImDrawListFlags_AntiAliasedFill;
    for (const Corner& c : corners(r, cuts))
        if (c.is_cut)
            shape({ImVec2{c.x, c.y + c.down * end}, ImVec2{c.x + c.right * end, c.y},
                   ImVec2{c.x + c.right * (end + 2), c.y + c.down * end},
                   ImVec2{c.x + c.right * end, c.y + c.down * (end + 2)}},
                  c, colour);
    list().Flags = flags;
}

// Along the inside of the outline.
void edge_plate(const Rect& r, float cut, const Cuts& cuts, float wide, ImU32 colour) {
    const auto gap = [&](bool is_cut) { return is_cut ? cut : 0; };
    block(r.x + gap(cuts.top_left), r.y, r.right() - gap(cuts.top_right), r.y + wide, colour);
    block(r.x + gap(cuts.bottom_left), r.bottom() - wide, r.right() - gap(cuts.bottom_right), r.bottom(), colour);
    block(r.x, r.y + (cuts.top_left ? cut : wide), r.x + wide, r.bottom() - (cuts.bottom_left ? cut : wide), colour);
    block(r.right() - wide, r.y + (cuts.top_right ? cut : wide), r.right(),
          r.bottom() - (cuts.bottom_right ? cut : wide), colour);
    const float mitre = wide * 0.41421356F;  // tan 22.5°
    for (const Corner& c : corners(r, cuts))
        if (c.is_cut)
            shape({ImVec2{c.x, c.y + c.down * cut}, ImVec2{c.x + c.right * cut, c.y},
                   ImVec2{c.x + c.right * (cut + mitre), c.y + c.down * wide},
                   ImVec2{c.x + c.right * wide, c.y + c.down * (cut + mitre)}},
                  c, colour);
}

}  // namespace

// Nearly all of a plate is upright bars: a renderer without a graphics chip fills those many times faster than slanted
// shapes of the same size.
void draw_plate(const Rect& rect, const PlateLook& look) {
    if (seen_part(rect).empty()) return;
    const float cut = std::min({look.cut, rect.w / 3, rect.h / 3});
    fill_plate(rect, cut, look.cuts, std::max(0.0F, look.edge_width), ink(look.ground));
    if (look.edge_width > 0) edge_plate(rect, cut, look.cuts, look.edge_width, ink(look.edge));
}

void draw_fill(const Rect& rect, Rgb colour, int alpha) {
    block(rect.x, rect.y, rect.right(), rect.bottom(), ink(colour, alpha));
}

void draw_line(Point from, Point to, Rgb colour, float width) {
    if (from.x != to.x && from.y != to.y) return list().AddLine(vec(from), vec(to), ink(colour), width);
    const float beside = from.y == to.y ? 0 : width / 2;
    const float above = from.y == to.y ? width / 2 : 0;
    block(std::min(from.x, to.x) - beside, std::min(from.y, to.y) - above, std::max(from.x, to.x) + beside,
          std::max(from.y, to.y) + above, ink(colour));
}

void draw_witness(const Rect& rect, Rgb colour) {
    const float lean = Sizes::stripe * 0.7F;
    const std::array<ImVec2, 4> points{ImVec2{rect.x, rect.y + lean}, ImVec2{rect.x + Sizes::stripe, rect.y},
                                       ImVec2{rect.x + Sizes::stripe, rect.bottom() - lean},
                                       ImVec2{rect.x, rect.bottom()}};
    list().AddConvexPolyFilled(points.data(), 4, ink(colour));
}

void draw_ring(const Rect& rect, Rgb colour) {
    const Rect r = grown(rect, 2.5F);
    list().AddRect({r.x, r.y}, {r.right(), r.bottom()}, ink(colour), 0, 0, 3);
}

void draw_hatch(const Rect& rect, Rgb colour) {
    list().PushClipRect({rect.x, rect.y}, {rect.right(), rect.bottom()}, true);
    for (float y = rect.y - rect.w; y < rect.bottom(); y += 20) {
        const std::array<ImVec2, 4> bar{ImVec2{rect.x, y + rect.w}, ImVec2{rect.right(), y},
                                        ImVec2{rect.right(), y + 10}, ImVec2{rect.x, y + rect.w + 10}};
        list().AddConvexPolyFilled(bar.data(), 4, ink(colour));
    }
    list().PopClipRect();
}

void sharpen(const UiContext& ui) {
    list()._FringeScale = 1 / ui.px_per_dp;
}

Rect seen_part(const Rect& rect) {
    const ImVec2 low = list().GetClipRectMin();
    const ImVec2 high = list().GetClipRectMax();
    return intersection(rect, {low.x, low.y, high.x - low.x, high.y - low.y});
}

}  // namespace cotter
