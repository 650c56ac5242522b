// See button.h.
#include "app/ui/button.h"

#include <algorithm>

#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kButtonPad = 14;  // dp between the edge and the words

float icon_room(const UiContext& ui, const ButtonSpec& spec) {
    return spec.icon == Icon::none ? 0 : 24 * ui.sizes.type + Sizes::gap;
}

Laid words(const UiContext& ui, const Name& name, const ButtonSpec& spec, float width) {
    return lay_text(ui, name.label, Type::bold, width - 2 * kButtonPad - icon_room(ui, spec));
}

}  // namespace

float button_height(const UiContext& ui, const Name& name, const ButtonSpec& spec, float width) {
    const float least = spec.main ? Sizes::main : Sizes::target;
    return std::max(least, words(ui, name, spec, width).height + 2 * 10);
}

float button_width(const UiContext& ui, const Name& name, const ButtonSpec& spec) {
    return std::max(Sizes::target + 8,
                    text_width(ui, name.label, Type::bold) + 2 * kButtonPad + icon_room(ui, spec) + 2);
}

bool button_at(UiContext& ui, const Name& name, const ButtonSpec& spec, const Rect& rect) {
    const Press press = press_area(ui, name, rect, {Role::button, spec.enabled, false, spec.main, {}});
    const Paint& paint = ui.paint(spec.enabled ? spec.tone : Tone::off);
    draw_press_plate(ui, rect, press, paint, spec.main ? kMainCuts : kPlateCuts);
    const Laid laid = words(ui, name, spec, rect.w);
    const float icon = icon_room(ui, spec);
    const float block = laid.width + icon;
    const float left = rect.x + (rect.w - block) / 2;
    if (icon > 0) draw_icon(spec.icon, {left, rect.y, icon - Sizes::gap, rect.h}, paint.text);
    draw_text(ui, laid, {left + icon, rect.y, laid.width, rect.h},
              {paint.text, paint.ground, Align::middle, true, press.id});
    return press.tapped;
}

bool button(UiContext& ui, const Name& name, const ButtonSpec& spec) {
    const float width = std::min(room(), spec.width > 0 ? spec.width : button_width(ui, name, spec));
    const Rect rect = take_space(width, button_height(ui, name, spec, width));
    return button_at(ui, name, spec, rect);
}

bool wide_button(UiContext& ui, const Name& name, ButtonSpec spec) {
    spec.width = room();
    return button(ui, name, spec);
}

bool icon_button_at(UiContext& ui, const Name& name, Icon icon, const Rect& rect, bool enabled) {
    const Press press = press_area(ui, name, rect, {Role::button, enabled, false, false, {}});
    const Paint& paint = ui.paint(enabled ? Tone::quiet : Tone::off);
    draw_press_plate(ui, rect, press, paint, kPlateCuts);
    const float side = std::min(rect.w, rect.h) * 0.5F;
    draw_icon(icon, {rect.middle().x - side / 2, rect.middle().y - side / 2, side, side}, paint.text);
    return press.tapped;
}

}  // namespace cotter
