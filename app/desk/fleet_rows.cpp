// See rows.h: trailers, and what is said about towing them.
#include <fmt/format.h>

#include "app/desk/rows.h"
#include "app/views/chrome.h"
#include "app/views/place_text.h"
#include "core/base/text.h"
#include "core/judge/towing_sign.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kMostCellText = 300, kMostSays = 800;
constexpr const char* kNotYet = "being worked out";

std::string points_words(const ledger::TowLine& tow) {
    return fmt::format("{} of {}", tow.looked_at, tow.of);
}

}  // namespace

Sign sign_of_outcome(TowOutcome outcome) {
    return sign_of(towing_of(outcome));
}

std::string outcome_words(TowOutcome outcome) {
    return upper_first(name_of(outcome));
}

TableCell towing_cell(const std::optional<ledger::TowLine>& tow) {
    if (!tow) return TableCell(kNotYet, -1);
    TableCell cell(outcome_words(tow->outcome), ledger::worst_first(tow->outcome));
    cell.sign = sign_of_outcome(tow->outcome);
    return cell;
}

std::string towing_words(const std::optional<ledger::TowLine>& tow) {
    if (!tow) return "What is said about towing is being worked out.";
    std::string out = in_words(one_line(tow->says, kMostSays), SideWords::left_right);
    out += fmt::format(" As of {}, {}.", day_words(tow->as_of), clock_words(tow->as_of));
    if (tow->runs_out)
        out += fmt::format(" Asked again on {}, {}, when the next of the answers behind it runs out.",
                           day_words(*tow->runs_out), clock_words(*tow->runs_out));
    return out;
}

std::string trailer_name(const ledger::TrailerLine& t) {
    for (const std::string* text : {&t.unit, &t.plate, &t.vin})
        if (!text->empty()) return one_line(*text, 80);
    return "Trailer without a number";
}

Columns fleet_columns() {
    return {{"towing", "Towing now", 0.2F, 236, false, true, true}, {"unit", "Unit", 0.3F, 110, false, true, true},
            {"reason", "First reason", 3, 280, false, false, true}, {"last", "Last seen", 0, 120, false, true, true},
            {"points", "Looked at", 0, 96, true, false, true},      {"open", "Not known", 0, 96, true, false, true},
            {"customer", "Customer", 1, 120, false, false, true},   {"place", "Place", 1, 120, false, false, true},
            {"kind", "Kind", 1, 150, false, false, false}};
}

ledger::FleetOrder fleet_order(std::size_t column) {
    if (column == 1) return ledger::FleetOrder::unit;
    return column == 3 ? ledger::FleetOrder::last : ledger::FleetOrder::outcome;
}

TableRow fleet_row(const ledger::TrailerLine& t) {
    TableRow row;
    row.key = t.key;
    const TableCell towing = towing_cell(t.tow);
    row.label = fmt::format("{}: {}", trailer_name(t), towing.text);
    row.detail = fmt::format("{}. {} Last seen {} by {}.", trailer_name(t), towing_words(t.tow), day_words(t.last),
                             one_line(t.technician, 100));
    const std::string reason = t.tow ? in_words(one_line(t.tow->reason, kMostCellText), SideWords::left_right) : "";
    const std::size_t open = t.tow ? t.tow->essential_open : 0;
    row.cells = {towing,
                 trailer_name(t),
                 reason,
                 TableCell(day_words(t.last), static_cast<double>(t.last.unix_s)),
                 t.tow ? points_words(*t.tow) : std::string(),
                 TableCell(open == 0 ? "" : fmt::format("{}", open), static_cast<double>(open)),
                 one_line(t.customer, kMostCellText),
                 one_line(t.place, kMostCellText),
                 one_line(t.kind, kMostCellText)};
    return row;
}

}  // namespace cotter::desk
