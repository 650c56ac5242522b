// See keypad.h. Keys on one side, what they make on the other when the screen lies low; else one below the other.
#include "app/ui/keypad.h"

#include <algorithm>
#include <array>
#include <vector>

#include <fmt/format.h>

#include "app/ui/button.h"
#include "app/ui/choice.h"
#include "app/ui/grade_mark.h"
#include "app/ui/panel.h"
#include "app/ui/press.h"
#include "app/ui/sheet.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

using enum KeypadKey;

struct KeyFace {
    KeypadKey key;
    int span = 1;  // columns
};
using KeyLine = std::vector<KeyFace>;

std::vector<KeyLine> key_lines(const KeypadSpec& spec) {
    if (spec.fractions) {
        std::vector<KeyLine> lines{{{d7}, {d8}, {d9}, {erase}},
                                   {{d4}, {d5}, {d6}, {eighths}},
                                   {{d1}, {d2}, {d3}, {sixteenths}},
                                   {{point}, {d0}, {and_part}, {thirty_seconds}}};
        if (spec.sign) lines.push_back({{sign, 4}});
        return lines;
    }
    if (spec.sign)
        return {{{d7}, {d8}, {d9}, {erase}}, {{d4}, {d5}, {d6}, {sign}}, {{d1}, {d2}, {d3}, {point}}, {{d0, 4}}};
    return {{{d7}, {d8}, {d9}}, {{d4}, {d5}, {d6}}, {{d1}, {d2}, {d3}}, {{point}, {d0}, {erase}}};
}

std::string key_label(const UiContext& ui, KeypadKey key) {
    switch (key) {
        case point:
            return ".";
        case sign:
            return "+/−";
        case and_part:
            return ui.words.and_part;
        case eighths:
            return "/8";
        case sixteenths:
            return "/16";
        case thirty_seconds:
            return "/32";
        case erase:
            return ui.words.erase;
        default:
            return fmt::format("{}", static_cast<int>(key));
    }
}

bool key_at(UiContext& ui, KeypadKey key, bool enabled, const Rect& rect) {
    const std::string label = key_label(ui, key);
    const Press press = press_area(ui, label, rect, {Role::key, enabled, false, false, {}});
    const Paint& paint = ui.paint(!enabled ? Tone::off : key <= point ? Tone::plate : Tone::bar);
    draw_press_plate(ui, rect, press, paint, kPlateCuts);
    if (key == erase) {
        draw_icon(Icon::erase, {rect.middle().x - 16, rect.middle().y - 16, 32, 32}, paint.text);
        return press.tapped;
    }
    const Laid laid = lay_text(ui, label, Type::title, rect.w - 8);
    draw_text(ui, laid, grown(rect, -3), {paint.text, paint.ground, Align::middle, true, press.id});
    return press.tapped;
}

void draw_keys(UiContext& ui, KeypadModel& model) {
    const IdScope scope("keys");
    const std::vector<KeyLine> lines = key_lines(model.spec());
    const float width = room();
    const auto columns = static_cast<float>(lines.front().size());
    const float cell = (width - Sizes::gap * (columns - 1)) / columns;
    const float height = std::max(Sizes::main, line_height(ui, Type::title) + 12);
    for (const KeyLine& line : lines) {
        Rect place = take_space(width, height);
        for (const KeyFace& face : line) {
            const auto span = static_cast<float>(face.span);
            place.w = cell * span + Sizes::gap * (span - 1);
            if (key_at(ui, face.key, model.can(face.key), place)) model.press(face.key);
            place.x += place.w + Sizes::gap;
        }
    }
}

std::string_view unit_label(const std::string& ucum) {
    const Unit* unit = find_unit(ucum);
    return unit == nullptr ? std::string_view(ucum) : unit->label;
}

std::string running(const UiContext& ui, const KeypadModel& model) {
    const auto spread = model.spread();
    if (!spread) return {};
    const std::string_view unit = unit_label(model.unit());
    return fmt::format("{} {} {} · {} {} {}", ui.words.least, *model.least(), unit, ui.words.spread, *spread, unit);
}

std::string skip_words(const UiContext& ui, const KeypadModel& model) {
    if (model.spec().may_not_know) return ui.words.not_known;
    return model.taken() == Taken::not_measured ? ui.words.not_measured : ui.words.not_accessible;
}

// The value as large as it fits, the unit beside it, least and spread below.
void draw_display(UiContext& ui, const KeypadModel& model) {
    const bool skipped = model.taken() != Taken::measured;
    const Paint& paint = ui.paint(skipped ? Tone::off : Tone::plate);
    const std::string value = skipped ? skip_words(ui, model) : model.text();
    const std::string unit = skipped ? std::string() : std::string(unit_label(model.unit()));
    const float width = room() - 2 * Sizes::pad;
    const Laid unit_text = lay_text(ui, unit, Type::title, width * 0.4F);
    const float unit_room = unit.empty() ? 0 : unit_text.width + Sizes::pad;
    const Laid number = lay_text(ui, value, skipped ? Type::title : Type::figures, width - unit_room);
    const std::string below = running(ui, model);
    const Laid under = lay_text(ui, below, Type::small, width);
    const float tall = std::max(number.height, line_height(ui, skipped ? Type::title : Type::figures));
    const Rect rect = take_space(room(), tall + (below.empty() ? 0 : under.height) + 16);
    draw_plate(rect, {paint.ground, paint.text, Sizes::edge, Sizes::cut, kPlateCuts});
    const Rect line{rect.x + Sizes::pad, rect.y + 8, width, tall};
    draw_text(ui, number, {line.x, line.y, width - unit_room, tall}, {paint.text, paint.ground, Align::right, true, 0});
    draw_text(ui, unit_text, {line.right() - unit_text.width - 1, line.y, unit_text.width + 1, tall},
              {paint.text, paint.ground});
    draw_text(ui, under, {line.x, line.bottom(), width, under.height},
              {ui.theme.second, paint.ground, Align::right, true, 0});
}

// Sign, limit and source in small type; the action is there while the value fails.
bool draw_note(UiContext& ui, const KeypadNote& note) {
    if (note.text.empty()) return false;
    constexpr float kKeyMark = 28;
    const Paint& paint = ui.paint(Tone::page);
    const float indent = note.grade ? kKeyMark + Sizes::gap : 0;
    const Laid text = lay_text(ui, note.text, Type::small, room() - indent);
    const Rect rect = take_space(room(), std::max(note.grade ? kKeyMark : 0, text.height));
    if (note.grade) draw_sign(sign_of(*note.grade), {rect.x, rect.y, kKeyMark, kKeyMark}, paint.text);
    draw_text(ui, text, {rect.x + indent, rect.y, rect.w - indent, rect.h}, {paint.text, paint.ground});
    if (note.action.empty()) return false;
    return wide_button(ui, {note.action, "note action"}, {Tone::danger, Icon::plus, true, false, 0});
}

void draw_points(UiContext& ui, KeypadModel& model) {
    if (model.points().size() < 2 && !model.spec().more_points) return;
    std::vector<std::string> labels;
    for (std::size_t i = 0; i < model.points().size(); ++i)
        labels.push_back(model.points()[i].empty() ? model.point_name(i)
                                                   : fmt::format("{}: {}", model.point_name(i), model.points()[i]));
    std::vector<std::string> keys;
    for (std::size_t i = 0; i < labels.size(); ++i) keys.push_back(fmt::format("point {}", i));
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < labels.size(); ++i)
        specs.push_back({{labels[i], keys[i]}, i == model.point(), true, {}});
    if (const auto tapped = chips(ui, "points", specs)) model.choose_point(*tapped);
}

void draw_units(UiContext& ui, KeypadModel& model) {
    if (model.spec().units.size() < 2) return;
    std::vector<ChipSpec> specs;
    for (const std::string& unit : model.spec().units)
        specs.push_back(
            {{unit_label(unit), unit}, unit == model.unit(), unit == model.unit() || !model.unit_fixed(), {}});
    if (const auto tapped = one_of(ui, "units", specs)) model.choose_unit(model.spec().units[*tapped]);
}

void draw_skips(UiContext& ui, KeypadModel& model) {
    if (model.spec().may_not_know) {
        const std::array specs{ChipSpec{{ui.words.not_known, "not known"}, model.taken() != Taken::measured, true, {}}};
        if (one_of(ui, "skip", specs)) model.answer(Taken::not_measured);
        return;
    }
    if (!model.spec().may_skip) return;
    const std::array specs{
        ChipSpec{{ui.words.not_measured, "not measured"}, model.taken() == Taken::not_measured, true, {}},
        ChipSpec{{ui.words.not_accessible, "not accessible"}, model.taken() == Taken::not_accessible, true, {}}};
    if (const auto tapped = one_of(ui, "skip", specs))
        model.answer(*tapped == 0 ? Taken::not_measured : Taken::not_accessible);
}

// What each of the actions asks for beside them; `none` is the next point.
struct Bar {
    std::vector<ActionSpec> actions;
    std::vector<KeypadAnswer> answers;

    void add(ActionSpec action, KeypadAnswer answer) {
        actions.push_back(std::move(action));
        answers.push_back(answer);
    }
};

Bar bar_of(const UiContext& ui, const KeypadModel& model) {
    Bar bar;
    const bool last = model.point() + 1 >= model.points().size();
    const bool more = model.spec().more_points;
    if (model.spec().may_remove)
        bar.add({{ui.words.remove, "remove"}, Tone::danger, Icon::erase, true, false}, KeypadAnswer::removed);
    if (last ? more : model.points().size() > 1)
        bar.add({{last ? ui.words.add_point : ui.words.next_point, "next"},
                 Tone::quiet,
                 Icon::none,
                 model.can(next_point),
                 false},
                KeypadAnswer::none);
    bar.add({{ui.words.done, "done"}, Tone::strong, Icon::check, model.complete(), true}, KeypadAnswer::done);
    return bar;
}

}  // namespace

KeypadAnswer keypad_sheet(UiContext& ui, std::string_view key, KeypadModel& model, const KeypadNote& note) {
    bool noted = false;
    const Bar bar = bar_of(ui, model);
    const SheetAnswer answer = sheet(ui, {std::string(key), model.spec().title, bar.actions}, [&] {
        const Body made = [&] {
            draw_points(ui, model);
            draw_display(ui, model);
            noted = draw_note(ui, note);
            draw_units(ui, model);
            if (ui.low()) draw_skips(ui, model);
        };
        const Body keys = [&] {
            draw_keys(ui, model);
            if (!ui.low()) draw_skips(ui, model);
        };
        if (ui.low()) return side_by_side(ui, 0.45F, 220, made, keys);
        made();
        keys();
    });
    const KeypadAnswer asked = answer.action ? bar.answers[*answer.action] : KeypadAnswer::none;
    if (answer.action && asked == KeypadAnswer::none) model.press(next_point);
    if (noted) return KeypadAnswer::noted;
    return answer.closed ? KeypadAnswer::closed : asked;
}

}  // namespace cotter
