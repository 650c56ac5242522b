// See frame.h: a list with its tools.
#include <algorithm>

#include <fmt/format.h>

#include "app/desk/frame.h"
#include "app/ui/press.h"
#include "app/ui/text.h"
#include "app/ui/widgets.h"

namespace cotter::desk {

namespace {

constexpr float kField = 340, kNarrow = 900, kKey = 44, kDetailLines = 3;

// As much of `text` as three lines hold.
std::string three_lines(const UiContext& ui, const std::string& text, float width) {
    const Laid laid = lay_text(ui, text, Type::small, width);
    if (laid.lines.size() <= static_cast<std::size_t>(kDetailLines)) return text;
    const std::string_view last = laid.lines[static_cast<std::size_t>(kDetailLines) - 1].text;
    auto bytes = static_cast<std::size_t>(last.data() + last.size() - laid.text.data());
    bytes = bytes > 4 ? bytes - 4 : 0;
    while (bytes > 0 && (static_cast<unsigned char>(text[bytes]) & 0xC0) == 0x80) --bytes;
    return text.substr(0, bytes) + "…";
}

// Buttons from the right end of `line` to the left, the last one rightmost. Gives the tapped one.
std::optional<std::size_t> keys_at(UiContext& ui, const std::vector<ActionSpec>& actions, const Rect& line,
                                   float& left) {
    std::optional<std::size_t> tapped;
    left = line.right();
    for (std::size_t i = actions.size(); i-- > 0;) {
        const ActionSpec& a = actions[i];
        const ButtonSpec spec{a.tone, a.icon, a.enabled, false, 0};
        const float width = button_width(ui, a.name, spec);
        left -= width;
        if (button_at(ui, a.name, spec, {left, line.y, width, line.h})) tapped = i;
        left -= Sizes::gap;
    }
    return tapped;
}

std::string count_of(const List& list) {
    const std::size_t rows = list.table().size();
    if (const auto* kept = std::get_if<KeptRows>(&list.rows); kept != nullptr && kept->all() != rows)
        return fmt::format("{} of {}", rows, kept->all());
    return fmt::format("{} {}", rows, rows == 1 ? "row" : "rows");
}

void ask(const AskRegister* asked, std::string words, Commands& out) {
    if (asked != nullptr)
        out.push_back(AskRegister{std::move(words), asked->filter});
    else
        out.push_back(NarrowList{std::move(words)});
}

void draw_field(UiContext& ui, const List& list, ListState& state, const AskRegister* asked, bool focus,
                Commands& out) {
    FieldSpec spec;
    spec.value = asked != nullptr ? asked->words : list.words;
    spec.hint = asked != nullptr ? "unit, plate, name, part" : "words in this list";
    spec.max_bytes = 200;
    spec.focus = focus || state.focus > 0;
    if (state.focus > 0) {
        --state.focus;
        ui.wake_at(ui.now_s);
    }
    const FieldAnswer answer = text_field(ui, {"Search", "search"}, spec);
    if (answer.text) return ask(asked, *answer.text, out);
    if (const auto key = typed_key(ui)) {
        ask(asked, spec.value + *key, out);
        state.focus = 2;
    }
}

// Search on the left, the list's files on the right.
float draw_tools(UiContext& ui, const List& list, ListState& state, const Rect& area, const ListTools& tools,
                 const AskRegister* asked, bool focus, Commands& out) {
    const float wide = area.w < kNarrow ? kField - 110 : kField;
    float y = area.y;
    if (tools.search) y = flow({area.x, area.y, wide, 0}, [&] { draw_field(ui, list, state, asked, focus, out); });
    std::vector<ActionSpec> keys{{{"Columns", "columns"}}};
    const bool any = list.table().size() > 0;
    const auto add = [&](bool wanted, const char* label, const char* key) {
        if (wanted) keys.push_back({{label, key}, Tone::quiet, Icon::none, any, false});
    };
    add(tools.pdf, "Print as PDF", "pdf");
    add(tools.csv, "CSV", "csv");
    add(tools.ics, "Calendar", "ics");
    const float top = tools.search ? y - Sizes::gap - kKey - 6 : area.y;
    float left = 0;
    if (const auto tapped = keys_at(ui, keys, {area.x, top, area.w, kKey}, left)) {
        const std::string& key = keys[*tapped].name.key;
        if (key == "columns") state.columns_open = true;
        if (key == "pdf") out.push_back(WriteList{ListFile::pdf});
        if (key == "csv") out.push_back(WriteList{ListFile::csv});
        if (key == "ics") out.push_back(WriteList{ListFile::ics});
    }
    std::string count = count_of(list);
    if (const std::size_t n = state.model.chosen_count(); n > 0) count += fmt::format(", {} chosen", n);
    const float from = area.x + (tools.search ? wide + Sizes::pad : 0);
    const Laid laid = lay_text(ui, count, Type::small, std::max(60.0F, left - from));
    draw_text(ui, laid, {from, top, std::max(60.0F, left - from), kKey},
              {ui.theme.second, ui.paint(Tone::page).ground});
    return std::max(y, top + kKey + Sizes::gap);
}

void draw_detail(UiContext& ui, const List& list, const ListState& state, const Rect& strip, const ListTools& tools,
                 ListAnswer& answer) {
    const TableRow* row = list.table().row(state.model.cursor());
    if (row == nullptr && tools.actions.empty()) return;
    const Paint& plate = ui.paint(Tone::plate);
    draw_plate(strip, {plate.ground, plate.edge, Sizes::edge, Sizes::cut, kPlateCuts});
    float left = strip.right();
    const IdScope scope("detail");
    answer.action =
        keys_at(ui, tools.actions, {strip.x, strip.middle().y - kKey / 2, strip.w - Sizes::pad, kKey}, left);
    if (row == nullptr || row->detail.empty()) return;
    const float width = left - strip.x - 2 * Sizes::pad;
    const std::string words = three_lines(ui, row->detail, width);
    const Laid laid = lay_text(ui, words, Type::small, width);
    draw_text(ui, laid, {strip.x + Sizes::pad, strip.y, width, strip.h}, {plate.text, plate.ground});
}

}  // namespace

ListAnswer list_panel(UiContext& ui, const List& list, ListState& state, const Rect& area, const ListTools& tools,
                      const AskRegister* asked, bool focus, Commands& out) {
    const IdScope scope(list.name);
    if (state.made != list.made) {
        state.model.start(list.table().size());
        state.made = list.made;
    }
    float y = draw_tools(ui, list, state, area, tools, asked, focus, out);
    if (tools.filters) y = flow(below(area, y), tools.filters);
    const float least = kDetailLines * line_height(ui, Type::small) + 16;
    Rect place = below(area, y);
    place.h = whole_rows(place.h - least - Sizes::gap);
    const float detail = std::max(least, area.bottom() - place.bottom() - Sizes::gap);  // with what no row fits into
    ListAnswer answer;
    const TableAnswer told =
        table(ui, {"table", list.columns, list.table(), list.sort, list.empty, tools.keys, true}, state.model, place);
    answer.opened = told.opened;
    if (told.sort) out.push_back(SortList{*told.sort});
    if (told.wanted) out.push_back(WantRows{*told.wanted});
    draw_detail(ui, list, state, {area.x, place.bottom() + Sizes::gap, area.w, detail}, tools, answer);
    return answer;
}

void columns_sheet(UiContext& ui, const List& list, ListState& state, Commands& out) {
    if (!state.columns_open) return;
    const SheetSpec spec{"columns", "Columns", {{{"Done", "done"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        for (std::size_t i = 0; i < list.columns.size(); ++i)
            if (toggle(ui, {list.columns[i].title, "column " + list.columns[i].key}, list.columns[i].shown))
                out.push_back(ShowColumn{i, !list.columns[i].shown});
    });
    if (answer.closed || answer.action) state.columns_open = false;
}

}  // namespace cotter::desk
