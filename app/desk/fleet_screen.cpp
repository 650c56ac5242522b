// See screens.h: every trailer with what is said about towing it, the gravest first.
#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "app/desk/screens.h"
#include "app/ui/widgets.h"
#include "app/views/chrome.h"

namespace cotter::desk {

namespace {

// The gravest first, as the rows are.
constexpr std::array kOutcomes{TowOutcome::do_not_tow, TowOutcome::not_before_repair, TowOutcome::cannot_tell,
                               TowOutcome::nothing_from_outside, TowOutcome::nothing_against};

void draw_filters(UiContext& ui, const DeskSession& session, Commands& out) {
    const AskFleet& asked = session.asked_fleet();
    const ledger::FleetCounts& counts = session.fleet_counts();
    const auto on = [&](TowOutcome outcome) {
        return std::find(asked.outcomes.begin(), asked.outcomes.end(), outcome) != asked.outcomes.end();
    };
    std::vector<ChipSpec> specs;
    for (const TowOutcome outcome : kOutcomes)
        specs.push_back({{fmt::format("{}: {}", outcome_words(outcome), counts.of[static_cast<std::size_t>(outcome)]),
                          std::string(name_of(outcome))},
                         on(outcome),
                         true,
                         {}});
    specs.push_back(
        {{fmt::format("Trip check due: {}", counts.trip_check_due), "trip check"}, asked.trip_check_due, true, {}});
    const auto tapped = chips(ui, "fleet filters", specs);
    if (!tapped) return;
    AskFleet ask = asked;
    if (*tapped >= kOutcomes.size())
        ask.trip_check_due = !ask.trip_check_due;
    else if (std::erase(ask.outcomes, kOutcomes[*tapped]) == 0)
        ask.outcomes.push_back(kOutcomes[*tapped]);
    out.push_back(std::move(ask));
}

std::string under_words(const ledger::FleetCounts& counts) {
    const std::string what = "What is said about towing each trailer now, the gravest first";
    if (counts.waiting == 0) return what;
    return fmt::format("{}. {} being worked out", what,
                       count_words(static_cast<std::size_t>(counts.waiting), "answer is", "answers are"));
}

}  // namespace

void draw_fleet(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    const List& list = *session.list();
    ListState& shown = state.lists[list.name];
    const bool any = list.table().size() > 0;
    desk_frame(ui, session, {"Trailers", under_words(session.fleet_counts())}, state, out, [&](const Rect& area) {
        ListTools tools;
        tools.filters = [&] { draw_filters(ui, session, out); };
        tools.actions = {{{"Open the trailer", "open"}, Tone::strong, Icon::none, any, false}};
        const ListAnswer answer = list_panel(ui, list, shown, area, tools, nullptr, state.frames < 2, out);
        const auto at = answer.action ? std::optional(shown.model.cursor()) : answer.opened;
        const TableRow* row = at ? list.table().row(*at) : nullptr;
        if (row != nullptr) out.push_back(GoTo{{Page::trailer, row->key, {}}});
    });
    columns_sheet(ui, list, shown, out);
}

}  // namespace cotter::desk
