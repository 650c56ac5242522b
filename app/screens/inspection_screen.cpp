// See inspection_screen.h. The head and the groups.
#include "app/screens/inspection_screen.h"

#include "app/screens/common.h"
#include "app/screens/words_field.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_progress(UiContext& ui, const InspectionView& view, Commands& out) {
    paragraph(ui, view.result + ".");
    paragraph(ui, std::to_string(view.answered) + " of " + std::to_string(view.wanted) + " items answered.", true);
    for (const InspectionGroup& group : view.groups) {
        RowSpec spec;
        spec.value = group.words;
        spec.icon = group.answered == group.wanted ? Icon::pin : Icon::open_pin;
        if (group.not_ok > 0) spec.grade = Grade::repair;
        if (row(ui, {group.name, "group " + group.name}, spec))
            out.push_back(GoTo{{Screen::inspection, {}, group.name}});
    }
}

void draw_not_passing(UiContext& ui, const InspectionView& view, Commands& out) {
    if (view.not_passing.empty()) return;
    heading(ui, "Does not pass now");
    for (const NotPassing& item : view.not_passing) {
        RowSpec spec;
        spec.under = item.remark;
        spec.grade = Grade::repair;
        if (row(ui, {item.item + ", " + item.group, "not ok " + item.item}, spec))
            out.push_back(GoTo{{Screen::inspection, {}, item.group}});
    }
}

struct HeadField {
    const char* label;
    const char* key;
    const char* hint;
    std::string Inspection::*field;
};
constexpr HeadField kFields[]{
    {"Inspector, full name", "inspector", "first and last name", &Inspection::inspector},
    {"Motor carrier", "carrier", "name, address, number", &Inspection::carrier},
    {"Qualified to inspect by", "qualified", "training, certificate or years, and where the proof is kept",
     &Inspection::qualified_by},
    {"Qualified for brakes by", "brake qualified", "the same for brake work", &Inspection::brake_qualified_by},
    {"Statement", "statement", "in the inspector's words", &Inspection::statement},
};

void draw_head(UiContext& ui, const InspectionView& view, Commands& out) {
    heading(ui, "Inspector and qualification");
    const auto put = [&](const Inspection& head) { out.push_back(PutInspection{head}); };
    for (const HeadField& f : kFields)
        words_field(
            ui, {f.label, f.key}, {view.head.*f.field, f.hint, ""}, view.drafts,
            [&](const std::string& text) {
                Inspection head = view.head;
                head.*f.field = text;
                put(head);
            },
            out);
    Inspection head = view.head;
    if (view.head.statement.empty()) {
        paragraph(ui, kInspectionStatement, true);
        if (wide_button(ui, {"Take over these words", "statement words"})) {
            head.statement = kInspectionStatement;
            put(head);
        }
    }
    RowSpec date;
    date.value = view.date.empty() ? "not given" : std::string_view(view.date);
    date.under = "tap for today";
    if (row(ui, {"Date of the inspection", "date"}, date)) {
        head.date = view.today;
        put(head);
    }
    if (!view.due.empty()) paragraph(ui, view.due, true);
}

void draw_lacks(UiContext& ui, const InspectionView& view) {
    if (view.lacks.empty()) return;
    heading(ui, "Missing before signing");
    for (const std::string& line : view.lacks) paragraph(ui, line);
}

void draw_drop(UiContext& ui, InspectionPageState& state, Commands& out) {
    const SheetSpec spec{"drop",
                         "No inspection after all?",
                         {{{"Keep it", "keep"}, Tone::quiet, Icon::none, true, false},
                          {{"Take it out", "take out"}, Tone::danger, Icon::erase, true, true}}};
    const SheetAnswer answer =
        sheet(ui, spec, [&] { paragraph(ui, "The inspection and all its answers leave the job. It can be undone."); });
    if (answer.action == 1u) out.push_back(RemoveInspection{});
    if (answer.closed || answer.action) state.ask_drop = false;
}

void draw_begun(UiContext& ui, const InspectionView& view, InspectionPageState& state, Commands& out) {
    draw_progress(ui, view, out);
    draw_not_passing(ui, view, out);
    draw_head(ui, view, out);
    draw_lacks(ui, view);
    if (row(ui, {"No inspection after all", "drop"})) state.ask_drop = true;
}

}  // namespace

void draw_inspection(UiContext& ui, const InspectionView& view, InspectionPageState& state, Commands& out) {
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "inspection"), [&] {
        if (!view.trouble.empty()) remark(ui, "The form is not there", view.trouble);
        if (view.begun) return draw_begun(ui, view, state, out);
        if (empty_state(ui, "Not begun",
                        "The annual inspection under Appendix A to 49 CFR part 396, item by item, by a qualified "
                        "person. Cotter helps to fill it in; it passes nothing.",
                        {"Begin the inspection", "begin"}))
            out.push_back(PutInspection{view.head});
    });
    answer_chrome(answer, out);
    if (state.ask_drop) draw_drop(ui, state, out);
}

}  // namespace cotter
