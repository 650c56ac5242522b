// Due lists and order lists as files that other programs read.
#include <fmt/format.h>

#include "core/ledger/transfer.h"
#include "core/quote/csv_text.h"
#include "core/quote/exact.h"
#include "core/report/ical_text.h"

namespace cotter::ledger {

namespace {

std::string listed(const std::vector<std::string>& all) {
    std::string out;
    for (const std::string& one : all) out += (out.empty() ? "" : "; ") + one;
    return out;
}

void add_event(std::string& out, const DueRow& r, const Instant& at) {
    const std::string unit = r.unit.empty() ? r.trailer : r.unit;
    std::string words = r.words + ".";
    if (!r.where.empty()) words += "\nWhere: " + r.where + ".";
    if (!r.customer.empty() || !r.place.empty())
        words += fmt::format("\n{}{}{}", r.customer, r.customer.empty() || r.place.empty() ? "" : ", ", r.place);
    words += fmt::format("\nSource: {} ({}).", r.source, r.law ? "law" : "practice, mark c");
    add_ical_line(out, "BEGIN:VEVENT");
    add_ical_line(out, fmt::format("UID:{}-{}", r.job, ical_escaped(r.rule)));
    add_ical_line(out, "DTSTAMP:" + ical_utc(at));
    add_ical_line(out, fmt::format("SEQUENCE:{}", r.revision - 1));
    add_ical_line(out, "DTSTART;VALUE=DATE:" + ical_day(r.day));
    add_ical_line(out, "DTEND;VALUE=DATE:" + ical_day(Date::from_days(r.day.days() + 1)));
    add_ical_line(out, "SUMMARY:" + ical_escaped(r.title + ", " + unit));
    add_ical_line(out, "DESCRIPTION:" + ical_escaped(words));
    add_ical_line(out, "TRANSP:TRANSPARENT");
    add_ical_line(out, "END:VEVENT");
}

}  // namespace

std::string due_csv(const std::vector<DueRow>& rows) {
    std::string out;
    add_csv_line(out, {"day", "due", "kind", "unit", "title", "where", "customer", "place", "words", "source", "law",
                       "trailer", "job", "rule"});
    for (const DueRow& r : rows)
        add_csv_line(out, {r.day.text(), r.due ? r.due->text() : "", std::string(name_of(r.kind)), guarded_text(r.unit),
                           guarded_text(r.title), guarded_text(r.where), guarded_text(r.customer),
                           guarded_text(r.place), guarded_text(r.words), guarded_text(r.source), r.law ? "yes" : "no",
                           guarded_text(r.trailer), r.job, guarded_text(r.rule)});
    return out;
}

std::string due_ics(const std::vector<DueRow>& rows, const Instant& at, const std::string& software) {
    if (rows.empty()) return {};
    std::string out;
    add_ical_line(out, "BEGIN:VCALENDAR");
    add_ical_line(out, "VERSION:2.0");
    add_ical_line(out, "PRODID:-//" + ical_escaped(software) + "//due//EN");
    for (const DueRow& row : rows) add_event(out, row, at);
    add_ical_line(out, "END:VCALENDAR");
    return out;
}

std::string orders_csv(const std::vector<OrderRow>& rows) {
    std::string out;
    add_csv_line(out, {"supplier", "part_number", "title", "packs", "price", "cost", "currency", "units", "jobs"});
    for (const OrderRow& r : rows)
        add_csv_line(out, {guarded_text(r.supplier), guarded_text(r.part_number), guarded_text(r.title),
                           std::to_string(r.packs), money_text(r.price), money_text(r.cost.minor), r.cost.currency,
                           guarded_text(listed(r.units)), listed(r.jobs)});
    return out;
}

}  // namespace cotter::ledger
