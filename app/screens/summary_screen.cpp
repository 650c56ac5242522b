// See summary_screen.h.
#include "app/screens/summary_screen.h"

#include "app/screens/common.h"
#include "app/screens/reason_sheet.h"
#include "app/ui/wear_plot.h"
#include "app/ui/widgets.h"
#include "core/judge/towing_sign.h"

namespace cotter {

namespace {

void draw_answer(UiContext& ui, const SummaryView& view, SummaryState& state) {
    answer_box(ui, sign_of(view.towing), view.word, view.answer, view.towing == Towing::no);
    paragraph(ui, view.caveat, true);
    if (!view.trouble.empty()) remark(ui, "Judged without limits", view.trouble);
    if (view.reasons.empty()) return;
    heading(ui, "Why");
    draw_reasons(ui, view.reasons, true, state.open);
}

void draw_places(UiContext& ui, const SummaryView& view, Commands& out) {
    heading(ui, "Place by place");
    if (view.places.empty()) paragraph(ui, "Nothing is known yet. Enter the trailer's axles first.", true);
    for (const JudgedPlace& place : view.places) {
        RowSpec spec;
        spec.under = place.under;
        spec.value = place.value;
        spec.grade = place.grade;
        spec.icon = place.grade ? Icon::none : Icon::help;
        const std::string key = "judged " + place.route.place.text() + place.route.record;
        if (row(ui, {place.label, key}, spec)) out.push_back(GoTo{place.route});
    }
}

void draw_not_known(UiContext& ui, const SummaryView& view, SummaryState& state) {
    if (view.unknowns.empty()) return;
    heading(ui, "What is not known");
    draw_unknowns(ui, view.unknowns, true, state.open);
    if (view.more_unknown > 0)
        paragraph(ui, "And " + std::to_string(view.more_unknown) + " more; the places tell them.", true);
}

void draw_forecasts(UiContext& ui, const SummaryView& view) {
    if (view.forecasts.empty() && view.not_foretold.empty()) return;
    heading(ui, "To come");
    for (const ForecastItem& f : view.forecasts) {
        std::vector<WearPoint> points;
        for (const PlotPoint& p : f.points) points.push_back({p.way, p.thickness});
        paragraph(ui, f.title);
        wear_plot(ui, {points, f.limit, *f.end, *f.end_early, *f.end_late, f.top, f.bottom, f.first, f.last, f.ends});
        paragraph(ui, f.says);
        for (const std::string& step : f.steps) paragraph(ui, step, true);
        paragraph(ui, f.source, true);
        space(24);
    }
    for (const std::string& line : view.not_foretold) paragraph(ui, line, true);
}

void draw_visits(UiContext& ui, const SummaryView& view, Commands& out) {
    heading(ui, "Earlier visits");
    if (view.visits.empty()) paragraph(ui, "None of this trailer is in the book.", true);
    RowSpec since;
    since.value = view.since;
    if (!view.since.empty() && row(ui, {"Compare reading by reading", "since"}, since))
        out.push_back(GoTo{{Screen::since, {}, {}}});
    for (const VisitLine& v : view.visits) {
        fact(ui, v.day, v.word);
        paragraph(ui, v.answer, true);
    }
}

}  // namespace

void draw_summary(UiContext& ui, const SummaryView& view, SummaryState& state, Commands& out) {
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "summary"), [&] {
        draw_answer(ui, view, state);
        draw_places(ui, view, out);
        draw_not_known(ui, view, state);
        draw_forecasts(ui, view);
        draw_visits(ui, view, out);
        heading(ui, "For a qualified inspector");
        RowSpec inspection;
        inspection.value = view.inspection;
        if (row(ui, {"Periodic inspection", "inspection"}, inspection))
            out.push_back(GoTo{{Screen::inspection, {}, {}}});
    });
    answer_chrome(answer, out);
    draw_open_reason(ui, view.reasons, view.unknowns, state.open, out);
}

}  // namespace cotter
