// See grade_mark.h.
#include "app/ui/grade_mark.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <numbers>

#include "app/ui/draw.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

// A field of 24 × 24 in the middle of the box.
struct Field {
    ImDrawList& list;
    float unit;
    Point origin;
    ImU32 fill, line;

    [[nodiscard]] ImVec2 at(float x, float y) const { return {origin.x + x * unit, origin.y + y * unit}; }
    void shape(std::initializer_list<Point> points, bool filled = true) const {
        std::array<ImVec2, 12> corners{};
        int count = 0;
        for (const Point& p : points) corners[static_cast<std::size_t>(count++)] = at(p.x, p.y);
        if (filled) list.AddConvexPolyFilled(corners.data(), count, fill);
        list.AddPolyline(corners.data(), count, line, ImDrawFlags_Closed, 2 * unit);
    }
};

void washer(const Field& f) {
    f.list.AddCircleFilled(f.at(12, 12), 7.5F * f.unit, f.fill, 24);
    f.list.AddCircle(f.at(12, 12), 7.5F * f.unit, f.line, 24, 2 * f.unit);
    f.list.AddLine(f.at(1.5F, 12), f.at(22.5F, 12), f.line, 4.4F * f.unit);
}

void worn_block(const Field& f) {
    f.list.AddRectFilled(f.at(4, 12), f.at(20, 21), f.fill);
    f.shape({{4, 3}, {20, 3}, {20, 21}, {4, 21}}, false);
    f.list.AddLine(f.at(4, 12), f.at(20, 12), f.line, 2 * f.unit);
}

// A hexagon whose upper right piece is gone, down to the middle.
void broken_nut(const Field& f) {
    std::array<ImVec2, 7> line{};
    for (int i = 0; i < 6; ++i) {
        const float angle = std::numbers::pi_v<float> / 3 * static_cast<float>(i);
        line[static_cast<std::size_t>(i)] = f.at(12 + 10.5F * std::cos(angle), 12 + 10.5F * std::sin(angle));
    }
    line[6] = f.at(12, 12);
    for (std::size_t i = 0; i < 5; ++i) f.list.AddTriangleFilled(line[6], line[i], line[i + 1], f.fill);
    f.list.AddPolyline(line.data(), 7, f.line, ImDrawFlags_Closed, 2 * f.unit);
}

void apart(const Field& f) {
    f.shape({{1.5F, 3}, {10.5F, 12}, {1.5F, 21}});
    f.shape({{22.5F, 3}, {13.5F, 12}, {22.5F, 21}});
}

}  // namespace

void draw_grade_mark(Grade grade, const Rect& box, Rgb fill, Rgb outline) {
    if (seen_part(box).empty()) return;
    const float unit = std::min(box.w, box.h) / 24;
    const Field field{*ImGui::GetWindowDrawList(),
                      unit,
                      {box.middle().x - 12 * unit, box.middle().y - 12 * unit},
                      ink(fill),
                      ink(outline)};
    switch (grade) {
        case Grade::serviceable:
            washer(field);
            break;
        case Grade::watch:
            worn_block(field);
            break;
        case Grade::repair:
            broken_nut(field);
            break;
        case Grade::do_not_tow:
            apart(field);
            break;
    }
}

void grade_plate(UiContext& ui, Grade grade) {
    const Paint& paint = ui.paint(tone_of(grade));
    const Laid word = lay_text(ui, name_of(grade), Type::bold, ImGui::GetContentRegionAvail().x - 3 * Sizes::pad - 24);
    const float mark = 24 * ui.sizes.type;
    const Rect rect = take_space(mark + word.width + 3 * Sizes::gap + 4, std::max(mark, word.height) + 2 * Sizes::gap);
    draw_plate(rect, {paint.ground, ui.paint(Tone::page).text, Sizes::edge, Sizes::cut, kPlateCuts});
    draw_grade_mark(grade, {rect.x + Sizes::gap, rect.y, mark, rect.h}, paint.ground, paint.text);
    const Rect box{rect.x + mark + 2 * Sizes::gap, rect.y, word.width + 2, rect.h};
    draw_text(ui, word, box, {paint.text, paint.ground});
}

}  // namespace cotter
