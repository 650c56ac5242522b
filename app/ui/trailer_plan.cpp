// See trailer_plan.h.
// Method: three bands, laid out from the top: the drawbar's tiles in the middle with the drawbar drawn beside them, a
// row for each axle (tile, deck, tile), the rear tiles in pairs. Heights come from the words, so that nothing is cut.
#include "app/ui/trailer_plan.h"

#include <algorithm>

#include "app/ui/grade_mark.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kPlanPad = 12;
constexpr float kWheel = 12;  // width of a wheel as drawn, dp
constexpr float kApart = 12;  // between tiles

struct TileWords {
    Laid label, state, missing;
    float height = 0;
};

float mark_side(const UiContext& ui) {
    return 24 * std::min(ui.sizes.type, 1.5F);
}

TileWords lay_tile(const UiContext& ui, const PlanTile& tile, float width) {
    const float inner = width - 2 * kPlanPad;
    const bool marked = tile.grade || tile.icon != Icon::none;
    TileWords words;
    words.label = lay_text(ui, tile.name.label, Type::bold, inner - (marked ? mark_side(ui) + Sizes::gap : 0));
    words.state = lay_text(ui, tile.state, Type::small, inner);
    words.missing = lay_text(ui, tile.missing, Type::small, inner);
    words.height =
        words.label.height + words.state.height + (tile.missing.empty() ? 0 : words.missing.height) + 4 + 2 * kPlanPad;
    words.height = std::max(words.height, Sizes::main + 2 * kPlanPad);
    return words;
}

float tallest(const UiContext& ui, std::span<const PlanTile> tiles, float width) {
    float out = 0;
    for (const PlanTile& tile : tiles) out = std::max(out, lay_tile(ui, tile, width).height);
    return out;
}

void draw_marks(const UiContext& ui, const PlanTile& tile, const Rect& rect, const Paint& paint) {
    const float side = mark_side(ui);
    const Rect box{rect.right() - kPlanPad - side, rect.y + kPlanPad, side, side};
    if (tile.grade)
        draw_sign(sign_of(*tile.grade), box, paint.text);
    else if (tile.icon != Icon::none)
        draw_icon(tile.icon, box, paint.text);
}

bool draw_tile(UiContext& ui, const PlanTile& tile, const Rect& rect) {
    const TileWords words = lay_tile(ui, tile, rect.w);
    const std::string value = tile.state + (tile.missing.empty() ? "" : ", " + tile.missing);
    const Press press = press_area(ui, tile.name, rect, {Role::tile, true, false, false, value});
    const Paint& paint = ui.paint(Tone::plate);
    draw_press_plate(ui, rect, press, paint, kPlateCuts);
    draw_marks(ui, tile, rect, paint);
    float y = rect.y + kPlanPad;
    const auto line = [&](const Laid& laid, Rgb colour) {
        if (laid.text.empty()) return;
        draw_text(ui, laid, {rect.x + kPlanPad, y, rect.w - 2 * kPlanPad, laid.height},
                  {colour, paint.ground, Align::left, false, press.id});
        y += laid.height + 2;
    };
    line(words.label, paint.text);
    line(words.state, ui.theme.second);
    line(words.missing, paint.text);
    return press.tapped;
}

class Plan {
public:
    Plan(UiContext& ui, const TrailerPlanSpec& spec, float width)
        : ui_(ui),
          spec_(spec),
          width_(width),
          deck_(std::clamp(width * 0.16F, 40.0F, 110.0F)),
          side_((width - deck_) / 2 - kApart),
          middle_(std::min(width * 0.64F, 330.0F)),
          front_(tallest(ui, spec.front, middle_)),
          corner_(tallest(ui, spec.corners, side_)),
          rear_(tallest(ui, spec.rear, (width - kApart) / 2)) {}

    [[nodiscard]] float height() const {
        const auto rows = [](std::size_t n, std::size_t per) { return static_cast<float>((n + per - 1) / per); };
        return rows(spec_.front.size(), 1) * (front_ + kApart) + rows(spec_.corners.size(), 2) * (corner_ + kApart) +
               rows(spec_.rear.size(), 2) * (rear_ + kApart) + kApart;
    }

    std::optional<std::size_t> draw(const Rect& at) {
        at_ = at;
        deck_top_ = at.y + static_cast<float>(spec_.front.size()) * (front_ + kApart);
        draw_frame();
        float y = at.y;
        for (const PlanTile& tile : spec_.front) y = one(tile, {at.x + (width_ - middle_) / 2, y, middle_, front_});
        y = pairs(spec_.corners, y + kApart, side_, corner_, true);
        pairs(spec_.rear, y, (width_ - kApart) / 2, rear_, false);
        return tapped_;
    }

private:
    float one(const PlanTile& tile, const Rect& rect) {
        if (draw_tile(ui_, tile, rect)) tapped_ = index_;
        index_ += 1;
        return rect.bottom() + kApart;
    }

    float pairs(std::span<const PlanTile> tiles, float y, float width, float height, bool axles) {
        for (std::size_t i = 0; i < tiles.size(); ++i) {
            const bool left = i % 2 == 0;
            const bool alone = left && i + 1 == tiles.size();
            const Rect rect{left ? at_.x : at_.x + width_ - width, y, alone && !axles ? width_ : width, height};
            if (axles && left) draw_axle(y + height / 2, i / 2);
            one(tiles[i], rect);
            if (!left || alone) y += height + kApart;
        }
        return y;
    }

    // The axle from tile to tile, and its wheels where the deck's edge is.
    void draw_axle(float y, std::size_t axle) {
        const Rgb line = ui_.paint(Tone::page).text;
        draw_line({at_.x + side_, y}, {at_.x + width_ - side_, y}, line, 4);
        const bool dual = axle < spec_.duals.size() && spec_.duals[axle];
        for (int n = 0; n < (dual ? 2 : 1); ++n) {
            const float off = 2 + static_cast<float>(n) * (kWheel + 2);
            const float high = 46;
            draw_fill({at_.x + side_ + off, y - high / 2, kWheel, high}, line);
            draw_fill({at_.x + width_ - side_ - off - kWheel, y - high / 2, kWheel, high}, line);
        }
    }

    // Deck and drawbar, under the tiles.
    void draw_frame() {
        const Rgb line = ui_.paint(Tone::page).edge;
        const float rows = static_cast<float>((spec_.corners.size() + 1) / 2);
        const float left = at_.x + side_ + kApart;
        const Rect deck{left, deck_top_ + 2, deck_, rows * (corner_ + kApart) + kApart / 2};
        for (const float x : {deck.x, deck.right()}) {
            draw_line({x, deck.y}, {x, deck.bottom()}, line, 3);
            draw_line({at_.x + width_ / 2, at_.y}, {x, deck.y}, line, 3);
        }
        draw_line({deck.x, deck.y}, {deck.right(), deck.y}, line, 3);
        draw_line({deck.x, deck.bottom()}, {deck.right(), deck.bottom()}, line, 3);
    }

    UiContext& ui_;
    const TrailerPlanSpec& spec_;
    float width_, deck_, side_, middle_, front_, corner_, rear_;
    Rect at_;
    float deck_top_ = 0;
    std::size_t index_ = 0;
    std::optional<std::size_t> tapped_;
};

}  // namespace

std::optional<std::size_t> trailer_plan(UiContext& ui, std::string_view key, const TrailerPlanSpec& spec) {
    const IdScope scope(key);
    Plan plan(ui, spec, room());
    return plan.draw(take_space(room(), plan.height()));
}

}  // namespace cotter
