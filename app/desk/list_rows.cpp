// See rows.h: what is due, to be ordered, what fails, what came in.
#include <algorithm>

#include <fmt/format.h>

#include "app/desk/rows.h"
#include "app/views/chrome.h"
#include "app/views/place_text.h"
#include "core/base/files.h"
#include "core/base/text.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kMostLineText = 300;
constexpr std::size_t kMostWhy = 800;  // changes of a revision are told there

std::string when_words(const ledger::DueRow& row, const Date& today) {
    const std::int64_t days = row.day.days() - today.days();
    if (!row.due) return row.each_trip ? "before each trip" : "by distance";
    if (days == 0) return "today";
    return days < 0 ? days_words(days) + " overdue" : "in " + days_words(days);
}

std::string list_words(const std::vector<std::string>& all, std::size_t most) {
    std::string out;
    for (std::size_t i = 0; i < all.size() && i < most; ++i) out += (i == 0 ? "" : ", ") + one_line(all[i], 60);
    if (all.size() > most) out += fmt::format(" and {} more", all.size() - most);
    return out;
}

// One place by its name, several by their number: the detail names them.
std::string short_where(std::string_view places) {
    const auto more = std::count(places.begin(), places.end(), ',');
    return more == 0 ? in_words(one_line(places, kMostLineText), SideWords::left_right)
                     : fmt::format("{} places", more + 1);
}

bool came_in(ledger::Arrival arrival) {
    return arrival == ledger::Arrival::taken || arrival == ledger::Arrival::revision ||
           arrival == ledger::Arrival::older || arrival == ledger::Arrival::there_already;
}

}  // namespace

Columns due_columns() {
    return {{"day", "Due", 0, 120, false, true, true},
            {"when", "When", 0.4F, 140, false, true, true},
            {"unit", "Unit", 0.6F, 118, false, true, true},
            {"kind", "Kind", 0.2F, 100, false, true, true},
            {"title", "What", 2.2F, 280, false, true, true},
            {"where", "Where", 0.6F, 104, false, true, true},
            {"customer", "Customer", 1.4F, 150, false, true, true},
            {"place", "Place", 1, 110, false, true, false},
            {"source", "Source", 1, 120, false, true, false}};
}

TableRow due_row(const ledger::DueRow& due, const Date& today) {
    TableRow row;
    row.key = due.job + due.rule;
    const std::string unit = due.unit.empty() ? "no unit number" : one_line(due.unit, 60);
    row.label = fmt::format("{}: {}", unit, one_line(due.title, kMostLineText));
    row.marked = due.due && due.day < today;
    row.detail =
        fmt::format("{}{}. {} Source: {}{}.", row.label,
                    due.where.empty() ? "" : " (" + in_words(one_line(due.where, 200), SideWords::left_right) + ")",
                    upper_first(one_line(due.words, kMostLineText)) + ".", one_line(due.source, kMostLineText),
                    due.law ? " (law)" : "");
    row.cells = {TableCell(due.due ? due.due->text() : "no day", static_cast<double>(due.day.days())),
                 TableCell(when_words(due, today), static_cast<double>(due.day.days())),
                 unit,
                 std::string(name_of(due.kind)),
                 one_line(due.title, kMostLineText),
                 short_where(due.where),
                 one_line(due.customer, kMostLineText),
                 one_line(due.place, kMostLineText),
                 one_line(due.source, kMostLineText)};
    return row;
}

Columns order_columns() {
    return {{"supplier", "Supplier", 1, 140, false, true, true}, {"part", "Part number", 0.6F, 116, false, true, true},
            {"title", "Pack", 2, 200, false, true, true},        {"packs", "Packs", 0, 76, true, true, true},
            {"price", "One pack", 0.4F, 112, true, true, true},  {"cost", "Together", 0.4F, 116, true, true, true},
            {"units", "For", 2, 250, false, true, true}};
}

TableRow order_row(const ledger::OrderRow& order) {
    TableRow row;
    row.key = fmt::format("{}/{}/{}/{}", order.supplier, order.part_number, order.title, order.cost.currency);
    row.label = fmt::format("{}: {}", one_line(order.supplier, 100), one_line(order.title, kMostLineText));
    const Money price{order.price, order.cost.currency};
    row.detail = fmt::format("{} × {} from {}: {}. For {}. {}.", order.packs, one_line(order.title, kMostLineText),
                             one_line(order.supplier, 100), order.cost.text(), list_words(order.units, 12),
                             count_words(order.jobs.size(), "accepted quote", "accepted quotes"));
    row.cells = {one_line(order.supplier, kMostLineText),
                 one_line(order.part_number, 100),
                 one_line(order.title, kMostLineText),
                 TableCell(fmt::format("{}", order.packs), static_cast<double>(order.packs)),
                 TableCell(price.text(), static_cast<double>(price.minor)),
                 TableCell(order.cost.text(), static_cast<double>(order.cost.minor)),
                 list_words(order.units, 4)};
    return row;
}

Columns failure_columns() {
    return {
        {"model", "Axle model", 1, 150, false, true, true}, {"component", "Component", 1, 130, false, true, true},
        {"defect", "Defect", 1.2F, 140, false, true, true}, {"findings", "Times", 0, 80, true, true, true},
        {"trailers", "Trailers", 0, 96, true, true, true},  {"share", "Of all with it", 0.5F, 124, true, true, true},
        {"worst", "Worst", 0.4F, 140, false, true, true}};
}

TableRow failure_row(const ledger::AxleFailure& f) {
    TableRow row;
    const std::string model = f.axle_model.empty() ? "not read" : one_line(f.axle_model, 100);
    row.key = fmt::format("{}/{}/{}", f.axle_model, f.component, f.defect);
    row.label = fmt::format("{}: {}, {}", model, one_line(f.component, 100), one_line(f.defect, 100));
    const double share = f.trailers_with_model == 0
                             ? 0
                             : 100.0 * static_cast<double>(f.trailers) / static_cast<double>(f.trailers_with_model);
    row.detail = fmt::format("{}: {} graded 'repair' or worse, on {} of {} with this model.", row.label,
                             count_words(f.findings, "finding", "findings"), f.trailers,
                             count_words(f.trailers_with_model, "trailer", "trailers"));
    TableCell worst(f.worst ? std::string(name_of(*f.worst)) : "", f.worst ? static_cast<double>(*f.worst) : -1);
    worst.grade = f.worst;
    row.cells = {model,
                 one_line(f.component, 100),
                 one_line(f.defect, 100),
                 TableCell(fmt::format("{}", f.findings), static_cast<double>(f.findings)),
                 TableCell(fmt::format("{}", f.trailers), static_cast<double>(f.trailers)),
                 TableCell(fmt::format("{:.0f} %", share), share),
                 worst};
    return row;
}

Columns receipt_columns() {
    return {{"number", "No.", 0, 70, true, false, true},
            {"at", "At", 0, 168, false, false, true},
            {"arrival", "What became of it", 0.2F, 222, false, false, true},
            {"file", "File", 1.4F, 270, false, false, true},
            {"why", "Why", 2, 200, false, false, true},
            {"bytes", "Size", 0, 90, true, false, true}};
}

TableRow receipt_row(const ledger::Receipt& receipt) {
    TableRow row;
    row.key = fmt::format("{} {}", receipt.number, one_line(receipt.path, 200));
    const std::string file = one_line(base_name(receipt.path), kMostLineText);
    row.label = fmt::format("{}: {}", file, name_of(receipt.arrival));
    row.marked = !came_in(receipt.arrival) || receipt.why.find(ledger::kEasedWords) != std::string::npos;
    const std::string why = in_words(one_line(receipt.why, kMostWhy), SideWords::left_right);
    row.detail = fmt::format("{}: {}{}", one_line(receipt.path, kMostLineText), name_of(receipt.arrival),
                             why.empty() ? "." : ". " + upper_first(why));
    row.cells = {TableCell(fmt::format("{}", receipt.number), static_cast<double>(receipt.number)),
                 TableCell(fmt::format("{} {}", day_words(receipt.at), clock_words(receipt.at)),
                           static_cast<double>(receipt.at.unix_s)),
                 std::string(name_of(receipt.arrival)),
                 file,
                 why,
                 TableCell(size_words(static_cast<double>(receipt.bytes)), static_cast<double>(receipt.bytes))};
    return row;
}

}  // namespace cotter::desk
