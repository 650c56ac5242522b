// See rows.h: what was found, tightened and spent on a trailer, and two visits beside each other.
#include <fmt/format.h>

#include "app/desk/rows.h"
#include "app/views/chrome.h"
#include "core/base/text.h"
#include "core/work/wrench.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kMostRecordText = 300;

std::string place_of(const Place& place) {
    return place_words(place, SideWords::left_right);
}

std::string last_pass_of(const Torque& torque) {
    if (torque.taken != cotter::Taken::measured)
        return fmt::format("{}: {}", name_of(torque.taken), one_line(torque.reason, 120));
    return torque.passes.empty() ? "no pass recorded" : at_nut(torque.passes.back()).text();
}

// With a full stop behind, unless it ends as a sentence does.
std::string sentence(std::string text) {
    if (text.empty() || std::string_view(".!?").find(text.back()) == std::string_view::npos) text += '.';
    return text;
}

std::string settled_words(const ledger::FindingLine& line) {
    const std::string outcome(name_of(line.finding.outcome));  // what the customer said no to, or what must wait, too
    if (line.open) return line.finding.outcome == Outcome::open ? outcome : outcome + ", still open";
    if (line.finding.outcome != Outcome::open) return outcome;
    return "settled at a later visit";
}

std::string point_of(const ReadingChange& change) {
    return change.where.empty() ? change.what : fmt::format("{}, {}", change.what, change.where);
}

}  // namespace

Columns torque_columns() {
    return {{"visit", "Day", 0, 120, false, true, true},           {"place", "Where", 0.8F, 126, false, true, true},
            {"joint", "Joint", 1.4F, 180, false, true, true},      {"fasteners", "Nuts", 0, 66, true, true, true},
            {"setting", "Last pass", 0.6F, 110, true, true, true}, {"target", "Target", 0.6F, 104, true, true, true},
            {"proved", "Proved", 0.8F, 150, false, true, true},    {"kind", "Kind", 0.4F, 106, false, true, true},
            {"wrench", "Wrench", 0.6F, 90, false, true, false}};
}

TableRow torque_row(const ledger::TorqueLine& line) {
    const Torque t = in_present_form(line.torque);
    TableRow row;
    row.key = line.job + t.id.text();
    row.label = fmt::format("{}, {}, {}", place_of(t.place), one_line(t.joint, 100), day_words(line.visit));
    const std::string proved = line.complete ? "all at the target" : "not proved";
    row.marked = !line.complete;
    const std::string adapter = t.adapter ? " with an adapter of " + adapter_words(*t.adapter) : "";
    const std::string kind = line.retorque ? "re-torque" : "tightened";
    row.detail = fmt::format("{} of {} at {}: {}, target {} ({}), {}. By {} with {}{}. {}{}", t.fasteners,
                             one_line(t.joint, 100), place_of(t.place), last_pass_of(t),
                             t.target ? t.target->text() : "not recorded",
                             t.target_source.empty() ? "source not given" : one_line(t.target_source, 120), proved,
                             one_line(t.by, 100), t.wrench.empty() ? "a wrench not recorded" : one_line(t.wrench, 60),
                             adapter, t.wrench_calibrated ? "Calibrated " + t.wrench_calibrated->text() + ". " : "",
                             t.found_note.empty() ? "" : "Found: " + one_line(t.found_note, 150));
    row.cells = {TableCell(day_words(line.visit), static_cast<double>(line.visit.unix_s)),
                 place_of(t.place),
                 one_line(t.joint, 100),
                 TableCell(fmt::format("{}", t.fasteners), t.fasteners),
                 last_pass_of(t),
                 t.target ? t.target->text() : "none",
                 proved,
                 kind,
                 one_line(t.wrench, 60)};
    return row;
}

Columns finding_columns() {
    return {{"grade", "Grade", 0.2F, 130, false, true, true},      {"place", "Where", 0.6F, 126, false, true, true},
            {"what", "Finding", 2, 270, false, true, true},        {"state", "State", 0.8F, 130, false, true, true},
            {"visit", "Seen", 0, 120, false, true, true},          {"note", "Note", 1.4F, 120, false, false, true},
            {"todo", "What to do", 1.4F, 150, false, false, false}};
}

TableRow finding_row(const ledger::FindingLine& line) {
    const Finding& f = line.finding;
    TableRow row;
    row.key = line.job + f.id.text();
    const std::string what = one_line(fmt::format("{}, {}", f.component, f.defect), kMostRecordText);
    row.label = fmt::format("{}: {}, {}", place_of(f.place), what, day_words(line.visit));
    row.marked = line.open && f.grade >= Grade::repair;
    row.detail = fmt::format(
        "{} ({}), seen {} by {}: {}. {}{}{}", upper_first(what), place_of(f.place), day_words(line.visit),
        one_line(f.by, 100), settled_words(line), f.note.empty() ? "" : one_line(f.note, kMostRecordText) + ". ",
        f.todo.empty() ? "" : "To do: " + one_line(f.todo, kMostRecordText) + ". ",
        f.outcome_note.empty() ? "" : "Outcome: " + one_line(f.outcome_note, kMostRecordText) + ".");
    TableCell grade(std::string(name_of(f.grade)), static_cast<double>(f.grade));
    grade.grade = f.grade;
    row.cells = {grade,
                 place_of(f.place),
                 what,
                 settled_words(line),
                 TableCell(day_words(line.visit), static_cast<double>(line.visit.unix_s)),
                 one_line(f.note, kMostRecordText),
                 one_line(f.todo, kMostRecordText)};
    return row;
}

Columns revision_columns() {
    return {{"visit", "Visit", 0, 120, false, true, true},
            {"revision", "Rev.", 0, 60, true, true, true},
            {"place", "Where", 0.4F, 116, false, true, true},
            {"what", "What", 1.4F, 150, false, true, true},
            {"before", "Before", 1, 140, false, true, true},
            {"now", "Now", 1, 140, false, true, true},
            {"reason", "Reason given", 1.4F, 150, false, true, true},
            {"by", "By", 0.4F, 90, false, true, true}};
}

TableRow revision_row(const ledger::RevisionChange& c, const Instant& visit, std::size_t number) {
    TableRow row;
    row.key = fmt::format("{} {}", c.job, number);
    const std::string where = c.place ? place_of(*c.place) : "";
    const std::string what = one_line(c.what, kMostRecordText);
    row.label = fmt::format("{}{}{}, revision {}", what, where.empty() ? "" : ", ", where, c.revision);
    row.marked = c.eased();
    const auto value = [](const std::string& text, const std::optional<Grade>& grade, const char* none) {
        TableCell cell(text.empty() ? none : one_line(text, kMostRecordText), grade ? static_cast<double>(*grade) : -1);
        cell.grade = grade;
        return cell;
    };
    const TableCell before = value(c.before, c.grade_before, "not recorded");
    const TableCell now = value(c.now, c.grade_now, "taken out");
    row.detail = fmt::format("Visit of {}, revision {}: {}{}: '{}' before, '{}' now. ", day_words(visit), c.revision,
                             what, where.empty() ? "" : fmt::format(" ({})", where), before.text, now.text);
    row.detail += c.at ? fmt::format("Changed by {} on {}: {}", one_line(c.by, 100), day_words(*c.at),
                                     sentence(one_line(c.reason, kMostRecordText)))
                       : "No reason is recorded.";
    row.cells = {TableCell(day_words(visit), static_cast<double>(visit.unix_s)),
                 TableCell(fmt::format("{}", c.revision), c.revision),
                 where,
                 what,
                 before,
                 now,
                 c.at ? one_line(c.reason, kMostRecordText) : "none is recorded",
                 one_line(c.by, 100)};
    return row;
}

Columns cost_columns() {
    return {{"year", "Year", 1, 90, false, true, true},
            {"visits", "Visits", 1, 90, true, true, true},
            {"cost", "Cost", 2, 150, true, true, true}};
}

TableRow cost_row(const ledger::YearCost& cost) {
    TableRow row;
    row.key = fmt::format("{}{}", cost.year, cost.cost.currency);
    row.label = fmt::format("Costs of {}", cost.year);
    row.detail = fmt::format("{}: {} with accepted quotes, {} together.", cost.year,
                             count_words(cost.visits, "visit", "visits"), cost.cost.text());
    row.cells = {TableCell(fmt::format("{}", cost.year), cost.year),
                 TableCell(fmt::format("{}", cost.visits), static_cast<double>(cost.visits)),
                 TableCell(cost.cost.text(), static_cast<double>(cost.cost.minor))};
    return row;
}

Columns change_columns() {
    return {{"place", "Where", 1, 140, false, true, true},
            {"what", "Reading", 2, 200, false, true, true},
            {"before", "Before", 0.8F, 110, true, true, true},
            {"now", "Now", 0.8F, 110, true, true, true},
            {"change", "Change", 1.6F, 170, false, true, true}};
}

TableRow change_row(const ReadingChange& change, std::size_t number) {
    TableRow row;
    row.key = fmt::format("change {}", number);
    const std::string where = change.axle > 0 ? fmt::format("Axle {}", change.axle) : place_of(change.place);
    const std::string what = one_line(point_of(change), kMostRecordText);
    const auto amount = [](const std::optional<Amount>& a) {
        return a ? TableCell(a->text(), a->si()) : TableCell("not measured");
    };
    row.label = fmt::format("{}: {}", where, what);
    row.detail = fmt::format("{}: {} before, {} now: {}.", row.label, amount(change.before).text,
                             amount(change.now).text, one_line(change.change, kMostRecordText));
    row.cells = {where, what, amount(change.before), amount(change.now), one_line(change.change, kMostRecordText)};
    return row;
}

Columns stayed_columns() {
    Columns columns{{"what happened", "Since", 0.4F, 110, false, true, true}};
    for (TableColumn& c : finding_columns())
        if (c.key != "state") columns.push_back(std::move(c));
    return columns;
}

TableRow stayed_row(const ledger::FindingLine& line, const std::string& what) {
    TableRow row = finding_row(line);
    row.key = what + row.key;
    row.cells.erase(row.cells.begin() + 3);
    row.cells.insert(row.cells.begin(), TableCell(what));
    row.marked = what == "appeared" && line.finding.grade >= Grade::repair;
    return row;
}

}  // namespace cotter::desk
