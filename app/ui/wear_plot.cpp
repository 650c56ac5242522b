// See wear_plot.h.
// Method: the drawing alone in its frame, so that no words lie on lines; the words of the upright axis above and below
// it on the left, those of the way in three boxes under it. The wedge runs from the last point to the early and the
// late end on the limit.
#include "app/ui/wear_plot.h"

#include <algorithm>
#include <array>

#include "app/ui/draw.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kHeight = 150, kInset = 14, kDot = 5;

class Drawing {
public:
    Drawing(const WearPlotSpec& spec, const Rect& rect) : rect_(grown(rect, -kInset)) {
        most_ = std::max(spec.end_late, spec.points.back().way);
        top_ = spec.limit;
        bottom_ = spec.limit;
        for (const WearPoint& p : spec.points) {
            top_ = std::max(top_, p.thickness);
            bottom_ = std::min(bottom_, p.thickness);
        }
        most_ = most_ > 0 ? most_ : 1;
        if (top_ <= bottom_) top_ = bottom_ + 1;
    }
    [[nodiscard]] Point at(double way, double thickness) const {
        const auto x = static_cast<float>(std::clamp(way / most_, 0.0, 1.0));
        const auto y = static_cast<float>((top_ - thickness) / (top_ - bottom_));
        return {rect_.x + x * rect_.w, rect_.y + y * rect_.h};
    }

private:
    Rect rect_;
    double most_ = 1, top_ = 1, bottom_ = 0;
};

void dashes(Point from, Point to, Rgb colour) {
    constexpr float kDash = 8;
    for (float x = from.x; x < to.x; x += 2 * kDash)
        draw_line({x, from.y}, {std::min(x + kDash, to.x), from.y}, colour, 3);
}

void draw_lines(const UiContext& ui, const WearPlotSpec& spec, const Rect& rect) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Paint& paint = ui.paint(Tone::plate);
    const Drawing drawing(spec, rect);
    draw_plate(rect, {paint.ground, paint.edge, Sizes::edge, 0, kNoCuts});
    const WearPoint& last = spec.points.back();
    const Point now = drawing.at(last.way, last.thickness);
    const Point early = drawing.at(spec.end_early, spec.limit);
    const Point late = drawing.at(spec.end_late, spec.limit);
    list.AddTriangleFilled(vec(now), vec(late), vec(early), ink(ui.theme.witness, 90));
    draw_line(now, early, paint.text, 1.5F);
    draw_line(now, late, paint.text, 1.5F);
    draw_line(now, drawing.at(spec.end, spec.limit), paint.text, 3);
    dashes({rect.x + 4, early.y}, {rect.right() - 4, early.y}, ui.paint(Tone::do_not_tow).ground);
    Point before = drawing.at(spec.points.front().way, spec.points.front().thickness);
    for (const WearPoint& p : spec.points) {
        const Point at = drawing.at(p.way, p.thickness);
        draw_line(before, at, paint.text, 3);
        list.AddCircleFilled(vec(at), kDot + 1, ink(paint.text), 24);
        before = at;
    }
}

void line_of(UiContext& ui, std::string_view text) {
    const Laid laid = lay_text(ui, text, Type::small, room());
    const Rect rect = take_space(room(), laid.height);
    draw_text(ui, laid, rect, {ui.theme.second, ui.paint(Tone::page).ground, Align::left, false, 0});
}

}  // namespace

void wear_plot(UiContext& ui, const WearPlotSpec& spec) {
    if (spec.points.size() < 2) return;
    line_of(ui, spec.top);
    draw_lines(ui, spec, take_space(room(), kHeight));
    line_of(ui, spec.bottom);
    const std::array texts{spec.first, spec.last, spec.ends};
    const float width = (room() - 2 * Sizes::gap) / 3;
    std::array<Laid, 3> laid;
    float height = 0;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        laid[i] = lay_text(ui, texts[i], Type::small, width);
        height = std::max(height, laid[i].height);
    }
    const Rect all = take_space(room(), height);
    constexpr std::array kAligns{Align::left, Align::middle, Align::right};
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const Rect box{all.x + static_cast<float>(i) * (width + Sizes::gap), all.y, width, height};
        draw_text(ui, laid[i], box, {ui.theme.second, ui.paint(Tone::page).ground, kAligns[i], false, 0});
    }
}

}  // namespace cotter
