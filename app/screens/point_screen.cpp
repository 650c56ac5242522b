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
        const std::string key = fmt::format("{} {} {} {}", name_of(r.point), r.place.text(), r.title, r.record);
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

// A long title would push the page away.
std::string next_words(const PointRow& next) {
    constexpr std::size_t kMost = 34;
    return next.title.size() > kMost ? std::string("Next to look at") : fmt::format("Next: {}", next.title);
}

// Of many the first few, then where the others are; each of them when it is asked for.
void draw_open(UiContext& ui, const PointsView& view, PointsState& state, Commands& out) {
    constexpr std::size_t kMost = 8, kFirst = 4;
    if (view.open.size() <= kMost || !view.whole) return draw_part(ui, "Still to look at", view.open, out);
    heading(ui, "Still to look at");
    if (!state.show_open) draw_rows(ui, {view.open.begin(), view.open.begin() + kFirst}, out);
    for (const OpenPlace& place : view.places) {
        RowSpec spec;
        spec.value = fmt::format("{}", place.open);
        if (row(ui, {place.label, "place " + place.route.place.text()}, spec)) out.push_back(GoTo{place.route});
    }
    draw_folded(ui, {"Each of them", "each open point"}, view.open, state.show_open, out);
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

void draw_take_back(UiContext& ui, const Answering& a) {
    if (a.view.look &&
        wide_button(ui, {"Take this answer back", "take back"}, {Tone::quiet, Icon::erase, true, false, 0}))
        a.out.push_back(RemoveLook{a.view.look->id});
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
                    {Tone::strong, Icon::check, a.view.entries.empty() || !a.state.wrong.empty(), false, 0}))
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
    draw_take_back(ui, a);
}

void draw_asked(UiContext& ui, const Answering& a) {
    if (a.view.ask.empty() && a.view.entries.empty()) return;
    heading(ui, a.view.ask.empty() ? std::string_view("How is it?") : std::string_view(a.view.ask));
    if (!a.view.look_words.empty()) paragraph(ui, a.view.look_words, true);
    if (a.view.point->list == ListKind::choice) return draw_choice(ui, a);
    if (wide_button(ui, {"Looks good", "good"}, {Tone::quiet, Icon::check, true, false, 0}))
        a.put(LookResult::good, {});
    if (wide_button(ui, {"Something is wrong", "wrong"}, {Tone::quiet, Icon::none, true, false, 0}))
        a.state.wrong_open = !a.state.wrong_open;
    if (a.state.wrong_open) draw_entries(ui, a);
    if (wide_button(ui, {"I can't tell", "cannot tell"}, {Tone::quiet, Icon::help, true, false, 0}))
        a.put(LookResult::cannot_tell, {});
    draw_take_back(ui, a);
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

void draw_point_readings(UiContext& ui, const std::vector<PointReading>& readings, const Drafts& drafts,
                         Commands& out) {
    if (readings.empty()) return;
    heading(ui, "Measure");
    for (const PointReading& r : readings) {
        RowSpec spec;
        spec.value = r.value;
        show_judged(r.judged, spec);
        const bool tapped = row(ui, {r.label, "reading " + r.label}, spec);
        offer_finding(ui, "finding of " + r.label, r.judged, out);
        if (!tapped) continue;
        Drafts changed = drafts;
        changed.reading = r.draft;
        out.push_back(KeepDrafts{std::move(changed)});
    }
}

void draw_points(UiContext& ui, const PointsView& view, PointsState& state, Commands& out) {
    const bool open = !view.open.empty();
    const std::string next = open ? next_words(view.open.front()) : std::string("Next to look at");
    const ScreenSpec spec = screen_of(view.chrome, view.whole ? "points" : "points of a place",
                                      {{{next, "next point"}, Tone::strong, Icon::none, open, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        paragraph(ui, view.tally);
        draw_part(ui, "Against towing", view.against, out);
        draw_open(ui, view, state, out);
        draw_part(ui, "Watch", view.watch, out);
        draw_folded(ui, {"For a mechanic", "mechanic points"}, view.mechanic, state.show_mechanic, out);
        draw_folded(ui, {"Worth knowing, not known", "wanted points"}, view.wanted, state.show_wanted, out);
        draw_folded(ui, {"Good", "good points"}, view.good, state.show_good, out);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0) && open) out.push_back(GoTo{view.open.front().route});
}

namespace {

// A bad answer stops: what it means comes before the next point.
struct PointActions {
    std::vector<ActionSpec> specs;
    std::vector<Route> routes;
};

PointActions actions_of(const PointView& view, bool bad) {
    PointActions out;
    const bool stop = bad && view.grade == Grade::do_not_tow;
    if (view.next) {
        const std::string next = next_words(*view.next);
        out.specs.push_back({{next, "next point"}, stop ? Tone::quiet : Tone::strong, Icon::none, true, !stop});
        out.routes.push_back(view.next->route);
    }
    if (!stop) return out;
    out.specs.push_back({{"May it be towed?", "to the answer"}, Tone::strong, Icon::none, true, true});
    out.routes.push_back({Screen::summary, {}, {}});
    return out;
}

void draw_point_stages(UiContext& ui, const PointView& view, PointState& state) {
    if (view.ask.empty() && view.readings.empty()) return;
    const std::array stages{ChipSpec{{"As found", "before"}, view.stage == Stage::before, true, {}},
                            ChipSpec{{"After the work", "after"}, view.stage == Stage::after, true, {}}};
    if (const auto tapped = one_of(ui, "stage", stages)) state.stage = static_cast<Stage>(*tapped);
}

}  // namespace

void draw_point(UiContext& ui, const PointView& view, PointState& state, Commands& out) {
    const bool bad = view.look && view.look->result == LookResult::bad;
    // Another page after a bad answer: it begins at its top again.
    const std::string key = fmt::format("point {} {}{}", view.point == nullptr ? "" : name_of(view.point->id),
                                        view.place.text(), bad ? " bad" : "");
    const PointActions actions = actions_of(view, bad);
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, key, actions.specs), [&] {
        if (view.point == nullptr) return paragraph(ui, "There is no such point.");
        draw_state(ui, view);
        draw_asked(ui, {view, state, out});
        draw_point_readings(ui, view.readings, view.drafts, out);
        draw_elsewhere(ui, view, out);
        draw_point_stages(ui, view, state);
    });
    answer_chrome(answer, out);
    if (answer.tap == ScreenTap::action) {
        const Route& to = actions.routes[answer.action];
        if (to.screen == Screen::summary)
            out.push_back(GoTo{to});
        else
            out.push_back(GoInstead{to});
    }
    if (view.entry) draw_reading(ui, *view.entry, view.drafts, state.reading, out);
}

}  // namespace cotter
