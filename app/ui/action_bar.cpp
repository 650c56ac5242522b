// The actions of a screen or sheet; see screen.h. In a row under the content with the main one on the thumb's side;
// stacked when their words are too long for that; in a rail on the thumb's side when the screen lies low.
#include <algorithm>
#include <numeric>

#include "app/ui/button.h"
#include "app/ui/press.h"
#include "app/ui/screen.h"

namespace cotter {

namespace {

constexpr float kRail = 220;

ButtonSpec spec_of(const ActionSpec& action) {
    return {action.tone, action.icon, action.enabled, action.main, 0};
}

// The places of the actions, and the strip they lie in.
struct Plan {
    std::vector<Rect> places;
    Rect strip, rest;
};

// One below the other, the main one lowest; from the top of `at`, which is wide enough.
float stack(const UiContext& ui, std::span<const ActionSpec> actions, const Rect& at, std::vector<Rect>& places) {
    float y = at.y;
    for (const ActionSpec& action : actions) {
        const float height = button_height(ui, action.name, spec_of(action), at.w);
        places.push_back({at.x, y, at.w, height});
        y += height + Sizes::gap;
    }
    return y - at.y - Sizes::gap;
}

float rail_width(const UiContext& ui, float width) {
    return std::min(kRail * std::min(ui.sizes.type, 1.5F), width * 0.4F);
}

Plan plan_rail(const UiContext& ui, std::span<const ActionSpec> actions, const Rect& area) {
    Plan plan;
    const float width = rail_width(ui, area.w);
    const bool right = ui.thumb == Thumb::right;
    plan.strip = {right ? area.right() - width : area.x, area.y, width, area.h};
    plan.rest = {right ? area.x : area.x + width, area.y, area.w - width, area.h};
    const Rect inner = grown(plan.strip, -Sizes::gap);
    const float height = stack(ui, actions, inner, plan.places);
    for (Rect& place : plan.places) place.y += std::max(0.0F, inner.h - height);  // down to the thumb
    return plan;
}

// Widths of a row in proportion to the words, the main action at least half; empty when they do not fit.
std::vector<float> row_widths(const UiContext& ui, std::span<const ActionSpec> actions, float width) {
    std::vector<float> widths;
    for (const ActionSpec& action : actions) widths.push_back(button_width(ui, action.name, spec_of(action)));
    const float free = width - Sizes::gap * static_cast<float>(actions.size() - 1) -
                       std::accumulate(widths.begin(), widths.end(), 0.0F);
    if (free < 0) return {};
    for (std::size_t i = 0; i < widths.size(); ++i)
        widths[i] += actions[i].main ? free * 0.7F
                                     : free * 0.3F / static_cast<float>(std::max<std::size_t>(1, widths.size() - 1));
    if (std::none_of(actions.begin(), actions.end(), [](const ActionSpec& a) { return a.main; }) || actions.size() == 1)
        for (std::size_t i = 0; i < widths.size(); ++i)
            widths[i] =
                (width - Sizes::gap * static_cast<float>(widths.size() - 1)) / static_cast<float>(widths.size());
    return widths;
}

Plan plan_strip(const UiContext& ui, std::span<const ActionSpec> actions, const Rect& area) {
    Plan plan;
    const float column = std::min(area.w, Sizes::column);
    const Rect inner{area.x + (area.w - column) / 2 + Sizes::gap, 0, column - 2 * Sizes::gap, 0};
    const std::vector<float> widths = row_widths(ui, actions, inner.w);
    float height = 0;
    if (widths.empty()) {
        height = stack(ui, actions, inner, plan.places);
    } else {
        for (std::size_t i = 0; i < actions.size(); ++i)
            height = std::max(height, button_height(ui, actions[i].name, spec_of(actions[i]), widths[i]));
        const bool right = ui.thumb == Thumb::right;
        float x = right ? inner.x : inner.right();
        for (const float width : widths) {
            if (!right) x -= width;
            plan.places.push_back({x, 0, width, height});
            x += right ? width + Sizes::gap : -Sizes::gap;
        }
    }
    const float top = area.bottom() - height - 2 * Sizes::gap;
    plan.strip = {area.x, top, area.w, height + 2 * Sizes::gap};
    plan.rest = {area.x, area.y, area.w, area.h - plan.strip.h};
    for (Rect& place : plan.places) place.y += top + Sizes::gap;
    return plan;
}

void draw_strip(const UiContext& ui, const Plan& plan) {
    const Paint& bar = ui.paint(Tone::bar);
    Rect ground = plan.strip;
    ground.h += ui.insets.bottom;
    draw_fill(ground, bar.ground);
    const float in = Sizes::edge / 2;  // what scrolls beside it is drawn later
    if (!ui.low()) return draw_line({ground.x, ground.y + in}, {ground.right(), ground.y + in}, bar.edge);
    const float x = ui.thumb == Thumb::right ? ground.x + in : ground.right() - in;
    draw_line({x, ground.y}, {x, ground.bottom()}, bar.edge);
}

}  // namespace

float actions_height(const UiContext& ui, std::span<const ActionSpec> actions, float width) {
    return actions.empty() || ui.low() ? 0 : plan_strip(ui, actions, {0, 0, width, 0}).strip.h;
}

float rail_height(const UiContext& ui, std::span<const ActionSpec> actions, float width) {
    if (actions.empty() || !ui.low()) return 0;
    std::vector<Rect> places;
    const float inner = rail_width(ui, width) - 2 * Sizes::gap;
    return stack(ui, actions, {0, 0, inner, 0}, places) + 2 * Sizes::gap;
}

ActionsAnswer action_bar(UiContext& ui, std::span<const ActionSpec> actions, const Rect& area) {
    if (actions.empty()) return {area, std::nullopt};
    const Plan plan = ui.low() ? plan_rail(ui, actions, area) : plan_strip(ui, actions, area);
    draw_strip(ui, plan);
    ActionsAnswer answer{plan.rest, std::nullopt};
    const IdScope scope("actions");
    for (std::size_t i = 0; i < actions.size(); ++i)
        if (button_at(ui, actions[i].name, spec_of(actions[i]), plan.places[i])) answer.tapped = i;
    return answer;
}

}  // namespace cotter
