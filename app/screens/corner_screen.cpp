// See corner_screen.h.
#include "app/screens/corner_screen.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/finding_sheet.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

bool any_taken(const std::vector<ShotTile>& tiles) {
    return std::any_of(tiles.begin(), tiles.end(), [](const ShotTile& t) { return !t.shot.empty(); });
}

Stage shown_stage(const CornerView& view, const CornerState& state) {
    return state.stage.value_or(any_taken(view.after) ? Stage::after : Stage::before);
}

void draw_stages(UiContext& ui, Stage stage, CornerState& state) {
    const std::array specs{ChipSpec{{"Before", "before"}, stage == Stage::before, true, {}},
                           ChipSpec{{"After", "after"}, stage == Stage::after, true, {}}};
    if (const auto tapped = one_of(ui, "stage", specs)) state.stage = static_cast<Stage>(*tapped);
}

// The taken ones with their pictures, then what is missing in a tighter grid: it says what to do, not what there is.
void draw_tiles(UiContext& ui, const CornerView& view, const std::vector<ShotTile>& all, bool taken, Commands& out) {
    std::vector<const ShotTile*> shown;
    for (const ShotTile& t : all)
        if (t.shot.empty() != taken) shown.push_back(&t);
    std::vector<std::string> keys;
    std::vector<TileSpec> specs;
    for (const ShotTile* t : shown) keys.push_back(taken ? t->shot : "empty " + t->label);
    for (std::size_t i = 0; i < shown.size(); ++i)
        specs.push_back({{shown[i]->label, keys[i]},
                         shown[i]->under,
                         shown[i]->picture,
                         shown[i]->worst,
                         taken ? Icon::none : Icon::camera});
    const auto tapped = tiles(ui, taken ? "shots" : "missing", specs, taken ? 150 : 112);
    if (!tapped) return;
    const ShotTile& t = *shown[*tapped];
    if (taken)
        out.push_back(GoTo{{Screen::photo, view.place, t.shot}});
    else
        out.push_back(GoTo{{Screen::intake, view.place, std::string(name_of(t.slot))}});
}

void draw_shots(UiContext& ui, const CornerView& view, Stage stage, Commands& out) {
    const std::vector<ShotTile>& all = stage == Stage::before ? view.before : view.after;
    heading(ui, "Photos");
    draw_tiles(ui, view, all, true, out);
    draw_tiles(ui, view, all, false, out);
}

void draw_findings(UiContext& ui, const CornerView& view, CornerState& state) {
    if (view.findings.empty()) return;
    heading(ui, "Findings");
    for (const FindingRow& f : view.findings) {
        RowSpec spec;
        spec.under = f.under;
        spec.grade = f.grade;
        if (row(ui, {f.title, f.id}, spec)) state.finding = f.id;
    }
}

// What should be there; the rest, which only helps, behind one row.
void draw_readings(UiContext& ui, const CornerView& view, Stage stage, CornerState& state, Commands& out) {
    const std::vector<ReadingRow>& rows = stage == Stage::before ? view.readings_before : view.readings_after;
    if (rows.empty()) return;
    heading(ui, "Readings");
    const auto extras = std::count_if(rows.begin(), rows.end(), [](const ReadingRow& r) { return r.extra; });
    for (const ReadingRow& r : rows) {
        if (r.extra && !state.all_readings) continue;
        RowSpec spec;
        spec.value = r.value;
        spec.under = r.under;
        show_judged(r.judged, spec);
        const bool tapped = row(ui, {r.label, r.what + r.place.text()}, spec);
        offer_finding(ui, "finding of " + r.what + r.place.text(), r.judged, out);
        if (!tapped) continue;
        Drafts drafts = view.drafts;
        drafts.reading = r.draft;
        out.push_back(KeepDrafts{std::move(drafts)});
    }
    if (extras == 0 || state.all_readings) return;
    RowSpec more;
    more.value = fmt::format("{}", extras);
    if (row(ui, {"More readings", "more readings"}, more)) state.all_readings = true;
}

void draw_work(UiContext& ui, std::string_view title, const std::vector<WorkRow>& rows, const CornerView& view,
               Screen screen, Commands& out) {
    if (rows.empty()) return;
    heading(ui, title);
    for (const WorkRow& r : rows) {
        RowSpec spec;
        spec.value = r.value;
        spec.under = r.under;
        spec.icon = r.done ? Icon::pin : Icon::open_pin;
        spec.grade = r.worst;
        if (row(ui, {r.label, r.id.empty() ? r.label : r.id}, spec)) out.push_back(GoTo{{screen, view.place, r.id}});
    }
}

}  // namespace

void draw_corner(UiContext& ui, const CornerView& view, CornerState& state, Commands& out) {
    const Stage stage = shown_stage(view, state);
    const bool round = view.next && view.previous;
    const std::string key = "corner " + view.place.text();
    const ScreenSpec spec = screen_of(view.chrome, key,
                                      {{{"Previous", "previous"}, Tone::quiet, Icon::none, round, false},
                                       {{"Next", "next"}, Tone::quiet, Icon::none, round, false},
                                       {{"Add photos", "photos"}, Tone::strong, Icon::camera, true, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        draw_stages(ui, stage, state);
        draw_shots(ui, view, stage, out);
        draw_findings(ui, view, state);
        if (row(ui, {"What is looked at here", "points"})) out.push_back(GoTo{{Screen::points, view.place, {}}});
        draw_readings(ui, view, stage, state, out);
        draw_work(ui, "Torque", view.torques, view, Screen::torque, out);
        draw_work(ui, "Fluid level", view.levels, view, Screen::level, out);
        draw_work(ui, "Work, step by step", view.procedures, view, Screen::work, out);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoInstead{{Screen::corner, *view.previous, {}}});
    if (answer.tapped(1)) out.push_back(GoInstead{{Screen::corner, *view.next, {}}});
    if (answer.tapped(2)) out.push_back(GoTo{{Screen::intake, view.place, {}}});
    if (!state.finding.empty()) draw_finding(ui, view, state.finding, out);
    if (view.finding) draw_finding_sheet(ui, *view.finding, view.drafts, state.change, out);
    if (view.entry) draw_reading(ui, *view.entry, view.drafts, state.reading, out);
}

}  // namespace cotter
