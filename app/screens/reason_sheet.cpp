// See reason_sheet.h.
#include "app/screens/reason_sheet.h"

#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_reason(UiContext& ui, const ReasonItem& item) {
    grade_plate(ui, item.grade);
    paragraph(ui, item.says);
    if (!item.reading.empty()) fact(ui, "Reading", item.reading);
    if (!item.limit.empty()) fact(ui, "Limit", item.limit);
    fact(ui, "Who says so", item.source);
    if (!item.steps.empty()) heading(ui, "How it was worked out");
    for (const std::string& step : item.steps) paragraph(ui, step);
    if (!item.todo.empty()) remark(ui, "To do", item.todo);
    if (item.practice)
        remark(ui, "Only common practice", "It warns and forbids nothing. The maker's figure would decide.");
}

void draw_unknown(UiContext& ui, const UnknownItem& item) {
    paragraph(ui, "Cannot tell, because: " + item.because + ".");
    if (!item.todo.empty()) remark(ui, "What would tell", item.todo);
    paragraph(ui,
              item.essential ? "Without it nobody can say whether the trailer may be towed."
                             : "It stands in the record as not known, never as good.",
              true);
}

// Where what decides or lacks is entered; none: only at the place itself.
struct WayOn {
    std::string_view label;
    std::optional<Route> route;
};
WayOn way_on(const ReasonItem& item) {
    return {item.practice ? "Enter the maker's figure" : "Change the maker's figure", item.figure};
}
WayOn way_on(const UnknownItem& item) {
    if (item.plate) return {"Enter what the label says", item.plate};
    return {"Enter the maker's figure", item.figure};
}

template <class Item, class Draw>
bool draw_sheet(UiContext& ui, const Item& item, const Draw& draw, Commands& out) {
    const std::string title = item.subject + ", " + item.place;
    const WayOn way = way_on(item);
    std::vector<ActionSpec> ways{{{"Go to the place", "place"}, Tone::quiet, Icon::none, true, false}};
    if (way.route) ways.push_back({{way.label, "figure"}, Tone::strong, Icon::none, true, true});
    const SheetAnswer answer = sheet(ui, {"reason " + item.key, title, ways}, [&] { draw(ui, item); });
    if (answer.action == 0u) out.push_back(GoTo{item.record});
    if (answer.action == 1u) out.push_back(GoTo{*way.route});
    return answer.closed || answer.action;
}

}  // namespace

void draw_reasons(UiContext& ui, std::span<const ReasonItem> reasons, bool with_place, std::string& open) {
    for (const ReasonItem& item : reasons) {
        const std::string title = with_place ? item.place + ": " + item.subject : item.subject;
        const std::string under = item.says + "\n" + item.source;
        RowSpec spec;
        spec.under = under;
        spec.grade = item.grade;
        if (row(ui, {title, item.key}, spec)) open = item.key;
    }
}

void draw_unknowns(UiContext& ui, std::span<const UnknownItem> unknowns, bool with_place, std::string& open) {
    for (const UnknownItem& item : unknowns) {
        const std::string title = with_place ? item.place + ": " + item.subject : item.subject;
        RowSpec spec;
        spec.under = item.because;
        spec.value = item.essential ? "essential" : "";
        spec.icon = Icon::help;
        if (row(ui, {title, item.key}, spec)) open = item.key;
    }
}

void draw_open_reason(UiContext& ui, std::span<const ReasonItem> reasons, std::span<const UnknownItem> unknowns,
                      std::string& open, Commands& out) {
    if (open.empty()) return;
    bool shown = false, closed = false;
    for (const ReasonItem& item : reasons) {
        if (shown || item.key != open) continue;
        shown = true;
        closed = draw_sheet(ui, item, draw_reason, out);
    }
    for (const UnknownItem& item : unknowns) {
        if (shown || item.key != open) continue;
        shown = true;
        closed = draw_sheet(ui, item, draw_unknown, out);
    }
    if (!shown || closed) open.clear();
}

}  // namespace cotter
