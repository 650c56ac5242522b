// See panel.h.
#include "app/ui/panel.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>

#include <fmt/format.h>

#include "app/ui/button.h"
#include "app/ui/grade_mark.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

void words(UiContext& ui, std::string_view text, Type type, Rgb colour) {
    const Laid laid = lay_text(ui, text, type, room());
    const Rect rect = take_space(room(), laid.height);
    draw_text(ui, laid, rect, {colour, ui.paint(Tone::page).ground, Align::left, false, 0});
}

void box_of_words(UiContext& ui, std::string_view title, std::string_view text, const Paint& paint, bool hatched,
                  std::optional<Sign> sign = {}) {
    const float left = hatched ? 14 + Sizes::pad : Sizes::pad + 4;
    const float width = room() - left - Sizes::pad;
    const float side = sign ? 44 * std::min(ui.sizes.type, 1.5F) : 0;
    const float beside = sign ? side + 12 : 0;
    const Laid head = lay_text(ui, title, Type::bold, width - beside);
    const Laid body = lay_text(ui, text, Type::body, width);
    const float head_high = std::max(head.height, side);
    const Rect rect = take_space(room(), head_high + body.height + 4 + 2 * 14);
    draw_plate(rect, {paint.ground, paint.edge, Sizes::edge, 0, kNoCuts});
    if (hatched) draw_hatch({rect.x + 2, rect.y + 2, 14, rect.h - 4}, paint.text);
    const Rect inner{rect.x + left, rect.y + 14, width, head_high};
    if (sign) draw_sign(*sign, {inner.x, inner.y, side, inner.h}, paint.text);
    draw_text(ui, head, {inner.x + beside, inner.y, width - beside, inner.h}, {paint.text, paint.ground});
    draw_text(ui, body, {inner.x, inner.bottom() + 4, width, body.height}, {paint.text, paint.ground});
}

void draw_gauge(const UiContext& ui, const Rect& rect, float fraction) {
    const Paint& plate = ui.paint(Tone::plate);
    draw_plate(rect, {ui.paint(Tone::off).ground, plate.text, Sizes::edge, 0, kNoCuts});
    const Rect inner = grown(rect, -Sizes::edge);
    if (fraction < 0) return draw_hatch(inner, ui.paint(Tone::off).edge);
    draw_fill({inner.x, inner.y, inner.w * std::min(1.0F, fraction), inner.h}, ui.paint(Tone::strong).ground);
}

// Draws one body in its share of the line and gives the cursor back to the line's start.
void column(float x, float width, const Body& body) {
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    const float right = window->ContentRegionRect.Max.x;
    ImGui::SetCursorScreenPos({x, window->DC.CursorPos.y});
    window->ContentRegionRect.Max.x = x + width;
    ImGui::BeginGroup();
    body();
    ImGui::EndGroup();
    window->ContentRegionRect.Max.x = right;
}

}  // namespace

void heading(UiContext& ui, std::string_view text) {
    space(Sizes::gap);
    words(ui, text, Type::title, ui.paint(Tone::page).text);
}

void paragraph(UiContext& ui, std::string_view text, bool lesser) {
    words(ui, text, lesser ? Type::small : Type::body, lesser ? ui.theme.second : ui.paint(Tone::page).text);
}

void space(float dp) {
    if (dp > Sizes::gap)
        ImGui::Dummy({1, dp - Sizes::gap});
    else
        ImGui::Dummy({1, 0});
}

void caution(UiContext& ui, std::string_view title, std::string_view text) {
    box_of_words(ui, title, text, ui.paint(Tone::caution), true);
}

void remark(UiContext& ui, std::string_view title, std::string_view text) {
    box_of_words(ui, title, text, ui.paint(Tone::plate), false);
}

void big_figure(UiContext& ui, const FigureSpec& spec) {
    const Paint& paint = ui.paint(Tone::plate);
    const float width = room() - 2 * Sizes::pad;
    const Laid title = lay_text(ui, spec.title, Type::bold, width);
    const Laid unit = lay_text(ui, spec.unit, Type::title, width / 2);
    const Laid number = lay_text(ui, spec.number, Type::figures, width - unit.width - Sizes::gap);
    const Laid under = lay_text(ui, spec.under, Type::body, width);
    const float below = spec.under.empty() ? 0 : under.height;
    const Rect rect = take_space(room(), title.height + number.height + below + 2 * 10);
    draw_plate(rect, {paint.ground, paint.text, Sizes::edge, Sizes::cut, kPlateCuts});
    Rect at{rect.x + Sizes::pad, rect.y + 10, width, title.height};
    draw_text(ui, title, at, {paint.text, paint.ground});
    at = {at.x, at.bottom(), number.width + 1, number.height};
    draw_text(ui, number, at, {paint.text, paint.ground});
    draw_text(ui, unit, {at.right() + Sizes::gap, at.y, unit.width + 1, at.h}, {paint.text, paint.ground});
    draw_text(ui, under, {at.x, at.bottom(), width, below}, {paint.text, paint.ground});
}

void answer_box(UiContext& ui, Sign sign, std::string_view title, std::string_view text, bool stop) {
    box_of_words(ui, title, text, ui.paint(stop ? Tone::caution : Tone::plate), stop, sign);
}

bool empty_state(UiContext& ui, std::string_view title, std::string_view text, const Name& action) {
    space(3 * Sizes::pad);
    const float side = 72;
    const Rect mark = take_space(room(), side);
    draw_icon(Icon::open_pin, {mark.middle().x - side / 2, mark.y, side, side}, ui.theme.second);
    const auto centred = [&](std::string_view line, Type type, Rgb colour) {
        const Laid laid = lay_text(ui, line, type, room());
        draw_text(ui, laid, take_space(room(), laid.height),
                  {colour, ui.paint(Tone::page).ground, Align::middle, true, 0});
    };
    centred(title, Type::title, ui.paint(Tone::page).text);
    centred(text, Type::body, ui.theme.second);
    if (action.label.empty()) return false;
    space(Sizes::pad);
    ButtonSpec spec;
    const float width = std::min(room(), button_width(ui, action, spec));
    const Rect line = take_space(room(), button_height(ui, action, spec, width));
    return button_at(ui, action, spec, {line.middle().x - width / 2, line.y, width, line.h});
}

bool progress(UiContext& ui, std::string_view key, const ProgressSpec& spec) {
    const Paint& paint = ui.paint(Tone::plate);
    const float width = room() - 2 * Sizes::pad;
    const std::string percent = spec.fraction < 0 ? std::string() : fmt::format("{:.0f} %", spec.fraction * 100);
    const float percent_width = percent.empty() ? 0 : text_width(ui, percent, Type::bold) + 2;
    const Laid doing = lay_text(ui, spec.doing, Type::bold, width - (percent.empty() ? 0 : percent_width + Sizes::pad));
    const Laid detail = lay_text(ui, spec.detail, Type::small, width);
    const Name cancel(ui.words.cancel, "cancel");
    const float key_height = spec.may_cancel ? button_height(ui, cancel, {}, width) + Sizes::pad : 0;
    const float below = spec.detail.empty() ? 0 : detail.height + 4;
    const Rect rect = take_space(room(), doing.height + 12 + 20 + below + key_height + 2 * Sizes::pad);
    draw_plate(rect, {paint.ground, paint.edge, Sizes::edge, Sizes::cut, kPlateCuts});
    Rect at{rect.x + Sizes::pad, rect.y + Sizes::pad, width, doing.height};
    draw_text(ui, doing, at, {paint.text, paint.ground});
    draw_text(ui, lay_text(ui, percent, Type::bold, percent_width + 1),
              {at.right() - percent_width - 1, at.y, percent_width + 1, at.h},
              {paint.text, paint.ground, Align::right, true, 0});
    at = {at.x, at.bottom() + 12, width, 20};
    draw_gauge(ui, at, spec.fraction);
    if (!spec.detail.empty())
        draw_text(ui, detail, {at.x, at.bottom() + 4, width, detail.height}, {ui.theme.second, paint.ground});
    if (!spec.may_cancel) return false;
    const IdScope scope(key);
    const float wide = std::min(width, button_width(ui, cancel, {}));
    return button_at(ui, cancel, {},
                     {rect.right() - Sizes::pad - wide, rect.bottom() - key_height, wide, key_height - Sizes::pad});
}

void side_by_side(UiContext& ui, float share, float least, const Body& left, const Body& right) {
    const float width = room();
    const float first = (width - Sizes::pad) * share;
    const float second = width - Sizes::pad - first;
    if (std::min(first, second) < least * std::min(1.5F, ui.sizes.type)) {
        left();
        right();
        return;
    }
    const ImVec2 start = ImGui::GetCursorScreenPos();
    column(start.x, first, left);
    const float left_end = ImGui::GetCursorScreenPos().y;
    ImGui::SetCursorScreenPos(start);
    column(start.x + first + Sizes::pad, second, right);
    const float end = std::max(left_end, ImGui::GetCursorScreenPos().y);
    ImGui::SetCursorScreenPos({start.x, end});
    ImGui::Dummy({0, 0});
}

}  // namespace cotter
