// See point_screen.h.
#include "app/screens/point_screen.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_rows(UiContext& ui, const std::vector<PointRow>& rows, Commands& out) {
    for (const PointRow& r : rows) {
        RowSpec spec;
        spec.under = r.says == r.title ? r.where : fmt::format("{}: {}", r.where, r.says);
        spec.grade = r.grade;
        if (!r.grade) spec.icon = r.essential ? Icon::help : Icon::none;
        const std::string key = fmt::format("{} {} {}", name_of(r.point), r.place.text(), r.title);
        if (row(ui, {r.title, key}, spec)) out.push_back(GoTo{r.route});
    }
}

void draw_folded(UiContext& ui, const Name& name, const std::vector<PointRow>& rows, bool& open, Commands& out) {
    if (rows.empty()) return;
    if (toggle(ui, name, open, fmt::format("{}", rows.size()))) open = !open;
    if (open) draw_rows(ui, rows, out);
}

void draw_part(UiContext& ui, std::string_view title, const std::vector<PointRow>& rows, Commands& out) {
    if (rows.empty()) return;
    heading(ui, title);
    draw_rows(ui, rows, out);
}

// One answer and on to the next: the page turns when it was good, and stays on what is wrong.
struct Answering {
    const PointView& view;
    PointState& state;
    Commands& out;

    void put(LookResult result, const std::vector<std::string>& wrong) const {
        Look look = look_of(view, result, wrong);
        auto finding = finding_of(view, look);
        out.push_back(PutLook{std::move(look), std::move(finding)});
        state.wrong_open = false;
        state.wrong.clear();
    }
};

bool is_in(const std::vector<std::string>& all, const std::string& id) {
    return std::find(all.begin(), all.end(), id) != all.end();
}

void draw_entries(UiContext& ui, const Answering& a) {
    for (const EntryChoice& entry : a.view.entries) {
        RowSpec spec;
        spec.grade = entry.grade;
        spec.chosen = is_in(a.state.wrong, entry.id);
        spec.value = spec.chosen ? "chosen" : "";
        spec.leads_on = false;
        if (!row(ui, {entry.text, "entry " + entry.id}, spec)) continue;
        if (spec.chosen)
            std::erase(a.state.wrong, entry.id);
        else
            a.state.wrong.push_back(entry.id);
    }
    if (wide_button(ui, {"Record what is wrong", "record wrong"},
                    {Tone::strong, Icon::check, a.view.entries.empty() || !a.state.wrong.empty(), true, 0}))
        a.put(LookResult::bad, a.state.wrong);
}

void draw_choice(UiContext& ui, const Answering& a) {
    for (const EntryChoice& entry : a.view.entries) {
        RowSpec spec;
        spec.grade = entry.grade;
        spec.chosen = entry.answered.has_value();
        spec.leads_on = false;
        if (row(ui, {entry.text, "entry " + entry.id}, spec))
            a.put(entry.grade == Grade::serviceable ? LookResult::good : LookResult::bad, {entry.id});
    }
    if (wide_button(ui, {"I can't tell", "cannot tell"})) a.put(LookResult::cannot_tell, {});
}

void draw_asked(UiContext& ui, const Answering& a) {
    if (a.view.ask.empty() && a.view.entries.empty()) return;
    heading(ui, a.view.ask.empty() ? std::string_view("How is it?") : std::string_view(a.view.ask));
    if (!a.view.look_words.empty()) paragraph(ui, a.view.look_words, true);
    if (a.view.point->list == ListKind::choice) return draw_choice(ui, a);
    if (wide_button(ui, {"Looks good", "good"}, {Tone::quiet, Icon::check, true, true, 0})) a.put(LookResult::good, {});
    if (wide_button(ui, {"Something is wrong", "wrong"}, {Tone::quiet, Icon::none, true, true, 0}))
        a.state.wrong_open = !a.state.wrong_open;
    if (a.state.wrong_open) draw_entries(ui, a);
    if (wide_button(ui, {"I can't tell", "cannot tell"}, {Tone::quiet, Icon::help, true, true, 0}))
        a.put(LookResult::cannot_tell, {});
}

void draw_readings(UiContext& ui, const PointView& view, Commands& out) {
    if (view.readings.empty()) return;
    heading(ui, "Measure");
    for (const PointReading& r : view.readings) {
        RowSpec spec;
        spec.value = r.value;
        spec.grade = r.there ? view.grade : std::nullopt;
        if (!row(ui, {r.label, "reading " + r.label}, spec)) continue;
        Drafts drafts = view.drafts;
        drafts.reading = r.draft;
        out.push_back(KeepDrafts{std::move(drafts)});
    }
}

void draw_elsewhere(UiContext& ui, const PointView& view, Commands& out) {
    for (const PointLead& lead : view.leads) {
        RowSpec spec;
        spec.value = lead.value;
        if (row(ui, {lead.label, "lead " + lead.label}, spec)) out.push_back(GoTo{lead.route});
    }
    for (const Slot slot : view.slots) {
        RowSpec spec;
        spec.icon = Icon::camera;
        spec.value = "no photo";
        const std::string label = fmt::format("Photo: {}", name_of(slot));
        if (row(ui, {label, label}, spec))
            out.push_back(GoTo{{Screen::intake, view.place, std::string(name_of(slot))}});
    }
}

void draw_state(UiContext& ui, const PointView& view) {
    if (view.grade == Grade::do_not_tow)
        caution(ui, "Do not tow", view.says);
    else
        remark(ui, view.grade ? upper_first(name_of(*view.grade)) : std::string("Not known"), view.says);
    if (!view.law.empty()) paragraph(ui, view.law, true);
}

}  // namespace

void draw_points(UiContext& ui, const PointsView& view, PointsState& state, Commands& out) {
    const bool open = !view.open.empty();
    const ScreenSpec spec = screen_of(view.chrome, view.whole ? "points" : "points of a place",
                                      {{{"Next to look at", "next point"}, Tone::strong, Icon::none, open, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        paragraph(ui, view.tally);
        draw_part(ui, "Against towing", view.against, out);
        draw_part(ui, "Still to look at", view.open, out);
        draw_part(ui, "Watch", view.watch, out);
        draw_folded(ui, {"Worth knowing, not known", "wanted points"}, view.wanted, state.show_wanted, out);
        draw_folded(ui, {"Good", "good points"}, view.good, state.show_good, out);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0) && open) out.push_back(GoTo{view.open.front().route});
}

void draw_point(UiContext& ui, const PointView& view, PointState& state, Commands& out) {
    const std::string key = fmt::format("point {}", view.point == nullptr ? "" : name_of(view.point->id));
    std::vector<ActionSpec> actions;
    const std::string next = view.next ? fmt::format("Next: {}", view.next->title) : std::string();
    if (view.next) actions.push_back({{next, "next point"}, Tone::strong, Icon::none, true, true});
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, key, std::move(actions)), [&] {
        if (view.point == nullptr) return paragraph(ui, "There is no such point.");
        draw_state(ui, view);
        const std::array stages{ChipSpec{{"As found", "before"}, view.stage == Stage::before, true, {}},
                                ChipSpec{{"After the work", "after"}, view.stage == Stage::after, true, {}}};
        draw_asked(ui, {view, state, out});
        draw_readings(ui, view, out);
        draw_elsewhere(ui, view, out);
        if (!view.ask.empty() || !view.readings.empty())
            if (const auto tapped = one_of(ui, "stage", stages)) state.stage = static_cast<Stage>(*tapped);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0) && view.next) out.push_back(GoInstead{view.next->route});
    if (view.entry) draw_reading(ui, *view.entry, view.drafts, state.reading, out);
}

}  // namespace cotter
