// See grade_mark.h.
#include "app/ui/grade_mark.h"

#include <algorithm>
#include <array>

#include "app/ui/draw.h"
#include "app/ui/text.h"
#include "core/survey/grade_sign.h"

namespace cotter {

namespace {

// A sign's field in the middle of a box.
struct Field {
    ImDrawList& list;
    float unit;
    Point origin;
    ImU32 fill, line;

    [[nodiscard]] ImVec2 at(const SignPoint& p) const { return {origin.x + p.x * unit, origin.y + p.y * unit}; }
};

void draw_circle(const Field& f, const SignPart& part) {
    constexpr int kPieces = 24;
    const ImVec2 middle = f.at(part.points[0]);
    if (part.filled) f.list.AddCircleFilled(middle, part.radius * f.unit, f.fill, kPieces);
    if (part.line > 0) f.list.AddCircle(middle, part.radius * f.unit, f.line, kPieces, part.line * f.unit);
}

void draw_part(const Field& f, const SignPart& part) {
    if (part.radius > 0) return draw_circle(f, part);
    if (part.points.size() == 2)
        return f.list.AddLine(f.at(part.points[0]), f.at(part.points[1]), f.line, part.line * f.unit);
    std::array<ImVec2, 12> corners{};
    int count = 0;
    for (const SignPoint& p : part.points) corners.at(static_cast<std::size_t>(count++)) = f.at(p);
    if (part.filled) f.list.AddConvexPolyFilled(corners.data(), count, f.fill);
    if (part.line > 0) f.list.AddPolyline(corners.data(), count, f.line, ImDrawFlags_Closed, part.line * f.unit);
}

}  // namespace

void draw_grade_mark(Grade grade, const Rect& box, Rgb fill, Rgb outline) {
    if (seen_part(box).empty()) return;
    const float unit = std::min(box.w, box.h) / kSignField;
    const float half = kSignField / 2 * unit;
    const Field field{
        *ImGui::GetWindowDrawList(), unit, {box.middle().x - half, box.middle().y - half}, ink(fill), ink(outline)};
    for (const SignPart& part : parts_of(sign_of(grade))) draw_part(field, part);
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
