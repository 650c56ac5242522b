// See screens.h: what is due, to be ordered, what fails, what came in.
#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "app/desk/screens.h"
#include "app/ui/widgets.h"
#include "app/views/chrome.h"

namespace cotter::desk {

namespace {

struct Ahead {
    int days;
    const char* label;
};
constexpr std::array kAhead{Ahead{0, "Overdue"}, Ahead{30, "30 days"}, Ahead{90, "90 days"}, Ahead{365, "12 months"}};

void draw_due_filters(UiContext& ui, const AskDue& asked, Commands& out) {
    std::vector<ChipSpec> specs;
    for (const Ahead& a : kAhead) specs.push_back({{a.label, a.label}, asked.days == a.days, true, {}});
    for (const auto name : names(ledger::DueKind{})) {
        const auto kind = *from_name<ledger::DueKind>(name);
        const bool on = std::find(asked.kinds.begin(), asked.kinds.end(), kind) != asked.kinds.end();
        specs.push_back({{upper_first(name), name}, on, true, {}});
    }
    const auto tapped = chips(ui, "due filters", specs);
    if (!tapped) return;
    AskDue ask = asked;
    if (*tapped < kAhead.size()) {
        ask.days = kAhead[*tapped].days;
    } else {
        const auto kind = static_cast<ledger::DueKind>(*tapped - kAhead.size());
        if (std::erase(ask.kinds, kind) == 0) ask.kinds.push_back(kind);
    }
    out.push_back(ask);
}

FrameSpec frame_of(const DeskSession& session) {
    switch (session.route().page) {
        case Page::orders:
            return {"What to order", "Packs that accepted quotes wait for"};
        case Page::failures:
            return {"What fails", "Findings at the corners by axle model"};
        default:
            return {"Receipts", "Every file that was handed in, and what became of it"};
    }
}

}  // namespace

void draw_due(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    const List& list = *session.list();
    ListState& shown = state.lists[list.name];
    desk_frame(ui, session, {"What is due", list.title}, state, out, [&](const Rect& area) {
        ListTools tools;
        tools.ics = true;
        tools.filters = [&] { draw_due_filters(ui, session.asked_due(), out); };
        const bool any = list.table().size() > 0;
        tools.actions = {{{"Open the trailer", "open"}, Tone::strong, Icon::none, any, false}};
        const ListAnswer answer = list_panel(ui, list, shown, area, tools, nullptr, false, out);
        const auto at = answer.action ? std::optional(shown.model.cursor()) : answer.opened;
        const TableRow* row = at ? list.table().row(*at) : nullptr;
        if (row != nullptr) out.push_back(GoTo{{Page::trailer, session.trailer_of(row->key), {}}});
    });
    columns_sheet(ui, list, shown, out);
}

void draw_list(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    const List& list = *session.list();
    ListState& shown = state.lists[list.name];
    desk_frame(ui, session, frame_of(session), state, out, [&](const Rect& area) {
        ListTools tools;
        tools.search = !list.paged();
        list_panel(ui, list, shown, area, tools, nullptr, false, out);
    });
    columns_sheet(ui, list, shown, out);
}

}  // namespace cotter::desk
