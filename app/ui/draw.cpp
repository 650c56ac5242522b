// See draw.h.
#include "app/ui/draw.h"

#include <algorithm>
#include <array>

namespace cotter {

namespace {

ImDrawList& list() {
    return *ImGui::GetWindowDrawList();
}

struct Outline {
    std::array<ImVec2, 8> points;
    int count = 0;

    void add(float x, float y) { points[static_cast<std::size_t>(count++)] = {x, y}; }
};

Outline outline(const Rect& r, float cut, const Cuts& cuts) {
    Outline out;
    if (cuts.top_left)
        out.add(r.x, r.y + cut), out.add(r.x + cut, r.y);
    else
        out.add(r.x, r.y);
    if (cuts.top_right)
        out.add(r.right() - cut, r.y), out.add(r.right(), r.y + cut);
    else
        out.add(r.right(), r.y);
    if (cuts.bottom_right)
        out.add(r.right(), r.bottom() - cut), out.add(r.right() - cut, r.bottom());
    else
        out.add(r.right(), r.bottom());
    if (cuts.bottom_left)
        out.add(r.x + cut, r.bottom()), out.add(r.x, r.bottom() - cut);
    else
        out.add(r.x, r.bottom());
    return out;
}

}  // namespace

void draw_plate(const Rect& rect, const PlateLook& look) {
    if (seen_part(rect).empty()) return;
    const float cut = std::min({look.cut, rect.w / 3, rect.h / 3});
    const Outline fill = outline(rect, cut, look.cuts);
    list().AddConvexPolyFilled(fill.points.data(), fill.count, ink(look.ground));
    if (look.edge_width <= 0) return;
    const Outline line = outline(grown(rect, -look.edge_width / 2), cut, look.cuts);
    list().AddPolyline(line.points.data(), line.count, ink(look.edge), ImDrawFlags_Closed, look.edge_width);
}

void draw_fill(const Rect& rect, Rgb colour, int alpha) {
    list().AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink(colour, alpha));
}

void draw_line(Point from, Point to, Rgb colour, float width) {
    list().AddLine(vec(from), vec(to), ink(colour), width);
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
