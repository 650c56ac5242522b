// See screen.h.
#include "app/ui/screen.h"

#include <imgui.h>

#include <algorithm>

#include "app/ui/button.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr ImGuiWindowFlags kBase = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBackground |
                                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse;

// A line above the actions that says what just happened, with one thing to do about it.
bool draw_toast(UiContext& ui, const ToastSpec& toast, Rect& area) {
    if (toast.text.empty()) return false;
    const Paint& paint = ui.paint(Tone::strong);
    const Name action = toast.action;
    const ButtonSpec spec{Tone::quiet, Icon::none, true, false, 0};
    const float wide = toast.action.empty() ? 0 : button_width(ui, action, spec);
    const float inner = area.w - 2 * Sizes::pad;
    const bool below = wide > inner * 0.4F;
    const Laid text = lay_text(ui, toast.text, Type::body, below || wide == 0 ? inner : inner - wide - Sizes::pad);
    const float key = wide == 0 ? 0 : button_height(ui, action, spec, wide);
    const float height = (below ? text.height + key + Sizes::gap : std::max(text.height, key)) + 2 * Sizes::gap;
    const Rect strip{area.x, area.bottom() - height, area.w, height};
    area.h -= height;
    draw_fill(strip, paint.ground);
    const float text_height = below ? text.height : height - 2 * Sizes::gap;
    draw_text(ui, text, {strip.x + Sizes::pad, strip.y + Sizes::gap, inner, text_height}, {paint.text, paint.ground});
    if (wide == 0) return false;
    const Rect place{strip.right() - Sizes::pad - std::min(wide, inner), strip.bottom() - Sizes::gap - key,
                     std::min(wide, inner), key};
    const IdScope scope("toast");
    return button_at(ui, action, spec, place);
}

void draw_content(UiContext& ui, const ScreenSpec& spec, const Rect& area, const Body& body) {
    const float width = spec.wide ? area.w : std::min(area.w, Sizes::column);
    scroll_area(ui, {spec.key, (area.w - width) / 2 + Sizes::pad, Sizes::pad}, area, body);
}

ScreenAnswer answer_of(const HeaderAnswer& header, const ActionsAnswer& actions, bool toast) {
    ScreenAnswer answer;
    if (actions.tapped) answer = {ScreenTap::action, *actions.tapped};
    if (toast) answer.tap = ScreenTap::toast;
    if (header.tap != ScreenTap::none) answer.tap = header.tap;
    return answer;
}

}  // namespace

ScreenAnswer screen(UiContext& ui, const ScreenSpec& spec, const Body& body) {
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({ui.width, ui.height});
    ImGui::Begin("###screen", nullptr, kBase);
    sharpen(ui);
    const Rect area{ui.insets.left, ui.insets.top, ui.width - ui.insets.left - ui.insets.right,
                    ui.height - ui.insets.top - ui.insets.bottom};
    const HeaderAnswer header = header_bar(ui, spec.header, area);
    ActionsAnswer actions = action_bar(ui, spec.actions, header.rest);
    const bool toast = draw_toast(ui, spec.toast, actions.rest);
    draw_content(ui, spec, actions.rest, body);
    ImGui::End();
    return answer_of(header, actions, toast);
}

}  // namespace cotter
