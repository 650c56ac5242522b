// See screens.h.
#include "app/screens/screens.h"

#include "app/screens/plan_screen.h"
#include "app/screens/yard_screen.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_page(UiContext& ui, const Session& session, ScreenStates& states, Commands& out) {
    (void)states;
    switch (session.route().screen) {
        case Screen::plan:
            return draw_plan(ui, plan_view(session), out);
        default:
            return draw_yard(ui, yard_view(session), out);
    }
}

// A signed-off job is changed only with a reason.
void draw_reason(UiContext& ui, ScreenStates& states, Commands& out) {
    const SheetSpec spec{"reason",
                         "Why is it changed?",
                         {{{"Leave it", "leave"}, Tone::quiet, Icon::none, true, false},
                          {{"Amend", "amend"}, Tone::strong, Icon::check, !states.reason.empty(), true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        paragraph(ui, "The job is signed off. The old value stays beside the new one, with your reason.");
        const FieldAnswer field = text_field(ui, {"Reason", "reason"}, {states.reason, "misread the gauge", ""});
        if (field.text) states.reason = *field.text;
    });
    if (!answer.closed && !answer.action) return;
    out.push_back(GiveReason{answer.action == 1u ? states.reason : std::string{}});
    states.reason.clear();
}

}  // namespace

void draw_screens(UiContext& ui, const Session& session, ScreenStates& states, Commands& out) {
    if (!(states.shown == session.route())) {
        states = {};
        states.shown = session.route();
    }
    draw_page(ui, session, states, out);
    if (session.asks_reason()) draw_reason(ui, states, out);
}

}  // namespace cotter
