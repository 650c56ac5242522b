// The icons of draw.h: strokes on a field of 24 × 24, drawn by us so that they are sharp at every scale.
#include <array>
#include <cmath>
#include <initializer_list>
#include <numbers>

#include "app/ui/draw.h"

namespace cotter {

namespace {

constexpr float kPi = std::numbers::pi_v<float>;

class Pen {
public:
    Pen(const Rect& box, Rgb colour)
        : list_(*ImGui::GetWindowDrawList()),
          colour_(ink(colour)),
          unit_(std::min(box.w, box.h) / 24),
          origin_{box.middle().x - 12 * unit_, box.middle().y - 12 * unit_} {}

    void stroke(std::initializer_list<Point> points, bool closed = false, float width = 2.6F) {
        for (const Point& p : points) list_.PathLineTo(at(p));
        list_.PathStroke(colour_, closed ? ImDrawFlags_Closed : 0, width * unit_);
    }
    void arc(Point middle, float radius, float from, float to, float width = 2.6F) {
        list_.PathArcTo(at(middle), radius * unit_, from, to, 16);
        list_.PathStroke(colour_, 0, width * unit_);
    }
    void dot(Point middle, float radius) { list_.AddCircleFilled(at(middle), radius * unit_, colour_, 20); }

private:
    [[nodiscard]] ImVec2 at(Point p) const { return {origin_.x + p.x * unit_, origin_.y + p.y * unit_}; }

    ImDrawList& list_;
    ImU32 colour_;
    float unit_;
    Point origin_;
};

void draw_help(Pen& pen) {
    pen.arc({12, 8}, 4.6F, -kPi, kPi * 0.32F);
    pen.stroke({{14.3F, 11.9F}, {12, 13.6F}, {12, 16}});
    pen.dot({12, 19.6F}, 1.8F);
}

void draw_camera(Pen& pen) {
    pen.stroke({{3, 7}, {8, 7}, {9.5F, 4.5F}, {14.5F, 4.5F}, {16, 7}, {21, 7}, {21, 19.5F}, {3, 19.5F}}, true);
    pen.arc({12, 13}, 3.6F, 0, 2 * kPi);
}

// An arrow that turns back; `way` -1 turns it forward again.
void draw_undo(Pen& pen, float way) {
    const auto x = [&](float left) { return 12 + way * (left - 12); };
    pen.stroke({{x(9.5F), 3.5F}, {x(4.5F), 8.5F}, {x(9.5F), 13.5F}});
    pen.stroke({{x(4.5F), 8.5F}, {x(14), 8.5F}});
    pen.arc({x(14), 14}, 5.5F, way > 0 ? -kPi / 2 : kPi / 2, way > 0 ? kPi / 2 : kPi * 1.5F);
    pen.stroke({{x(14), 19.5F}, {x(8), 19.5F}});
}

// A split pin: eye, two legs; bent apart when it is in.
void draw_pin(Pen& pen, bool in) {
    pen.arc({6.5F, 12}, 3.4F, kPi * 0.25F, kPi * 1.75F);
    pen.stroke({{9, 9.6F}, {12, 11}, {18, 11}, {21.5F, in ? 6.5F : 11}});
    pen.stroke({{9, 14.4F}, {12, 13}, {18, 13}, {21.5F, in ? 17.5F : 13}});
}

void draw_erase(Pen& pen) {
    pen.stroke({{9, 5}, {21, 5}, {21, 19}, {9, 19}, {3, 12}}, true);
    pen.stroke({{11, 9}, {17, 15}});
    pen.stroke({{17, 9}, {11, 15}});
}

void draw_search(Pen& pen) {
    pen.arc({10.5F, 10.5F}, 6, 0, 2 * kPi);
    pen.stroke({{15, 15}, {20.5F, 20.5F}}, false, 3.4F);
}

void draw_sheet(Pen& pen) {
    pen.stroke({{5, 3}, {15, 3}, {19, 7}, {19, 21}, {5, 21}}, true);
    pen.stroke({{8.5F, 11}, {15.5F, 11}});
    pen.stroke({{8.5F, 15.5F}, {15.5F, 15.5F}});
}

void draw_menu(Pen& pen) {
    for (const float y : {6.0F, 12.0F, 18.0F}) pen.stroke({{4, y}, {20, y}});
}

}  // namespace

void draw_icon(Icon icon, const Rect& box, Rgb colour) {
    if (seen_part(box).empty()) return;
    Pen pen(box, colour);
    switch (icon) {
        case Icon::none:
            break;
        case Icon::back:
            pen.stroke({{15, 4}, {7, 12}, {15, 20}}, false, 3);
            break;
        case Icon::next:
            pen.stroke({{9, 4}, {17, 12}, {9, 20}}, false, 3);
            break;
        case Icon::undo:
            draw_undo(pen, 1);
            break;
        case Icon::redo:
            draw_undo(pen, -1);
            break;
        case Icon::help:
            draw_help(pen);
            break;
        case Icon::close:
            pen.stroke({{5, 5}, {19, 19}}, false, 3), pen.stroke({{19, 5}, {5, 19}}, false, 3);
            break;
        case Icon::check:
            pen.stroke({{4, 12.5F}, {10, 18.5F}, {20, 5.5F}}, false, 3.4F);
            break;
        case Icon::plus:
            pen.stroke({{12, 4}, {12, 20}}, false, 3);
            [[fallthrough]];
        case Icon::minus:
            pen.stroke({{4, 12}, {20, 12}}, false, 3);
            break;
        case Icon::camera:
            draw_camera(pen);
            break;
        case Icon::erase:
            draw_erase(pen);
            break;
        case Icon::pin:
            draw_pin(pen, true);
            break;
        case Icon::open_pin:
            draw_pin(pen, false);
            break;
        case Icon::search:
            draw_search(pen);
            break;
        case Icon::menu:
            draw_menu(pen);
            break;
        case Icon::sheet:
            draw_sheet(pen);
            break;
    }
}

}  // namespace cotter
