// See sign_pad.h.
#include "app/ui/sign_pad.h"

#include <algorithm>

#include "app/ui/draw.h"
#include "app/ui/scroll.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kPadHigh = 160;
constexpr float kPen = 3;
constexpr float kLeastStep = 1.5F;              // dp between points: a still finger adds none
constexpr std::size_t kMostPointsSigned = 400;  // of one stroke; the packet keeps them all

TagPoint share(Point p, const Rect& field) {
    return {std::clamp(p.x / field.w, 0.0F, 1.0F), std::clamp(p.y / field.h, 0.0F, 1.0F)};
}

void draw_dots(const std::vector<Point>& points, Rgb colour) {
    if (points.size() == 1) draw_line({points[0].x - 1, points[0].y}, {points[0].x + 1, points[0].y}, colour, kPen);
    for (std::size_t i = 1; i < points.size(); ++i) draw_line(points[i - 1], points[i], colour, kPen);
}

void draw_stroke(const PenStroke& stroke, const Rect& field, Rgb colour) {
    std::vector<Point> points;
    for (const TagPoint& p : stroke.points)
        points.push_back({field.x + static_cast<float>(p.x) * field.w, field.y + static_cast<float>(p.y) * field.h});
    draw_dots(points, colour);
}

void take_point(std::vector<Point>& drawing, Point p) {
    const bool near =
        !drawing.empty() && std::abs(drawing.back().x - p.x) + std::abs(drawing.back().y - p.y) < kLeastStep;
    if (!near && drawing.size() < kMostPointsSigned) drawing.push_back(p);
}

}  // namespace

std::optional<PenStroke> sign_pad(UiContext& ui, const Name& name, std::span<const PenStroke> strokes,
                                  SignPadState& state) {
    const Laid hint = lay_text(ui, name.label, Type::small, room() - 24);
    const Rect field = take_space(room(), std::max(kPadHigh, hint.height + 24));
    const AreaInput input = free_area(ui, name, field);
    for (const Gesture& g : ui.gestures)  // what a cancelled drag left
        if (g.kind == GestureKind::press) state.drawing.clear();
    std::optional<PenStroke> done;
    if (input.tapped) done = PenStroke{{share(*input.tapped, field)}};
    if (input.dragging) {
        if (state.drawing.empty()) state.drawing.push_back(input.start);
        take_point(state.drawing, input.at);
    }
    if (input.broken) state.drawing.clear();
    if (input.drag_ended && !state.drawing.empty()) {
        done.emplace();
        for (const Point p : state.drawing) done->points.push_back(share(p, field));
        state.drawing.clear();
    }
    const Paint& paint = ui.paint(Tone::plate);
    draw_plate(field, {paint.ground, paint.text});
    draw_line({field.x + 16, field.bottom() - 40}, {field.right() - 16, field.bottom() - 40}, paint.text, 1);
    if (strokes.empty() && state.drawing.empty() && !done)
        draw_text(ui, hint, {field.x + 12, field.y + 8, field.w - 24, hint.height},
                  {paint.text, paint.ground, Align::left, false, input.id});
    for (const PenStroke& stroke : strokes) draw_stroke(stroke, field, paint.text);
    std::vector<Point> here;
    for (const Point p : state.drawing) here.push_back({field.x + p.x, field.y + p.y});
    draw_dots(here, paint.text);
    return done;
}

}  // namespace cotter
