// See choice.h.
#include "app/ui/choice.h"

#include <algorithm>
#include <array>
#include <vector>

#include "app/ui/draw.h"
#include "app/ui/grade_mark.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kChoicePad = 16;

float mark_side(const UiContext& ui) {
    return 26 * std::min(ui.sizes.type, 1.5F);
}

float mark_room(const UiContext& ui, const ChipSpec& spec) {
    return spec.grade ? mark_side(ui) + Sizes::gap : 0;
}

Type type_of(const ChipSpec& spec) {
    return spec.chosen ? Type::bold : Type::body;
}

// Room for the bold words, so that nothing jumps when a chip is chosen.
float chip_width(const UiContext& ui, const ChipSpec& spec) {
    const float words =
        std::max(text_width(ui, spec.name.label, Type::bold), text_width(ui, spec.name.label, Type::body));
    return std::max(Sizes::target + Sizes::gap, words + 2 * kChoicePad + mark_room(ui, spec) + 2);
}

float chip_height(const UiContext& ui, const ChipSpec& spec, float width) {
    const float words = width - 2 * kChoicePad - mark_room(ui, spec);
    return std::max(Sizes::target, lay_text(ui, spec.name.label, Type::bold, words).height + 2 * 10);
}

bool chip_at(UiContext& ui, const ChipSpec& spec, const Rect& rect, Role role) {
    const Press press = press_area(ui, spec.name, rect, {role, spec.enabled, spec.chosen, false, {}});
    const Paint& paint = ui.paint(!spec.enabled ? Tone::off : spec.chosen ? Tone::chosen : Tone::plate);
    draw_press_plate(ui, rect, press, paint, kChipCuts);
    if (spec.chosen) draw_witness({rect.x + 5, rect.y + 10, Sizes::stripe, rect.h - 20}, ui.theme.witness);
    const float mark = mark_room(ui, spec);
    const Laid laid = lay_text(ui, spec.name.label, type_of(spec), rect.w - 2 * kChoicePad - mark);
    const float left = rect.x + (rect.w - laid.width - mark) / 2;
    if (spec.grade) draw_sign(sign_of(*spec.grade), {left, rect.y, mark_side(ui), rect.h}, paint.text);
    draw_text(ui, laid, {left + mark, rect.y, laid.width + 1, rect.h},
              {paint.text, paint.ground, Align::left, true, press.id});
    return press.tapped;
}

float cell_width(std::size_t columns, float width) {
    return (width - Sizes::gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
}

// All in one line when they fit; else in two or more equal lines; else one below the other.
std::size_t even_columns(std::size_t count, float widest, float width) {
    for (std::size_t lines = 1; lines < count; ++lines)
        if (count % lines == 0 && widest <= cell_width(count / lines, width)) return count / lines;
    return 1;
}

constexpr float kSlot = 60;  // dp, of a switch

float switch_word_width(const UiContext& ui) {
    return std::max(text_width(ui, ui.words.on, Type::bold), text_width(ui, ui.words.off, Type::bold)) + 2;
}

// A pin in a slot, at one end or the other, and the word for it.
void draw_switch(UiContext& ui, const Rect& box, bool on, bool enabled, std::uint32_t target) {
    constexpr Cuts kAll{true, true, true, true};
    const Paint& plate = ui.paint(enabled ? Tone::plate : Tone::off);
    const float width = switch_word_width(ui);
    const Laid word = lay_text(ui, on ? ui.words.on : ui.words.off, Type::bold, width);
    const Rect slot{box.right() - kSlot, box.middle().y - 16, kSlot, 32};
    draw_text(ui, word, {slot.x - Sizes::gap - width, box.y, width, box.h},
              {plate.text, plate.ground, Align::right, true, target});
    const bool lit = on && enabled;
    draw_plate(slot, {ui.paint(lit ? Tone::strong : Tone::off).ground, plate.text, Sizes::edge, 8, kAll});
    const Rgb pin = lit ? ui.paint(Tone::strong).text : plate.text;
    draw_plate({on ? slot.right() - 30 : slot.x + 4, slot.y + 4, 26, 24}, {pin, pin, 0, 6, kAll});
}

}  // namespace

std::optional<std::size_t> chips(UiContext& ui, std::string_view key, std::span<const ChipSpec> specs) {
    std::optional<std::size_t> tapped;
    const float width = room();
    const IdScope scope(key);
    std::vector<float> widths;
    for (const ChipSpec& spec : specs) widths.push_back(std::min(width, chip_width(ui, spec)));
    for (std::size_t first = 0; first < specs.size();) {
        std::size_t end = first;
        float used = 0;
        float height = 0;
        while (end < specs.size() && (end == first || used + widths[end] <= width)) {
            used += widths[end] + Sizes::gap;
            height = std::max(height, chip_height(ui, specs[end], widths[end]));
            ++end;
        }
        const Rect line = take_space(width, height);
        for (float x = line.x; first < end; x += widths[first] + Sizes::gap, ++first)
            if (chip_at(ui, specs[first], {x, line.y, widths[first], line.h}, Role::chip)) tapped = first;
    }
    return tapped;
}

std::optional<std::size_t> one_of(UiContext& ui, std::string_view key, std::span<const ChipSpec> specs) {
    std::optional<std::size_t> tapped;
    const float width = room();
    const IdScope scope(key);
    float widest = 0;
    for (const ChipSpec& spec : specs) widest = std::max(widest, chip_width(ui, spec));
    const std::size_t columns = even_columns(specs.size(), widest, width);
    const float cell = cell_width(columns, width);
    float height = 0;
    for (const ChipSpec& spec : specs) height = std::max(height, chip_height(ui, spec, cell));
    for (std::size_t i = 0; i < specs.size(); i += columns) {
        const Rect line = take_space(width, height);
        for (std::size_t j = i; j < std::min(specs.size(), i + columns); ++j) {
            const Rect place{line.x + static_cast<float>(j - i) * (cell + Sizes::gap), line.y, cell, height};
            if (chip_at(ui, specs[j], place, Role::choice)) tapped = j;
        }
    }
    return tapped;
}

std::optional<Grade> grade_choice(UiContext& ui, std::string_view key, std::optional<Grade> chosen) {
    std::array<ChipSpec, 4> specs{ChipSpec{{}, false, true, {}}, ChipSpec{{}, false, true, {}},
                                  ChipSpec{{}, false, true, {}}, ChipSpec{{}, false, true, {}}};
    for (std::size_t i = 0; i < specs.size(); ++i) {
        const auto grade = static_cast<Grade>(i);
        specs[i] = {Name(name_of(grade)), chosen == grade, true, grade};
    }
    const auto tapped = chips(ui, key, specs);
    return tapped ? std::optional(static_cast<Grade>(*tapped)) : std::nullopt;
}

bool toggle(UiContext& ui, const Name& name, bool on, std::string_view under, bool enabled) {
    const float width = room();
    const float state = kSlot + 2 * Sizes::gap + switch_word_width(ui);
    const float words = width - 2 * kChoicePad - state;
    const Laid label = lay_text(ui, name.label, Type::body, words);
    const Laid lesser = lay_text(ui, under, Type::small, words);
    const float lines = label.height + (under.empty() ? 0 : lesser.height + 2);
    const Rect rect = take_space(width, std::max(Sizes::main, lines + 24));
    const Press press = press_area(ui, name, rect, {Role::toggle, enabled, on, false, on ? ui.words.on : ui.words.off});
    const Paint& paint = ui.paint(enabled ? Tone::plate : Tone::off);
    draw_press_plate(ui, rect, press, paint, kPlateCuts);
    const float y = rect.y + (rect.h - lines) / 2;
    draw_text(ui, label, {rect.x + kChoicePad, y, words, label.height},
              {paint.text, paint.ground, Align::left, true, press.id});
    if (!under.empty())
        draw_text(ui, lesser, {rect.x + kChoicePad, y + label.height + 2, words, lesser.height},
                  {enabled ? ui.theme.second : paint.text, paint.ground, Align::left, true, press.id});
    draw_switch(ui, {rect.right() - kChoicePad - state, rect.y, state, rect.h}, on, enabled, press.id);
    return press.tapped;
}

}  // namespace cotter
