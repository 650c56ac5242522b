// See screens.h.
#include "app/screens/screens.h"

#include "app/screens/plan_screen.h"
#include "app/screens/settings_screen.h"
#include "app/screens/since_screen.h"
#include "app/screens/yard_screen.h"
#include "app/ui/widgets.h"
#include "app/views/help.h"

namespace cotter {

namespace {

void draw_page(UiContext& ui, const Session& session, ScreenStates& states, Commands& out) {
    const auto view_of = [&](auto make, int asked = 0) -> const auto& {
        return states.view.of(session, make, asked);
    };
    switch (session.route().screen) {
        case Screen::identify:
            return draw_identify(ui, view_of(identify_view), session.drafts(), states.identify, out);
        case Screen::corner:
            return draw_corner(ui, view_of(corner_view), states.corner, out);
        case Screen::hand_over:
            return draw_hand_over(ui, view_of(hand_over_view), states.hand_over, out);
        case Screen::intake: {
            const IntakeView& view = view_of(intake_view);
            IntakeState& state = states.intake;
            look_at_folder(ui, view, state, session.parts().files);
            return draw_intake(ui, view, shot_place_view(session, state.place, {}, state.placed_stage), state, out);
        }
        case Screen::settings:
            return draw_settings(ui, view_of(settings_view), out);
        case Screen::photo: {
            const PhotoView& view = view_of(photo_view);
            const Shot& s = view.shot;
            return draw_photo(ui, view, shot_place_view(session, s.place, s.slot, s.stage), states.photo, out);
        }
        case Screen::plan:
            return draw_plan(ui, view_of(plan_view), out);
        case Screen::level:
            return draw_level(ui, view_of(level_view), states.level, out);
        case Screen::torque:
            return draw_torque(ui, view_of(torque_view), states.torque, out);
        case Screen::bearing:
            return draw_bearing(ui, view_of(bearing_view), states.bearing, out);
        case Screen::bleed:
            return draw_bleed(ui, view_of(bleed_view), states.bleed, out);
        case Screen::work:
            if (session.route().record.empty()) return draw_work_list(ui, view_of(work_list_view), out);
            return draw_work(ui, view_of(procedure_view), states.work, out);
        case Screen::summary:
            return draw_summary(ui, view_of(summary_view), states.summary, out);
        case Screen::judgement:
            return draw_judgement(ui, view_of(judgement_view), states.judgement, out);
        case Screen::figure:
            return draw_figure(ui, view_of(figure_view), states.figure, out);
        case Screen::inspection:
            if (session.route().record.empty())
                return draw_inspection(ui, view_of(inspection_view), states.inspection, out);
            return draw_inspection_group(ui, view_of(inspection_group_view), states.inspection, out);
        case Screen::since:
            return draw_since(ui, view_of(since_view), out);
        case Screen::points:
            return draw_points(ui, view_of(points_view), states.points, out);
        case Screen::point: {
            const Stage stage = states.point.stage.value_or(Stage::before);
            return draw_point(ui,
                              view_of([&](const Session& s) { return point_view(s, stage); }, static_cast<int>(stage)),
                              states.point, out);
        }
        case Screen::plate:
            return draw_plate(ui, view_of(plate_view), states.plate, out);
        case Screen::sidewall:
            return draw_sidewall(ui, view_of(sidewall_view), states.tag, out);
        case Screen::chamber:
            return draw_chamber(ui, view_of(chamber_view), states.tag, out);
        case Screen::breakaway:
            return draw_breakaway(ui, view_of(breakaway_view), session.now(), states.breakaway, out);
        case Screen::events:
            return draw_events(ui, view_of(events_view), states.events, out);
        case Screen::quotes:
            return draw_quotes(ui,
                               view_of([&](const Session& s) { return quotes_view(s, states.quotes.by); },
                                       static_cast<int>(states.quotes.by)),
                               states.quotes, out);
        case Screen::quote:
            return draw_quote(ui, view_of(quote_view), out);
        case Screen::compare:
            return draw_compare(ui, view_of(compare_view), out);
        case Screen::customer:
            return draw_customer(ui, view_of(customer_view), states.customer, out);
        case Screen::shelf:
            return draw_shelf(ui, view_of(shelf_view), states.shelf, out);
        case Screen::offers_file: {
            const OffersFileView& view = view_of(offers_file_view);
            look_at_offers_folder(view, states.offers_file, session.parts().files);
            return draw_offers_file(ui, view, states.offers_file, out);
        }
        case Screen::offer:
            return draw_offer(ui, view_of(offer_view), states.offer, out);
        default:
            return draw_yard(ui, view_of(yard_view), out);
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

void draw_help(UiContext& ui, Screen screen, Commands& out) {
    const HelpPage page = help_page(screen);
    const SheetSpec spec{
        "help", std::string(page.title), {{{"Understood", "understood"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        for (const HelpPart& part : page.parts) {
            if (part.danger) {
                caution(ui, part.title, part.text);
                continue;
            }
            if (!part.title.empty()) heading(ui, part.title);
            paragraph(ui, part.text);
        }
        paragraph(ui, kStanding, true);
    });
    if (answer.closed || answer.action) out.push_back(ShowHelp{false});
}

}  // namespace

void draw_screens(UiContext& ui, const Session& session, ScreenStates& states, Commands& out) {
    if (!(states.shown == session.route()) || states.job != session.job().id()) {
        states = {};
        states.shown = session.route();
        states.job = session.job().id();
    }
    draw_page(ui, session, states, out);
    if (session.shows_help()) draw_help(ui, session.route().screen, out);
    if (session.asks_reason()) draw_reason(ui, states, out);
}

}  // namespace cotter
