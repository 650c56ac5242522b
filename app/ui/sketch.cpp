// See sketch.h. Each drawing lives on a field of 64 × 48, seen from above (axles) or from outside (wheel ends).
#include "app/ui/sketch.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/ui/draw.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kSketchPad = 12;
constexpr float kWide = 64, kSketchHigh = 48;

class Board {
public:
    Board(const Rect& box, Rgb line)
        : list_(*ImGui::GetWindowDrawList()),
          unit_(std::min(box.w / kWide, box.h / kSketchHigh)),
          line_(ink(line)),
          origin_{box.middle().x - kWide / 2 * unit_, box.middle().y - kSketchHigh / 2 * unit_} {}

    void line(Point a, Point b, float width = 2.4F) const { list_.AddLine(at(a), at(b), line_, width * unit_); }
    void box(float x, float y, float w, float h, bool filled = true) const {
        if (filled)
            list_.AddRectFilled(at({x, y}), at({x + w, y + h}), line_);
        else
            list_.AddRect(at({x, y}), at({x + w, y + h}), line_, 0, 0, 2.4F * unit_);
    }
    void ring(float x, float y, float radius, float width = 2.4F) const {
        list_.AddCircle(at({x, y}), radius * unit_, line_, 48, width * unit_);
    }
    void dot(float x, float y, float radius) const { list_.AddCircleFilled(at({x, y}), radius * unit_, line_, 24); }
    void arc(float x, float y, float radius, float from, float to, float width) const {
        list_.PathArcTo(at({x, y}), radius * unit_, from, to, 32);
        list_.PathStroke(line_, 0, width * unit_);
    }

private:
    [[nodiscard]] ImVec2 at(Point p) const { return {origin_.x + p.x * unit_, origin_.y + p.y * unit_}; }

    ImDrawList& list_;
    float unit_;
    ImU32 line_;
    Point origin_;
};

// A deck from above, drawbar to the left, with its axles towards the rear.
void axles(const Board& b, int count) {
    b.line({4, 24}, {16, 12});
    b.line({4, 24}, {16, 36});
    b.box(16, 12, 44, 24, false);
    for (int i = 0; i < count; ++i) {
        const float x = 46 - static_cast<float>(count - 1) * 5 + static_cast<float>(i) * 10;
        b.line({x, 10}, {x, 38}, 2);
        b.box(x - 3.5F, 3, 7, 8);
        b.box(x - 3.5F, 37, 7, 8);
    }
}

// An axle from behind.
void wheels(const Board& b, bool dual) {
    b.line({8, 24}, {56, 24}, 4);
    for (const float x : {6.0F, 50.0F}) b.box(x, 8, 8, 32);
    if (!dual) return;
    b.box(16, 8, 8, 32);
    b.box(40, 8, 8, 32);
}

void disc(const Board& b) {
    b.ring(32, 24, 19);
    b.ring(32, 24, 7);
    b.arc(32, 24, 17, -0.75F, 0.75F, 9);
}

void drum(const Board& b, bool magnet) {
    constexpr float kPi = std::numbers::pi_v<float>;
    b.ring(32, 24, 20);
    b.arc(32, 24, 14.5F, kPi * 0.62F, kPi * 1.38F, 5);
    b.arc(32, 24, 14.5F, -kPi * 0.38F, kPi * 0.38F, 5);
    if (magnet)
        b.box(26, 33, 12, 7);
    else
        b.box(26, 7, 12, 5);
}

void hub(const Board& b, float level, bool window) {
    b.ring(32, 24, 20);
    if (window) b.ring(32, 24, 13);
    if (level <= 0) return b.dot(32, 24, 6);
    const float y = 24 + 13 - 26 * level;
    const float half = std::sqrt(std::max(0.0F, 169 - (y - 24) * (y - 24)));
    for (float s = y; s < 36; s += 3.5F) {
        const float h = std::sqrt(std::max(0.0F, 169 - (s - 24) * (s - 24)));
        b.line({32 - h, s}, {32 + h, s}, 1.6F);
    }
    b.line({32 - half, y}, {32 + half, y}, 2.6F);
}

void draw_sketch(Sketch sketch, const Rect& box, Rgb line) {
    const Board b(box, line);
    switch (sketch) {
        case Sketch::one_axle:
        case Sketch::two_axles:
        case Sketch::three_axles:
        case Sketch::four_axles:
            return axles(b, static_cast<int>(sketch) + 1);
        case Sketch::single_wheels:
        case Sketch::dual_wheels:
            return wheels(b, sketch == Sketch::dual_wheels);
        case Sketch::no_brake:
            b.ring(32, 24, 19);
            return b.ring(32, 24, 7);
        case Sketch::disc:
            return disc(b);
        case Sketch::drum:
        case Sketch::electric_drum:
            return drum(b, sketch == Sketch::electric_drum);
        case Sketch::air:
            b.box(10, 14, 26, 20, false);
            b.line({36, 24}, {56, 24}, 4);
            return b.line({10, 24}, {2, 24});
        case Sketch::oil_bath:
            return hub(b, 0.5F, true);
        case Sketch::grease:
            return hub(b, 0, false);
        case Sketch::semi_fluid:
            return hub(b, 0.3F, true);
    }
}

}  // namespace

std::optional<std::size_t> sketches(UiContext& ui, std::string_view key, std::span<const SketchSpec> specs) {
    const IdScope scope(key);
    const float width = room();
    const float least = 104 * (1 + (ui.sizes.type - 1) * 0.7F);
    const auto fits = static_cast<std::size_t>(std::max(1.0F, (width + Sizes::gap) / (least + Sizes::gap)));
    const std::size_t columns = std::min(fits, specs.size());
    const float cell = (width - Sizes::gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    float words = 0;
    for (const SketchSpec& s : specs)
        words = std::max(words, lay_text(ui, s.name.label, Type::small, cell - 2 * kSketchPad).height);
    std::optional<std::size_t> tapped;
    for (std::size_t i = 0; i < specs.size(); i += columns) {
        const Rect line = take_space(width, kSketchHigh * 1.3F + words + 3 * kSketchPad);
        for (std::size_t j = i; j < std::min(specs.size(), i + columns); ++j) {
            const Rect rect{line.x + static_cast<float>(j - i) * (cell + Sizes::gap), line.y, cell, line.h};
            const Press press = press_area(ui, specs[j].name, rect, {Role::choice, true, specs[j].chosen, false, {}});
            const Paint& paint = ui.paint(specs[j].chosen ? Tone::chosen : Tone::plate);
            draw_press_plate(ui, rect, press, paint, kPlateCuts);
            if (specs[j].chosen) draw_witness({rect.x + 3, rect.y + 4, Sizes::stripe, rect.h - 8}, ui.theme.witness);
            draw_sketch(specs[j].sketch,
                        {rect.x + kSketchPad, rect.y + kSketchPad, cell - 2 * kSketchPad, kSketchHigh * 1.3F},
                        paint.text);
            const Laid laid = lay_text(ui, specs[j].name.label, Type::small, cell - 2 * kSketchPad);
            draw_text(ui, laid, {rect.x + kSketchPad, rect.bottom() - kSketchPad - words, cell - 2 * kSketchPad, words},
                      {paint.text, paint.ground, Align::middle, true, press.id});
            if (press.tapped) tapped = j;
        }
    }
    return tapped;
}

}  // namespace cotter
