// See level_glass.h.
// Method: a drawing on the left, the fluid filled up to its mark; beside it the four bands as plates at the heights
// that they mean. The drawing is no target itself: a finger in a glove needs the plates.
#include "app/ui/level_glass.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "app/ui/draw.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

struct Band {
    LevelMark mark;
    std::string_view words;
    float fill;  // 0…1 of the drawing's height
};
constexpr std::array kBands{Band{LevelMark::above, "above", 0.78F}, Band{LevelMark::at, "at the line", 0.5F},
                            Band{LevelMark::below, "below", 0.26F}, Band{LevelMark::empty, "empty", 0}};

float fill_of(const std::optional<LevelMark>& mark) {
    for (const Band& band : kBands)
        if (mark == band.mark) return band.fill;
    return 0;
}

// The part of a circle below `y`, as bars a dp high.
void fill_circle(const Point& middle, float radius, float y, Rgb colour) {
    for (float at = std::max(y, middle.y - radius); at < middle.y + radius; at += 1) {
        const float half = std::sqrt(std::max(0.0F, radius * radius - (at - middle.y) * (at - middle.y)));
        draw_fill({middle.x - half, at, 2 * half, 1.5F}, colour);
    }
}

void draw_glass(UiContext& ui, const LevelGlassSpec& spec, const Rect& rect) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Paint& paint = ui.paint(Tone::plate);
    const Rgb fluid = ui.theme.witness;
    const float radius = std::min(rect.w, rect.h) / 2 - 3;
    const Point middle = rect.middle();
    const Rect tank{middle.x - radius, middle.y - radius, 2 * radius, 2 * radius};
    const float top = tank.bottom() - fill_of(spec.mark) * tank.h;
    if (spec.round) {
        fill_circle(middle, radius, middle.y - radius, paint.ground);
        if (fill_of(spec.mark) > 0) fill_circle(middle, radius, top, fluid);
        list.AddCircle(vec(middle), radius, ink(paint.text), 64, 4);
    } else {
        draw_fill(tank, paint.ground);
        draw_fill({tank.x, top, tank.w, tank.bottom() - top}, fluid);
        list.AddRect({tank.x, tank.y}, {tank.right(), tank.bottom()}, ink(paint.text), 0, 0, 4);
    }
    draw_line({tank.x - 3, middle.y}, {tank.right() + 3, middle.y}, paint.text, 4);  // the line itself
    draw_line({tank.x - 3, middle.y}, {tank.right() + 3, middle.y}, paint.ground, 1.5F);
}

bool draw_band(UiContext& ui, const LevelGlassSpec& spec, const Band& band, const Rect& rect) {
    const std::string label = fmt::format("{}: {}", spec.title, band.words);
    const bool chosen = spec.mark == band.mark;
    const Press press = press_area(ui, {label, band.words}, rect, {Role::choice, true, chosen, false, {}});
    const Paint& paint = ui.paint(chosen ? Tone::chosen : Tone::plate);
    draw_press_plate(ui, rect, press, paint, kChipCuts);
    if (chosen) draw_witness({rect.x + 3, rect.y + 4, Sizes::stripe, rect.h - 8}, ui.theme.witness);
    const Laid laid = lay_text(ui, band.words, Type::bold, rect.w - 28);
    draw_text(ui, laid, {rect.x + 14, rect.y, rect.w - 28, rect.h},
              {paint.text, paint.ground, Align::left, true, press.id});
    return press.tapped;
}

}  // namespace

std::optional<LevelMark> level_glass(UiContext& ui, std::string_view key, const LevelGlassSpec& spec) {
    const IdScope scope(key);
    std::optional<LevelMark> tapped;
    const Paint& page = ui.paint(Tone::page);
    const float width = room();
    const Laid title = lay_text(ui, spec.title, Type::bold, width);
    draw_text(ui, title, take_space(width, title.height), {page.text, page.ground});
    const float words = std::max(110.0F, text_width(ui, kBands[1].words, Type::bold) + 30);
    const float drawing = std::clamp(width - words - Sizes::pad, 0.0F, 220.0F);
    const float band = std::max(Sizes::target + 4, line_height(ui, Type::bold) + 16);
    const float height = 4 * band + 3 * Sizes::gap;
    const Rect place = take_space(width, height);
    const bool drawn = drawing >= 70;
    if (drawn) draw_glass(ui, spec, {place.x, place.y, drawing, height});
    const float left = drawn ? place.x + drawing + Sizes::pad : place.x;
    for (std::size_t i = 0; i < kBands.size(); ++i) {
        const Rect rect{left, place.y + static_cast<float>(i) * (band + Sizes::gap), place.right() - left, band};
        if (draw_band(ui, spec, kBands[i], rect)) tapped = kBands[i].mark;
    }
    return tapped;
}

}  // namespace cotter
