// Rows and facts; see row.h.
#include "app/ui/row.h"

#include <algorithm>

#include "app/ui/grade_mark.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

// Where the parts of a row lie, from its left.
struct Plan {
    Laid label, under, value;
    float mark = 0;  // side of the mark, 0 when there is none
    float text_x = 0;
    bool value_below = false;
    float height = 0;
};

float sum_of_lines(const RowSpec& spec, const Plan& plan) {
    float height = plan.label.height;
    if (!spec.under.empty()) height += plan.under.height + 2;
    if (!spec.value.empty() && plan.value_below) height += plan.value.height + 2;
    return height;
}

Plan plan_row(const UiContext& ui, const Name& name, const RowSpec& spec, float width) {
    Plan plan;
    plan.mark = spec.grade || spec.answer || spec.icon != Icon::none ? 28 * std::min(ui.sizes.type, 1.5F) : 0;
    plan.text_x = Sizes::pad + (plan.mark > 0 ? plan.mark + 12 : 0);
    const float free = width - plan.text_x - Sizes::pad - (spec.leads_on ? 24 + Sizes::gap : 0);
    const float value = spec.value.empty() ? 0 : text_width(ui, spec.value, Type::bold);
    const float label = text_width(ui, name.label, Type::body);
    plan.value_below = value > 0 && (value > free * 0.5F || label + value + Sizes::pad > free);
    const float beside = plan.value_below || value == 0 ? 0 : value + Sizes::pad;
    plan.label = lay_text(ui, name.label, Type::body, free - beside);
    plan.under = lay_text(ui, spec.under, Type::small, free - beside);
    plan.value = lay_text(ui, spec.value, Type::bold, plan.value_below ? free : value + 1);
    plan.height = std::max(Sizes::main, std::max(sum_of_lines(spec, plan), plan.mark) + 2 * 12);
    return plan;
}

void draw_mark(const RowSpec& spec, const Rect& box, const Paint& paint) {
    if (spec.answer)
        draw_sign(*spec.answer, box, paint.text);
    else if (spec.grade)
        draw_sign(sign_of(*spec.grade), box, paint.text);
    else if (spec.icon != Icon::none)
        draw_icon(spec.icon, box, paint.text);
}

void draw_words(UiContext& ui, const RowSpec& spec, const Plan& plan, const Rect& rect, const TextLook& look) {
    const float lines = sum_of_lines(spec, plan);
    float y = rect.y + (rect.h - lines) / 2;
    const float width = rect.right() - rect.x - plan.text_x;
    const auto place = [&](const Laid& laid) {
        const Rect box{rect.x + plan.text_x, y, std::min(laid.width + 2, width), laid.height};
        y += laid.height + 2;
        return box;
    };
    draw_text(ui, plan.label, place(plan.label), look);
    TextLook lesser = look;
    if (spec.enabled) lesser.colour = ui.theme.second;
    if (!spec.under.empty()) draw_text(ui, plan.under, place(plan.under), lesser);
    if (spec.value.empty()) return;
    if (plan.value_below) return draw_text(ui, plan.value, place(plan.value), look);
    const float right = rect.right() - Sizes::pad - (spec.leads_on ? 24 + Sizes::gap : 0);
    const float wide = plan.value.width + 2;
    draw_text(ui, plan.value, {right - wide, rect.y, wide, rect.h}, look);
}

}  // namespace

bool row(UiContext& ui, const Name& name, const RowSpec& spec) {
    const float width = room();
    const Plan plan = plan_row(ui, name, spec, width);
    const Rect rect = take_space(width, plan.height);
    const Press press = press_area(ui, name, rect, {Role::row, spec.enabled, spec.chosen, false, spec.value});
    const Paint& paint = ui.paint(!spec.enabled ? Tone::off : spec.chosen ? Tone::chosen : Tone::plate);
    draw_press_plate(ui, rect, press, paint, kPlateCuts);
    if (spec.chosen) draw_witness({rect.x + 3, rect.y + 4, Sizes::stripe, rect.h - 8}, ui.theme.witness);
    draw_mark(spec, {rect.x + Sizes::pad, rect.y, plan.mark, rect.h}, paint);
    draw_words(ui, spec, plan, rect, {paint.text, paint.ground, Align::left, true, press.id});
    if (spec.leads_on) draw_icon(Icon::next, {rect.right() - Sizes::pad - 22, rect.y, 22, rect.h}, ui.theme.second);
    return press.tapped;
}

void fact(UiContext& ui, std::string_view label, std::string_view value) {
    const Paint& page = ui.paint(Tone::page);
    const float width = room();
    const bool beside = text_width(ui, label, Type::body) <= width * 0.4F;
    const float left = beside ? width * 0.4F : width;
    const float right = beside ? width * 0.6F - Sizes::gap : width;
    const Laid name = lay_text(ui, label, beside ? Type::body : Type::small, left);
    const Laid what = lay_text(ui, value, Type::bold, right);
    const float height = beside ? std::max(name.height, what.height) : name.height + what.height;
    const Rect rect = take_space(width, height);
    draw_text(ui, name, {rect.x, rect.y, left, name.height}, {ui.theme.second, page.ground});
    const float y = beside ? rect.y : rect.y + name.height;
    draw_text(ui, what, {rect.right() - right, y, right, what.height}, {page.text, page.ground});
}

}  // namespace cotter
