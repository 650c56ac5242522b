// See press.h.
#include "app/ui/press.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>

#include "app/ui/draw.h"

namespace cotter {

namespace {

// ImGui resets its hash at "###", so the id does not depend on what the label says.
std::string tagged(std::string_view key) {
    return "###" + std::string(key);
}

bool finger_on(const UiContext& ui, const Rect& seen) {
    return ui.pressed && ui.top_layer() && seen.contains(*ui.pressed);
}

bool long_press_on(const UiContext& ui, const Rect& seen) {
    return ui.top_layer() && std::any_of(ui.gestures.begin(), ui.gestures.end(), [&](const Gesture& g) {
               return g.kind == GestureKind::long_press && seen.contains(g.start);
           });
}

void bring_to_sight(const Rect& rect) {
    ImGui::ScrollToRectEx(ImGui::GetCurrentWindow(), {{rect.x, rect.y}, {rect.right(), rect.bottom()}},
                          ImGuiScrollFlags_KeepVisibleEdgeX | ImGuiScrollFlags_KeepVisibleCenterY);
}

}  // namespace

std::uint32_t id_of(const Name& name) {
    return ImGui::GetID(tagged(name.key).c_str());
}

void log_target(UiContext& ui, Target target) {
    if (ui.state.reached == target.id) bring_to_sight(target.rect);
    ui.log.targets.push_back(std::move(target));
}

Press press_area(UiContext& ui, const Name& name, const Rect& rect, const PressSpec& spec) {
    Press press;
    press.id = id_of(name);
    const Rect seen = seen_part(rect);
    const ImVec2 after = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({rect.x, rect.y});
    ImGui::BeginDisabled(!spec.enabled);
    press.tapped = ImGui::InvisibleButton(tagged(name.key).c_str(), {std::max(1.0F, rect.w), std::max(1.0F, rect.h)});
    ImGui::EndDisabled();
    press.hovered = ImGui::IsItemHovered() && !ui.pressed;
    press.focused = ImGui::IsItemFocused() && !ImGui::GetCurrentContext()->NavDisableHighlight;
    press.held = spec.enabled && (ImGui::IsItemActive() || finger_on(ui, seen));
    press.long_pressed = spec.enabled && long_press_on(ui, seen);
    ImGui::GetCurrentWindow()->DC.CursorPos = after;  // SetCursorScreenPos would want an item to follow
    log_target(ui, {press.id, std::string(name.label), std::string(spec.value), spec.role, rect, seen, spec.enabled,
                    spec.chosen, spec.main, ui.log.drawing});
    return press;
}

IdScope::IdScope(std::string_view key) {
    ImGui::PushID(key.data(), key.data() + key.size());
}

IdScope::~IdScope() {
    ImGui::PopID();
}

void draw_press_plate(const UiContext& ui, const Rect& rect, const Press& press, const Paint& paint, const Cuts& cuts) {
    const float edge = press.held ? 2.5F * Sizes::edge : press.hovered ? 1.75F * Sizes::edge : Sizes::edge;
    const bool filled = paint.edge == paint.ground;  // its own edge would not show that it is held
    draw_plate(rect, {paint.ground, filled && edge > Sizes::edge ? paint.text : paint.edge, edge, Sizes::cut, cuts});
    if (press.focused) draw_ring(rect, ui.theme.witness);
}

}  // namespace cotter
