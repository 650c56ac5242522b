// See judgement_screen.h.
#include "app/screens/judgement_screen.h"

#include "app/screens/common.h"
#include "app/screens/reason_sheet.h"
#include "app/ui/widgets.h"

namespace cotter {

void draw_judgement(UiContext& ui, const JudgementView& view, JudgementState& state, Commands& out) {
    const std::string key = "judgement " + view.key;
    const ScreenSpec spec =
        screen_of(view.chrome, key, {{{"Go to the record", "record"}, Tone::strong, Icon::none, true, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        if (view.grade)
            grade_plate(ui, *view.grade);
        else
            paragraph(ui, "Cannot tell: nothing that was recorded here speaks for it or against it.");
        if (!view.reasons.empty()) heading(ui, "Reasons");
        draw_reasons(ui, view.reasons, false, state.open);
        if (!view.unknowns.empty()) heading(ui, "Cannot tell, because");
        draw_unknowns(ui, view.unknowns, false, state.open);
        if (!view.changed.empty()) heading(ui, "Since it was found");
        for (const std::string& line : view.changed) paragraph(ui, line);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{view.record});
    draw_open_reason(ui, view.reasons, view.unknowns, state.open, out);
}

}  // namespace cotter
