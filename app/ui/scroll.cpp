// See scroll.h. Method: a drag belongs to the innermost area under its start, as the frame before laid them out, until
// its fling has ended; areas ask whether they are the owner and move by the gestures of the frame.
#include "app/ui/scroll.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "app/ui/draw.h"
#include "app/ui/press.h"

namespace cotter {

namespace {

constexpr float kBar = 6;  // dp, width of the bar that shows how far

std::uint32_t owner_of(const TargetLog& log, const Gesture& gesture) {
    const bool sideways = std::abs(gesture.by.x) > std::abs(gesture.by.y);
    std::uint32_t any = 0;
    for (auto area = log.scrolls.rbegin(); area != log.scrolls.rend(); ++area) {
        if (area->layer != log.layer || !area->rect.contains(gesture.start)) continue;
        if (area->free || (area->sideways == sideways && !gesture.mouse)) return area->id;
        if (gesture.mouse) return 0;
        if (any == 0) any = area->id;
    }
    return any;
}

bool moves(GestureKind kind) {
    return kind == GestureKind::drag || kind == GestureKind::fling;
}

Point moved_by(const UiContext& ui, std::uint32_t id) {
    Point sum;
    if (ui.state.drag_owner != id) return sum;
    for (const Gesture& g : ui.gestures)
        if (moves(g.kind) && !g.mouse) sum = {sum.x + g.by.x, sum.y + g.by.y};
    return sum;
}

void draw_bar(const UiContext& ui, const Rect& rect, float at, float end, bool sideways) {
    if (end < 1) return;
    const float track = sideways ? rect.w : rect.h;
    const float thumb = std::max(32.0F, track * track / (track + end));
    const float from = (track - thumb) * std::clamp(at / end, 0.0F, 1.0F);
    const Rgb colour = ui.paint(Tone::page).edge;
    draw_fill(sideways ? Rect{rect.x + from, rect.bottom() - kBar, thumb, kBar}
                       : Rect{rect.right() - kBar, rect.y + from, kBar, thumb},
              colour);
}

void follow_finger(UiContext& ui, std::uint32_t id, bool sideways) {
    const Point by = moved_by(ui, id);
    const float way = sideways ? by.x : by.y;
    if (way == 0) return;
    std::optional<float>& at = ui.state.drag_scroll;
    if (!at) at = sideways ? ImGui::GetScrollX() : ImGui::GetScrollY();
    at = std::clamp(*at - way, 0.0F, sideways ? ImGui::GetScrollMaxX() : ImGui::GetScrollMaxY());
    if (sideways)
        ImGui::SetScrollX(*at);
    else
        ImGui::SetScrollY(*at);
}

void scrolled(UiContext& ui, const ScrollSpec& spec, const Rect& rect, const Body& body) {
    ImGui::SetCursorScreenPos({rect.x, rect.y});
    const IdScope scope(spec.key);
    const std::uint32_t id = ImGui::GetID("scroll");
    const Rect seen = seen_part(rect);
    const ImGuiWindowFlags flags = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoBackground |
                                   ImGuiWindowFlags_NavFlattened |
                                   (spec.sideways ? ImGuiWindowFlags_HorizontalScrollbar : 0);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {spec.pad_x, spec.pad_y});
    ImGui::BeginChild(id, {rect.w, rect.h}, ImGuiChildFlags_AlwaysUseWindowPadding, flags);
    ImGui::PopStyleVar();
    sharpen(ui);
    follow_finger(ui, id, spec.sideways);
    const float at = spec.sideways ? ImGui::GetScrollX() : ImGui::GetScrollY();
    const float end = spec.sideways ? ImGui::GetScrollMaxX() : ImGui::GetScrollMaxY();
    ui.log.scrolls.push_back({id, rect, seen, spec.sideways, false, at, end, ui.log.drawing});
    body();
    ImGui::EndChild();
    draw_bar(ui, rect, at, end, spec.sideways);
}

}  // namespace

void scroll_area(UiContext& ui, const ScrollSpec& spec, const Rect& rect, const Body& body) {
    scrolled(ui, spec, rect, body);
}

void scroll_strip(UiContext& ui, std::string_view key, float height, const Body& body) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const Rect rect{at.x, at.y, ImGui::GetContentRegionAvail().x, height + kBar + 2};
    scrolled(ui, {std::string(key), 0, 0, true}, rect, body);
}

void same_line() {
    ImGui::SameLine(0, Sizes::gap);
}

AreaInput free_area(UiContext& ui, const Name& name, const Rect& rect) {
    AreaInput input;
    const Press press = press_area(ui, name, rect, {Role::picture, true, false, false, {}});
    input.id = press.id;
    ImGui::SetItemKeyOwner(ImGuiKey_MouseWheelY);  // the wheel zooms here, the page stays
    ui.log.scrolls.push_back({press.id, rect, seen_part(rect), false, true, 0, 0, ui.log.drawing});
    const auto local = [&](Point p) { return Point{p.x - rect.x, p.y - rect.y}; };
    for (const Gesture& g : ui.gestures) {
        if (!ui.top_layer()) break;
        const bool mine = ui.state.drag_owner == press.id;
        if (g.kind == GestureKind::tap && seen_part(rect).contains(g.start)) input.tapped = local(g.start);
        if (g.kind == GestureKind::long_press && seen_part(rect).contains(g.start)) input.long_pressed = local(g.start);
        if (!mine || !(g.kind == GestureKind::drag || g.kind == GestureKind::drag_end || g.kind == GestureKind::pinch))
            continue;
        input.dragging = input.dragging || g.kind == GestureKind::drag;
        input.drag_ended = g.kind == GestureKind::drag_end;
        input.broken = input.drag_ended && g.broken;
        input.start = local(g.start);
        input.at = local(g.at);
        input.by = {input.by.x + g.by.x, input.by.y + g.by.y};
        if (g.kind == GestureKind::pinch) input.zoom *= g.factor;
    }
    const float wheel = ImGui::GetIO().MouseWheel;
    if (wheel != 0 && press.hovered) {
        input.zoom *= std::pow(1.2F, wheel);
        input.at = local({ImGui::GetIO().MousePos.x, ImGui::GetIO().MousePos.y});
    }
    return input;
}

void route_gestures(UiState& state, const std::vector<Gesture>& gestures) {
    for (const Gesture& g : gestures) {
        if (g.kind == GestureKind::press) {
            state.drag_owner = 0;
            state.drag_scroll.reset();
        }
        const bool begins = g.kind == GestureKind::drag || g.kind == GestureKind::pinch;
        if (begins && state.drag_owner == 0) state.drag_owner = owner_of(state.last, g);
    }
}

}  // namespace cotter
