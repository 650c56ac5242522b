// See screens.h: every job on file, searched as one types.
#include <fmt/format.h>

#include "app/desk/screens.h"
#include "app/ui/widgets.h"
#include "core/base/text.h"

namespace cotter::desk {

namespace {

constexpr int kRecentDays = 365;

// One chip: what it says, whether it is on, and the filter with it turned over.
struct FilterChip {
    ChipSpec chip;
    ledger::JobFilter turned;
};

void add_name(std::vector<FilterChip>& all, const ledger::JobFilter& filter, std::string ledger::JobFilter::*field,
              const char* what, const std::string& of_row) {
    const std::string& set = filter.*field;
    if (set.empty() && of_row.empty()) return;
    // While it is off, it is about the row under the cursor.
    const std::string label =
        set.empty() ? fmt::format("This {}", ascii_lower(what)) : fmt::format("{}: {}", what, one_line(set, 28));
    FilterChip one{{{label, what}, !set.empty(), true, {}}, filter};
    one.turned.*field = set.empty() ? of_row : std::string();
    all.push_back(std::move(one));
}

std::vector<FilterChip> filters_of(const ledger::JobFilter& filter, const ledger::JobLine* row, const Date& today) {
    std::vector<FilterChip> all;
    const auto add = [&](const char* label, bool on, auto turn) {
        FilterChip one{{{label, label}, on, true, {}}, filter};
        turn(one.turned);
        all.push_back(std::move(one));
    };
    add("Open findings", filter.open_findings, [&](auto& f) { f.open_findings = !f.open_findings; });
    add("Repair or worse", filter.at_least.has_value(),
        [&](auto& f) { f.at_least = f.at_least ? std::nullopt : std::optional(Grade::repair); });
    add("Last 12 months", filter.from.has_value(),
        [&](auto& f) { f.from = f.from ? std::nullopt : std::optional(Date::from_days(today.days() - kRecentDays)); });
    add("Doubtful", filter.doubtful, [&](auto& f) { f.doubtful = !f.doubtful; });
    add_name(all, filter, &ledger::JobFilter::customer, "Customer", row == nullptr ? "" : row->customer);
    add_name(all, filter, &ledger::JobFilter::technician, "Technician", row == nullptr ? "" : row->technician);
    return all;
}

}  // namespace

void draw_register(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    const List& list = *session.list();
    ListState& shown = state.lists[list.name];
    const bool found = list.table().size() > 0;
    desk_frame(ui, session, {"Register", "Every job on file"}, state, out, [&](const Rect& area) {
        ListTools tools;
        tools.filters = [&] {
            const auto filters =
                filters_of(session.asked().filter, session.job_at(shown.model.cursor()), session.today());
            std::vector<ChipSpec> specs;
            for (const FilterChip& f : filters) specs.push_back(f.chip);
            if (const auto tapped = chips(ui, "filters", specs))
                out.push_back(AskRegister{session.asked().words, filters[*tapped].turned});
        };
        tools.actions = {{{"Open the trailer", "open"}, Tone::strong, Icon::none, found, false}};
        const bool focus = state.frames < 2;
        const ListAnswer answer = list_panel(ui, list, shown, area, tools, &session.asked(), focus, out);
        const auto row = answer.action ? std::optional(shown.model.cursor()) : answer.opened;
        if (!row) return;
        if (const ledger::JobLine* job = session.job_at(*row)) out.push_back(GoTo{{Page::trailer, job->trailer, {}}});
    });
    columns_sheet(ui, list, shown, out);
}

}  // namespace cotter::desk
