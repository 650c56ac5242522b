// See grade_mark.h.
#include "app/ui/grade_mark.h"

#include <algorithm>
#include <array>

#include "app/ui/draw.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

// A sign's field in the middle of a box.
struct Field {
    ImDrawList& list;
    float unit;
    Point origin;
    ImU32 tint, ink;

    [[nodiscard]] ImVec2 at(const SignPoint& p) const { return {origin.x + p.x * unit, origin.y + p.y * unit}; }
};

void draw_part(const Field& f, const SignPart& part) {
    if (part.points.size() == 2)
        return f.list.AddLine(f.at(part.points[0]), f.at(part.points[1]), f.ink, part.width * f.unit);
    std::array<ImVec2, kMostSignPoints> corners{};
    int count = 0;
    for (const SignPoint& p : part.points) corners.at(static_cast<std::size_t>(count++)) = f.at(p);
    if (part.ink == SignInk::line)
        f.list.AddPolyline(corners.data(), count, f.ink, ImDrawFlags_Closed, part.width * f.unit);
    else
        f.list.AddConvexPolyFilled(corners.data(), count, part.ink == SignInk::tint ? f.tint : f.ink);
}

}  // namespace

void draw_sign(Sign sign, const Rect& box, Rgb writing) {
    if (seen_part(box).empty()) return;
    const float unit = std::min(box.w, box.h) / kSignField;
    const float half = kSignField / 2 * unit;
    const Field field{*ImGui::GetWindowDrawList(),
                      unit,
                      {box.middle().x - half, box.middle().y - half},
                      ink(tint_of(sign)),
                      ink(writing)};
    for (const SignPart& part : parts_of(sign)) draw_part(field, part);
}

void grade_plate(UiContext& ui, Grade grade) {
    const Paint& paint = ui.paint(tone_of(grade));
    const Laid word = lay_text(ui, name_of(grade), Type::bold, ImGui::GetContentRegionAvail().x - 3 * Sizes::pad - 24);
    const float mark = 24 * ui.sizes.type;
    const Rect rect = take_space(mark + word.width + 3 * Sizes::gap + 4, std::max(mark, word.height) + 2 * Sizes::gap);
    draw_plate(rect, {paint.ground, ui.paint(Tone::page).text, Sizes::edge, Sizes::cut, kPlateCuts});
    draw_sign(sign_of(grade), {rect.x + Sizes::gap, rect.y, mark, rect.h}, paint.text);
    const Rect box{rect.x + mark + 2 * Sizes::gap, rect.y, word.width + 2, rect.h};
    draw_text(ui, word, box, {paint.text, paint.ground});
}

}  // namespace cotter
