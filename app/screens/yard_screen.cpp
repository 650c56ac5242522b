// See yard_screen.h.
#include "app/screens/yard_screen.h"

#include "app/screens/common.h"
#include "app/ui/widgets.h"
#include "core/judge/towing_sign.h"

namespace cotter {

namespace {

void draw_jobs(UiContext& ui, std::string_view title, const std::vector<YardRow>& rows, Commands& out) {
    if (rows.empty()) return;
    heading(ui, title);
    for (const YardRow& job : rows) {
        RowSpec spec;
        spec.under = job.under;
        if (job.answer) spec.answer = sign_of(*job.answer);
        spec.icon = job.answer ? Icon::none : Icon::sheet;
        spec.chosen = job.open;
        if (row(ui, {job.title, job.id}, spec))
            if (const auto id = Uuid::parse(job.id)) out.push_back(OpenJob{{*id}});
    }
}

}  // namespace

void draw_yard(UiContext& ui, const YardView& view, Commands& out) {
    const bool empty = view.under_way.empty() && view.handed_over.empty();
    std::vector<ActionSpec> actions{{{"Settings", "settings"}, Tone::quiet, Icon::menu, true, false}};
    if (!empty) actions.push_back({{"New job", "new"}, Tone::strong, Icon::plus, true, true});
    ScreenSpec spec = screen_of(view.chrome, "yard", std::move(actions), false);
    spec.header.undo = spec.header.redo = false;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        if (empty && empty_state(ui, "No job yet",
                                 "A job is one visit to one trailer. All that you record stays on this device until "
                                 "you hand it over.",
                                 {"Begin the first job", "first"}))
            out.push_back(StartJob{});
        if (!view.only_here.empty()) remark(ui, "Nowhere else yet", view.only_here);
        draw_jobs(ui, "Under way", view.under_way, out);
        draw_jobs(ui, "Signed off", view.handed_over, out);
    });
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::settings, {}, {}}});
    if (answer.tapped(1)) out.push_back(StartJob{});
    if (answer.tap == ScreenTap::help) out.push_back(ShowHelp{true});
    if (answer.tap == ScreenTap::toast) out.push_back(DismissNotice{});
}

}  // namespace cotter
