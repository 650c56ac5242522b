// See marked_photo.h.
// Method: the area is a free area. Each frame, pinch and wheel change the zoom first; then a drag is given to the first
// who can use it: a chosen mark under its start, the drawing tool, the picture itself.
#include "app/ui/marked_photo.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/ui/draw.h"
#include "app/ui/grade_mark.h"
#include "app/ui/photo.h"
#include "app/ui/press.h"
#include "app/ui/scroll.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kLine = 4;  // dp, of a mark
constexpr Rgb kDark{12, 12, 12};
constexpr Rgb kLight{255, 255, 255};

Rect take_area(float width, float height, float most) {
    const float whole = width > 0 ? room() * height / width : most;
    return take_space(room(), std::clamp(whole, std::min(220.0F, most), most));
}

void draw_zoomed(UiContext& ui, std::string_view id, const Rect& area, const Rect& picture) {
    const Rect seen = intersection(area, picture);
    if (seen.empty()) return;
    draw_picture_part(
        ui, id, seen,
        {(seen.x - picture.x) / picture.w, (seen.y - picture.y) / picture.h, seen.w / picture.w, seen.h / picture.h});
}

// Lines are drawn twice: a rim, dark or light, and the mark's color in it, so that they show on any picture.
class MarkPainter {
public:
    MarkPainter(const PhotoMark& mark, const Rect& picture)
        : mark_(mark),
          picture_(picture),
          list_(ImGui::GetWindowDrawList()),
          colour_(mark.grade ? tint_of(sign_of(*mark.grade)) : kLight) {}

    void draw() const {
        if (mark_.points.empty()) return;
        constexpr double kDarkColor = 0.1;  // luminance: a dark rim would not be seen round it
        shape(luminance(colour_) < kDarkColor ? kLight : kDark, kLine + 4);
        shape(colour_, kLine);
    }

private:
    void shape(Rgb colour, float width) const {
        const Point first = place_of(picture_, mark_.points.front());
        const Point last = place_of(picture_, mark_.points.back());
        switch (mark_.shape) {
            case TagShape::point:
                list_->AddCircle(vec(first), 15, ink(colour), 0, width);
                list_->AddCircleFilled(vec(first), width * 0.7F, ink(colour));
                return;
            case TagShape::box:
                list_->AddRect(vec(first), vec(last), ink(colour), 0, 0, width);
                return;
            case TagShape::arrow:
                return arrow(first, last, colour, width);
            case TagShape::stroke:
                return stroke(colour, width);
        }
    }

    void arrow(Point tail, Point tip, Rgb colour, float width) const {
        const float way = std::max(1.0F, std::hypot(tip.x - tail.x, tip.y - tail.y));
        const Point along{(tip.x - tail.x) / way, (tip.y - tail.y) / way};
        const float head = 20;
        const float grow = (width - kLine) / 2;
        const Point neck{tip.x - along.x * head * 0.8F, tip.y - along.y * head * 0.8F};
        list_->AddLine(vec(tail), vec(neck), ink(colour), width);
        const auto wing = [&](float side) {
            const float back = head + grow;
            const float out = (head * 0.55F + grow) * side;
            return ImVec2{tip.x - along.x * back - along.y * out, tip.y - along.y * back + along.x * out};
        };
        list_->AddTriangleFilled({tip.x + along.x * grow * 2, tip.y + along.y * grow * 2}, wing(1), wing(-1),
                                 ink(colour));
    }

    void stroke(Rgb colour, float width) const {
        std::vector<ImVec2> line;
        for (const TagPoint& p : mark_.points) line.push_back(vec(place_of(picture_, p)));
        list_->AddPolyline(line.data(), static_cast<int>(line.size()), ink(colour), 0, width);
    }

    const PhotoMark& mark_;
    const Rect& picture_;
    ImDrawList* list_;
    Rgb colour_;
};

// Number and grade of a mark on a small plate near it, moved off those that are there already.
void draw_badge(UiContext& ui, const PhotoMark& mark, const Rect& area, const Rect& picture, bool chosen,
                std::vector<Rect>& taken) {
    const Point at = badge_place(mark, picture);
    if (mark.number == 0 || !area.contains(at)) return;
    const Paint& paint = ui.paint(chosen ? Tone::chosen : Tone::plate);
    const std::string text = fmt::format("{}", mark.number);
    const Laid laid = lay_text(ui, text, Type::bold, 100);
    const float side = std::max(24.0F, laid.height);
    Rect box{at.x + 10, at.y - side - 14, laid.width + side + 12, side + 4};
    const auto hits = [&] {
        return std::any_of(taken.begin(), taken.end(), [&](const Rect& r) { return !intersection(r, box).empty(); });
    };
    const auto hold = [&] {
        box.x = std::clamp(box.x, area.x + 2, std::max(area.x + 2, area.right() - box.w - 2));
        box.y = std::clamp(box.y, area.y + 2, std::max(area.y + 2, area.bottom() - box.h - 2));
    };
    hold();
    for (int n = 0; hits() && n < 24; ++n) {
        box.y += box.h + 2;
        if (box.bottom() > area.bottom() - 2) {
            box.y = area.y + 2;
            box.x += box.w + 2;
        }
    }
    if (hits() || !inside(box, area)) return;  // its finding stands in the list below
    taken.push_back(box);
    draw_plate(box, {paint.ground, paint.text, Sizes::edge, 6, {true, false, true, false}});
    if (mark.grade) draw_sign(sign_of(*mark.grade), {box.x + 4, box.y + 2, side - 2, side}, paint.text);
    draw_text(ui, laid, {box.x + side + 4, box.y, laid.width + 2, box.h}, {paint.text, paint.ground});
}

void draw_handles(const UiContext& ui, const PhotoMark& mark, const Rect& picture) {
    for (const Point& at : handles_of(mark, picture)) {
        ImDrawList* list = ImGui::GetWindowDrawList();
        list->AddCircleFilled(vec(at), 13, ink(kDark));
        list->AddCircleFilled(vec(at), 11, ink(ui.theme.witness));
        list->AddCircleFilled(vec(at), 4, ink(kDark));
    }
}

std::optional<PhotoMark> finished(MarkedPhotoState& state, const Rect& picture) {
    PhotoMark mark = std::exchange(state.drawing, {});
    if (!large_enough(mark, picture)) return std::nullopt;
    return mark;
}

void draw_by_finger(MarkTool tool, PhotoMark& mark, const Rect& picture, Point start, Point at) {
    constexpr TagShape kShapes[]{TagShape::point, TagShape::point, TagShape::box, TagShape::arrow, TagShape::stroke};
    mark.shape = kShapes[static_cast<int>(tool)];
    if (tool != MarkTool::stroke) {
        mark.points = {spot_of(picture, start), spot_of(picture, at)};
        return;
    }
    if (mark.points.empty()) mark.points.push_back(spot_of(picture, start));
    add_to_stroke(mark.points, picture, at);
}

// One frame of fingers on the picture.
class Hand {
public:
    Hand(const MarkedPhotoSpec& spec, MarkedPhotoState& state, const Rect& area, const AreaInput& input)
        : spec_(spec), state_(state), area_(area), input_(input) {}

    MarkedPhotoAnswer act() {
        if (input_.zoom != 1) zoom(input_.zoom);
        if (input_.broken) {
            state_.drawing = {};
            state_.grip.reset();
            return std::move(answer_);
        }
        picture_ = picture_rect(area_, spec_.width, spec_.height, state_.zoom);
        if (input_.dragging || input_.drag_ended) drag();
        if (input_.tapped) tap(on_screen(*input_.tapped));
        answer_.held = input_.long_pressed.has_value();
        return std::move(answer_);
    }

private:
    [[nodiscard]] Point on_screen(Point p) const { return {p.x + area_.x, p.y + area_.y}; }
    [[nodiscard]] bool draws() const { return spec_.tool != MarkTool::look && spec_.tool != MarkTool::point; }

    void zoom(float factor) {
        state_.drawing = {};
        state_.zoom = zoomed(area_, spec_.width, spec_.height, state_.zoom, factor, on_screen(input_.at), input_.by);
    }

    void drag() {
        const Point start = on_screen(input_.start);
        const Point at = on_screen(input_.at);
        const Point way{at.x - start.x, at.y - start.y};
        if (!state_.grip && spec_.chosen && state_.drawing.points.empty()) {
            state_.before = spec_.marks[*spec_.chosen];
            state_.grip = grip_at(state_.before, picture_, start);
        }
        if (state_.grip && spec_.chosen) {
            state_.drawing = state_.before;
            state_.drawing.points = dragged(state_.before, *state_.grip, picture_, way);
            if (!input_.drag_ended) return;
            answer_.moved = std::exchange(state_.drawing, {}).points;
            state_.grip.reset();
            return;
        }
        if (!draws()) return move(input_.by);
        draw_by_finger(spec_.tool, state_.drawing, picture_, start, at);
        if (input_.drag_ended) answer_.drawn = finished(state_, picture_);
    }

    void move(Point by) {
        state_.zoom = zoomed(area_, spec_.width, spec_.height, state_.zoom, 1, area_.middle(), by);
        picture_ = picture_rect(area_, spec_.width, spec_.height, state_.zoom);
    }

    void tap(Point at) {
        answer_.tapped = mark_at(spec_.marks, picture_, at);
        if (answer_.tapped) return;
        if (spec_.tool == MarkTool::point && !spec_.chosen && picture_.contains(at))
            answer_.drawn = PhotoMark{TagShape::point, {spot_of(picture_, at)}, {}, 0};
        else
            answer_.tapped_beside = true;
    }

    const MarkedPhotoSpec& spec_;
    MarkedPhotoState& state_;
    const Rect& area_;
    const AreaInput& input_;
    Rect picture_;
    MarkedPhotoAnswer answer_;
};

void draw_marks_over(UiContext& ui, const MarkedPhotoSpec& spec, const MarkedPhotoState& state, const Rect& area,
                     const Rect& picture) {
    const bool dragging = state.grip && spec.chosen && !state.drawing.points.empty();
    std::vector<PhotoMark> marks(spec.marks.begin(), spec.marks.end());
    if (dragging) marks[*spec.chosen].points = state.drawing.points;
    for (const PhotoMark& mark : marks) MarkPainter(mark, picture).draw();
    if (spec.begun != nullptr) MarkPainter(*spec.begun, picture).draw();
    if (!dragging) MarkPainter(state.drawing, picture).draw();
    if (spec.chosen) draw_handles(ui, marks[*spec.chosen], picture);
    std::vector<Rect> taken;  // numbers over all lines
    for (std::size_t i = 0; i < marks.size(); ++i) draw_badge(ui, marks[i], area, picture, spec.chosen == i, taken);
}

}  // namespace

MarkedPhotoAnswer marked_photo(UiContext& ui, const Name& name, const MarkedPhotoSpec& spec, MarkedPhotoState& state,
                               float most) {
    const Rect area = take_area(spec.width, spec.height, most);
    const AreaInput input = free_area(ui, name, area);
    for (const Gesture& g : ui.gestures)  // what a cancelled drag left
        if (g.kind == GestureKind::press) state.drawing = {}, state.grip.reset();
    MarkedPhotoAnswer answer = Hand(spec, state, area, input).act();
    const Rect picture = picture_rect(area, spec.width, spec.height, state.zoom);
    draw_fill(area, ui.paint(Tone::off).ground);
    ImGui::PushClipRect({area.x, area.y}, {area.right(), area.bottom()}, true);
    draw_zoomed(ui, spec.picture, area, picture);
    draw_marks_over(ui, spec, state, area, picture);
    ImGui::PopClipRect();
    return answer;
}

namespace {

// A word on a plate of its own in a corner of a picture.
void draw_caption(UiContext& ui, std::string_view text, const Rect& area, bool right) {
    const Laid laid = lay_text(ui, text, Type::bold, area.w / 2 - 24);
    const float width = laid.width + 18;
    const Rect box{right ? area.right() - width - 6 : area.x + 6, area.y + 6, width, laid.height + 8};
    const Paint& paint = ui.paint(Tone::plate);
    draw_plate(box, {paint.ground, paint.text, Sizes::edge, 6, {true, false, true, false}});
    draw_text(ui, laid, {box.x + 8, box.y, laid.width + 2, box.h}, {paint.text, paint.ground});
}

void draw_divider(const UiContext& ui, float x, const Rect& area) {
    draw_line({x, area.y}, {x, area.bottom()}, kDark, 6);
    draw_line({x, area.y}, {x, area.bottom()}, ui.theme.witness, 3);
    const Rect knob{x - 16, area.middle().y - 28, 32, 56};
    draw_plate(knob, {ui.theme.witness, kDark, Sizes::edge, 8, {true, true, true, true}});
    for (const float off : {-5.0F, 5.0F}) draw_line({x + off, knob.y + 16}, {x + off, knob.bottom() - 16}, kDark, 3);
}

}  // namespace

void two_photos(UiContext& ui, const Name& name, const TwoPhotosSpec& spec, MarkedPhotoState& state, float most) {
    const Rect area = take_area(spec.before_width, spec.before_height, most);
    const AreaInput input = free_area(ui, name, area);
    const bool beside = area.w >= 600;
    if (input.zoom != 1)
        state.zoom = zoomed(area, spec.after_width, spec.after_height, state.zoom, input.zoom,
                            {input.at.x + area.x, input.at.y + area.y}, input.by);
    else if (input.dragging && beside)
        state.zoom = zoomed(area, spec.after_width, spec.after_height, state.zoom, 1, area.middle(), input.by);
    else if (input.dragging)
        state.divide = std::clamp(input.at.x / area.w, 0.05F, 0.95F);
    const float split = beside ? area.x + area.w / 2 : area.x + area.w * state.divide;
    const float apart = beside ? 4 : 0;
    const Rect left{area.x, area.y, split - area.x - apart, area.h};
    const Rect right{split + apart, area.y, area.right() - split - apart, area.h};
    draw_fill(area, ui.paint(Tone::off).ground);
    const Rect& frame_before = beside ? left : area;
    const Rect& frame_after = beside ? right : area;
    draw_zoomed(ui, spec.before, left, picture_rect(frame_before, spec.before_width, spec.before_height, state.zoom));
    draw_zoomed(ui, spec.after, right, picture_rect(frame_after, spec.after_width, spec.after_height, state.zoom));
    if (!beside) draw_divider(ui, split, area);
    draw_caption(ui, "before", area, false);
    draw_caption(ui, "after", area, true);
}

}  // namespace cotter
