// See screens.h: a trailer's life, part by part; and what a person decides about its packets.
#include <algorithm>
#include <array>

#include "app/desk/screens.h"
#include "app/ui/widgets.h"
#include "app/views/chrome.h"

namespace cotter::desk {

namespace {

constexpr std::array kParts{"Visits", "Wear", "Torques", "Findings", "Changes", "Costs", "Photos", "Packets"};

void draw_facts(UiContext& ui, const Trailer& trailer, Commands& out) {
    if (trailer.outcome)
        answer_box(ui, sign_of_outcome(*trailer.outcome), outcome_words(*trailer.outcome), trailer.towing,
                   *trailer.outcome == TowOutcome::do_not_tow);
    std::string line;
    for (const std::string& fact : trailer.facts) line += (line.empty() ? "" : ". ") + upper_first(fact);
    paragraph(ui, line, true);
    if (!trailer.eased.empty()) caution(ui, "A revision made a grade less severe", trailer.eased);
    std::array<ChipSpec, kParts.size()> specs;
    for (std::size_t i = 0; i < kParts.size(); ++i)
        specs[i] = {{kParts[i], kParts[i]}, static_cast<std::size_t>(trailer.part) == i, true, {}};
    if (const auto tapped = one_of(ui, "parts", specs)) out.push_back(ShowPart{static_cast<Part>(*tapped)});
}

// The two chosen visits, the earlier one first; nothing unless there are two.
std::optional<Route> two_chosen(const List& visits, const TableModel& model) {
    if (model.chosen_count() != 2) return std::nullopt;
    const auto rows = model.chosen_rows(2);
    const TableRow* a = visits.table().row(rows[0]);
    const TableRow* b = visits.table().row(rows[1]);
    if (a == nullptr || b == nullptr) return std::nullopt;
    if (a->cells[0].number > b->cells[0].number) std::swap(a, b);
    return Route{Page::compare, a->key, b->key};
}

void draw_visits(UiContext& ui, const Trailer& trailer, ListState& shown, const Rect& area, Commands& out) {
    const auto pair = two_chosen(trailer.visits, shown.model);
    ListTools tools;
    tools.search = false;
    tools.actions = {{{"Compare the two", "compare"}, Tone::strong, Icon::none, pair.has_value(), false}};
    const ListAnswer answer = list_panel(ui, trailer.visits, shown, area, tools, nullptr, false, out);
    if (answer.action && pair) out.push_back(GoTo{*pair});
}

void draw_packets(UiContext& ui, const Trailer& trailer, ListState& shown, const Rect& area, Commands& out) {
    const TableRow* row = trailer.packets.table().row(shown.model.cursor());
    const ledger::PacketLine* packet = row == nullptr ? nullptr : trailer.packet(row->key);
    ListTools tools;
    tools.search = false;
    const bool accept = packet != nullptr && !packet->accepted;
    const bool choose = packet != nullptr && packet->conflict && packet->role != ledger::Role::view;
    if (choose) tools.actions.push_back({{"Show this packet", "choose"}, Tone::quiet, Icon::none, true, false});
    if (accept) tools.actions.push_back({{"Accept this key", "accept"}, Tone::strong, Icon::none, true, false});
    const ListAnswer answer = list_panel(ui, trailer.packets, shown, area, tools, nullptr, false, out);
    if (!answer.action || packet == nullptr) return;
    if (tools.actions[*answer.action].name.key == "accept")
        out.push_back(AcceptKey{packet->technician, packet->signer});
    else
        out.push_back(ChoosePacket{packet->fingerprint});
}

void draw_costs(UiContext& ui, const Trailer& trailer, ListState& shown, const Rect& area, Commands& out) {
    const float y = flow(area, [&] {
        for (const std::string& line : trailer.cost_lines) paragraph(ui, line);
    });
    ListTools tools;
    tools.search = false;
    list_panel(ui, trailer.costs, shown, below(area, y), tools, nullptr, false, out);
}

void draw_part(UiContext& ui, const DeskSession& session, DeskState& state, const Rect& area, Commands& out) {
    const Trailer& trailer = *session.trailer();
    if (trailer.part == Part::wear) return draw_wear(ui, trailer, area);
    if (trailer.part == Part::photos) return draw_pairs(ui, trailer, area);
    const List& list = *session.list();
    ListState& shown = state.lists[list.name];
    if (trailer.part == Part::visits) return draw_visits(ui, trailer, shown, area, out);
    if (trailer.part == Part::packets) return draw_packets(ui, trailer, shown, area, out);
    if (trailer.part == Part::costs) return draw_costs(ui, trailer, shown, area, out);
    list_panel(ui, list, shown, area, {}, nullptr, false, out);
}

}  // namespace

void draw_trailer(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    const Trailer* trailer = session.trailer();
    if (trailer == nullptr) return desk_frame(ui, session, {"Trailer", ""}, state, out, [](const Rect&) {});
    desk_frame(ui, session, {trailer->title, trailer->under}, state, out, [&](const Rect& area) {
        const float y = flow(area, [&] { draw_facts(ui, *trailer, out); });
        draw_part(ui, session, state, below(area, y), out);
    });
    if (const List* list = session.list()) columns_sheet(ui, *list, state.lists[list->name], out);
}

}  // namespace cotter::desk
