// See nut_ring.h.
// Method: nuts on a circle as large as there is room; each as large as its neighbours leave, with a gap. A ring of
// more nuts than fit by the least target is made larger than `most`.
#include "app/ui/nut_ring.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "app/ui/draw.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kMostNut = 76;
constexpr float kTick = 20;
constexpr float kApart = 10;  // a little more than the least gap

Point on_circle(const Point& middle, float radius, int index, int nuts) {
    const float angle = 2 * std::numbers::pi_v<float> * static_cast<float>(index) / static_cast<float>(nuts);
    return {middle.x + radius * std::sin(angle), middle.y - radius * std::cos(angle)};
}

// Between neighbours, along the axis in which they are farther apart.
float clearance(float radius, int nuts) {
    float least = 2 * radius;
    for (int i = 0; nuts > 1 && i < nuts; ++i) {
        const Point a = on_circle({}, radius, i, nuts);
        const Point b = on_circle({}, radius, i + 1, nuts);
        least = std::min(least, std::max(std::abs(a.x - b.x), std::abs(a.y - b.y)));
    }
    return least;
}

struct Ring {
    float radius = 0, nut = 0;  // dp: to the nuts' middles; a nut's side
    [[nodiscard]] float side() const { return 2 * radius + nut; }
};

Ring plan_ring(int nuts, float most) {
    Ring ring;
    for (ring.radius = (most - kMostNut) / 2;; ring.radius += 8) {
        ring.nut = std::min(kMostNut, clearance(ring.radius, nuts) - kApart);
        if (ring.nut >= Sizes::target) return ring;
    }
}

// A hexagon that lies on its flat: an upright block and the two ends, which reach a little under it.
void fill_hexagon(ImDrawList& list, const Point& middle, float radius, Rgb colour) {
    const float half = radius * 0.8660254F;  // sin 60°
    draw_fill({middle.x - radius / 2, middle.y - half, radius, 2 * half}, colour);
    for (const float way : {1.0F, -1.0F}) {
        const float end = way * radius / 2;
        const std::array<ImVec2, 5> points{
            ImVec2{middle.x + way * radius, middle.y}, ImVec2{middle.x + end, middle.y + way * half},
            ImVec2{middle.x + end - way * 2, middle.y + way * half},
            ImVec2{middle.x + end - way * 2, middle.y - way * half}, ImVec2{middle.x + end, middle.y - way * half}};
        list.AddConvexPolyFilled(points.data(), 5, ink(colour));
    }
}

struct NutLook {
    bool clicked = false, next = false, finished = false;
};

void draw_nut(UiContext& ui, int nut, const Rect& rect, const Press& press, const NutLook& look) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Paint& paint = ui.paint(look.next ? Tone::strong : look.clicked ? Tone::chosen : Tone::plate);
    const float radius = rect.w / 2;
    const ImVec2 middle = vec(rect.middle());
    fill_hexagon(list, rect.middle(), radius, paint.ground);
    list.AddNgon(middle, radius - 1, ink(paint.edge), 6, press.held ? 5.0F : 2.5F);
    if (look.finished)  // the stripe of paint over nut and stud
        list.AddLine({middle.x - radius * 0.8F, middle.y + radius * 0.55F},
                     {middle.x + radius * 0.8F, middle.y + radius * 0.55F}, ink(ui.theme.witness), 5);
    else if (look.clicked)
        draw_icon(Icon::check, {middle.x - kTick / 2, middle.y + radius * 0.3F, kTick, kTick}, paint.text);
    if (press.focused) draw_ring(rect, ui.theme.witness);
    const std::string text = fmt::format("{}", nut);
    const float side = rect.w * 0.66F;
    const Laid laid = lay_text(ui, text, ui.sizes.type > 1 ? Type::bold : Type::title, side);
    // Above the tick, as far as there is room.
    const float up = look.clicked && !look.finished ? std::clamp(rect.h - 4 - laid.height, 0.0F, 14.0F) : 0;
    draw_text(ui, laid, {rect.middle().x - side / 2, rect.y + 2, side, rect.h - 4 - up},
              {paint.text, paint.ground, Align::middle, true, press.id});
}

void draw_middle(UiContext& ui, const NutRingSpec& spec, const Point& middle, float room_there) {
    const Paint& page = ui.paint(Tone::page);
    const Laid big = lay_text(ui, spec.middle, Type::title, room_there);
    const Laid small = lay_text(ui, spec.under, Type::small, room_there);
    const float height = big.height + small.height;
    const Rect top{middle.x - room_there / 2, middle.y - height / 2, room_there, big.height};
    draw_text(ui, big, top, {page.text, page.ground, Align::middle, true, 0});
    draw_text(ui, small, {top.x, top.bottom(), room_there, small.height},
              {ui.theme.second, page.ground, Align::middle, true, 0});
}

}  // namespace

std::optional<int> nut_ring(UiContext& ui, std::string_view key, const NutRingSpec& spec) {
    std::optional<int> tapped;
    const IdScope scope(key);
    const float width = room();
    const Ring ring = plan_ring(spec.nuts, std::min(width, spec.most));
    const Rect place = take_space(width, ring.side());
    const Point middle = place.middle();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddCircle(vec(middle), ring.radius, ink(ui.paint(Tone::page).edge), 96, 2);
    for (int nut = 1; nut <= spec.nuts; ++nut) {
        const Point at = on_circle(middle, ring.radius, nut - 1, spec.nuts);
        const Rect rect{at.x - ring.nut / 2, at.y - ring.nut / 2, ring.nut, ring.nut};
        const bool clicked = std::find(spec.clicked.begin(), spec.clicked.end(), nut) != spec.clicked.end();
        const std::string label = fmt::format("Nut {}", nut);
        const Press press = press_area(ui, label, rect,
                                       {Role::button, !clicked, clicked, false,
                                        clicked            ? "clicked"
                                        : nut == spec.next ? "next"
                                                           : ""});
        draw_nut(ui, nut, rect, press, {clicked, nut == spec.next, clicked && spec.finished});
        if (press.tapped) tapped = nut;
    }
    const float inner = 2 * (ring.radius - ring.nut / 2) - 24;
    if (inner > 60) draw_middle(ui, spec, middle, inner * 0.8F);
    return tapped;
}

}  // namespace cotter
