// See since_screen.h.
#include "app/screens/since_screen.h"

#include "app/screens/common.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_group(UiContext& ui, const SinceGroup& group, std::size_t number, Commands& out) {
    heading(ui, group.title);
    for (std::size_t i = 0; i < group.rows.size(); ++i) {
        const SinceRow& r = group.rows[i];
        RowSpec spec;
        spec.value = r.change;
        spec.under = r.under;
        spec.icon = r.change.empty() ? Icon::help : Icon::none;
        if (row(ui, {r.label, "since " + std::to_string(number) + " " + std::to_string(i)}, spec))
            out.push_back(GoTo{r.record});
    }
}

}  // namespace

void draw_since(UiContext& ui, const SinceView& view, Commands& out) {
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "since"), [&] {
        if (view.last.empty()) return paragraph(ui, "No earlier visit to this trailer is in the book.");
        fact(ui, "Last visit, as it was left", view.last);
        fact(ui, "This visit, as it was found", view.now);
        paragraph(ui, view.apart + ". What was measured at the same point stands side by side.", true);
        if (view.groups.empty()) paragraph(ui, "Neither visit has a reading.");
        for (std::size_t i = 0; i < view.groups.size(); ++i) draw_group(ui, view.groups[i], i, out);
    });
    answer_chrome(answer, out);
}

}  // namespace cotter
