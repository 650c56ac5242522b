// See sheet.h.
#include "app/ui/sheet.h"

#include <imgui.h>

#include <algorithm>
#include <string>

#include "app/ui/button.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr ImGuiWindowFlags kOver = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBackground |
                                   ImGuiWindowFlags_NoScrollWithMouse;

// The height of a sheet's content as the frame before measured it; `guess` for a new one.
float remembered(const UiState& state, std::uint32_t id, float guess) {
    const auto found = std::find_if(state.heights.begin(), state.heights.end(), [&](auto& h) { return h.first == id; });
    return found == state.heights.end() ? guess : found->second;
}

void remember(UiState& state, std::uint32_t id, float height) {
    const auto found = std::find_if(state.heights.begin(), state.heights.end(), [&](auto& h) { return h.first == id; });
    if (found == state.heights.end())
        state.heights.emplace_back(id, height);
    else
        found->second = height;
}

Rect panel_place(const UiContext& ui, float height) {
    const Insets& in = ui.insets;
    const float all = ui.width - in.left - in.right;
    const float width = ui.low() ? all : std::min(all, Sizes::column);  // low screens have their actions beside
    const float left = in.left + (all - width) / 2;
    const float most = ui.height - in.top - in.bottom - (ui.low() ? 4 : 24);
    const float high = std::min(height, most);
    return {left, ui.height - in.bottom - high, width, high};
}

Laid lay_title(const UiContext& ui, const SheetSpec& spec, float width) {
    return lay_text(ui, spec.title, Type::title, width - Sizes::target - 3 * Sizes::pad);
}

float head_height(const Laid& title) {
    return std::max(Sizes::target, title.height) + 2 * Sizes::gap;
}

// The title and the button that closes; gives what is left.
Rect draw_head(UiContext& ui, const SheetSpec& spec, const Rect& panel, bool& closed) {
    const Laid title = lay_title(ui, spec, panel.w);
    const float height = head_height(title);
    const Paint& page = ui.paint(Tone::page);
    draw_text(ui, title, {panel.x + Sizes::pad, panel.y + Sizes::gap, title.width + 2, height - 2 * Sizes::gap},
              {page.text, page.ground});
    const Rect key{panel.right() - Sizes::target - Sizes::gap, panel.y + Sizes::gap, Sizes::target, Sizes::target};
    closed = icon_button_at(ui, {ui.words.close, "close"}, Icon::close, key) || ui.take_back();
    return {panel.x, panel.y + height, panel.w, panel.h - height};
}

}  // namespace

SheetAnswer sheet(UiContext& ui, const SheetSpec& spec, const Body& body) {
    SheetAnswer answer;
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({ui.width, ui.height});
    ImGui::Begin(("###sheet-" + spec.key).c_str(), nullptr, kOver);
    sharpen(ui);
    const int below = ui.log.drawing++;
    ui.log.layer = std::max(ui.log.layer, ui.log.drawing);
    const std::uint32_t content_id = ImGui::GetID("content");
    const float content = remembered(ui.state, content_id, ui.height);
    draw_fill({0, 0, ui.width, ui.height}, ui.theme.shade, 140);
    const float width = panel_place(ui, 0).w;
    const float inner = std::max(content, rail_height(ui, spec.actions, width));
    const float height = head_height(lay_title(ui, spec, width)) + inner + actions_height(ui, spec.actions, width);
    const Rect panel = panel_place(ui, height);
    const Paint& page = ui.paint(Tone::page);
    Rect plate = panel;
    plate.h += ui.insets.bottom;
    draw_plate(plate, {page.ground, page.text, Sizes::edge, 16, {true, true, false, false}});
    const Rect rest = draw_head(ui, spec, panel, answer.closed);
    const ActionsAnswer actions = action_bar(ui, spec.actions, rest);
    answer.action = actions.tapped;
    scroll_area(ui, {"content", Sizes::pad, Sizes::gap}, actions.rest, [&] {
        body();
        remember(ui.state, content_id, ImGui::GetCursorPosY() + Sizes::gap);
    });
    ui.log.drawing = below;
    ImGui::End();
    return answer;
}

}  // namespace cotter
