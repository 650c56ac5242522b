// See trailer_view.h.
#include "app/desk/trailer_view.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "app/views/chrome.h"
#include "core/base/text.h"

namespace cotter::desk {

namespace {

constexpr std::size_t kMostName = 80;

std::string mm(double value) {
    return fmt::format("{:.1f} mm", value);
}

std::string upper(const std::string& text) {
    return upper_first(text);
}

Wear wear_of(const Forecast& f) {
    Wear w;
    w.title = fmt::format("{}: {}{}{}", place_words(f.place, SideWords::left_right), f.what,
                          f.where.empty() ? "" : ", ", f.where);
    w.says = upper(f.says);
    w.source = f.source.empty() ? f.limit : fmt::format("{}; {}", f.limit, f.source);
    w.limit = f.limit_mm;
    double top = f.limit_mm;
    for (const ForecastPoint& p : f.points) {
        w.points.push_back({p.way, p.thickness});
        top = std::max(top, p.thickness);
    }
    w.top = mm(top);
    w.bottom = "limit " + mm(f.limit_mm);
    if (!f.points.empty()) {
        w.first = f.points.front().date.text();
        w.last = f.points.back().date.text();
    }
    w.told = f.answer == WearAnswer::told && f.points.size() > 1;
    if (!w.told) return w;
    const double now = f.points.back().way;
    w.end = now + f.life.left;
    w.end_early = now + f.life.plan;
    w.end_late = now + f.life.left + 2 * f.life.u;
    w.ends = fmt::format("{:.0f} to {:.0f} {}", f.life.plan, f.life.left + 2 * f.life.u, f.way_unit);
    return w;
}

template <class Lines, class Make>
std::vector<TableRow> rows_of(const Lines& lines, Make make) {
    std::vector<TableRow> rows;
    rows.reserve(lines.size());
    for (const auto& line : lines) rows.push_back(make(line));
    return rows;
}

std::string models_words(const std::vector<std::string>& models) {
    std::string out;
    for (std::size_t i = 0; i < models.size(); ++i)
        out += fmt::format("{}axle {}: {}", i == 0 ? "" : ", ", i + 1,
                           models[i].empty() ? "tag not read" : one_line(models[i], kMostName));
    return out;
}

void add_facts(Trailer& view, const ledger::TrailerPage& page) {
    const ledger::TrailerLine& t = page.trailer;
    view.title = trailer_name(t);
    if (t.tow) view.outcome = t.tow->outcome;
    view.towing = towing_words(t.tow);
    std::vector<std::string> parts;
    for (const std::string& text : {t.kind, t.maker})
        if (!text.empty()) parts.push_back(one_line(text, kMostName));
    if (!t.plate.empty() && view.title != t.plate) parts.push_back("plate " + one_line(t.plate, kMostName));
    if (!t.vin.empty() && view.title != t.vin) parts.push_back("VIN " + one_line(t.vin, kMostName));
    for (const std::string& part : parts) view.under += (view.under.empty() ? "" : ", ") + part;
    view.under = upper(view.under);
    const std::string first = day_words(t.first), last = day_words(t.last);
    view.facts.push_back(count_words(t.visits, "visit", "visits") +
                         (first == last ? " on " + last : fmt::format(" from {} to {}", first, last)));
    if (t.open_findings > 0)
        view.facts.push_back(count_words(t.open_findings, "open finding", "open findings") +
                             (t.worst ? fmt::format(", the worst '{}'", name_of(*t.worst)) : ""));
    if (const std::string models = models_words(t.axle_models); !models.empty()) view.facts.push_back(models);
}

void add_changes(Trailer& view, const ledger::TrailerPage& page) {
    view.changes = list_of("changes", "Changes on " + view.title, "No revision on file changes what was recorded.",
                           revision_columns());
    std::map<std::string, Instant> days;
    for (const ledger::JobLine& job : page.visits) days[job.job] = job.opened;
    std::vector<TableRow> rows;
    std::size_t eased = 0;
    for (const ledger::RevisionChange& change : page.changes) {
        rows.push_back(revision_row(change, days[change.job], rows.size()));
        if (change.eased() && ++eased == 1) view.eased = rows.back().detail;
    }
    if (eased > 1) view.eased += fmt::format(" And {} more: see 'Changes'.", eased - 1);
    view.changes.keep(std::move(rows));
}

void add_costs(Trailer& view, const ledger::Costs& costs) {
    view.costs = list_of("costs", "Costs of " + view.title, "No accepted quote yet.", cost_columns());
    view.costs.keep(rows_of(costs.years, cost_row));
    for (const Money& total : costs.total) view.cost_lines.push_back("All years: " + total.text());
    for (const Money& each : costs.per_1000_miles) view.cost_lines.push_back("For 1,000 miles: " + each.text());
    if (!costs.miles_from.empty())
        view.cost_lines.push_back(costs.miles ? fmt::format("{:.0f} miles: {}", *costs.miles, costs.miles_from)
                                              : "By the distance: " + costs.miles_from);
}

void add_pairs(Trailer& view, const std::vector<ledger::PhotoPair>& pairs) {
    for (const ledger::PhotoPair& p : pairs)
        view.pairs.push_back({fmt::format("{} {} {}", p.job, p.place.text(), name_of(p.slot)) + p.before + p.after,
                              fmt::format("{}: {}, {}", place_words(p.place, SideWords::left_right), name_of(p.slot),
                                          day_words(p.visit)),
                              p.before, p.after});
}

}  // namespace

const ledger::PacketLine* Trailer::packet(const std::string& fingerprint) const {
    for (const ledger::PacketLine& line : packet_lines)
        if (line.fingerprint == fingerprint) return &line;
    return nullptr;
}

bool Trailer::doubtful(const ledger::PacketLine& p) const {
    return ledger::flagged(p.standing) && (p.role == ledger::Role::held || flagged_jobs.contains(p.job));
}

Trailer trailer_view(const ledger::TrailerPage& page) {
    Trailer view;
    add_facts(view, page);
    view.visits = list_of("visits", "Visits to " + view.title, "No visits.", visit_columns());
    view.visits.keep(rows_of(page.visits, visit_row));
    view.torques =
        list_of("torques", "Torques of " + view.title, "Nothing was tightened with a torque wrench.", torque_columns());
    view.torques.keep(rows_of(page.torques, torque_row));
    view.findings = list_of("findings", "Findings on " + view.title, "Nothing was found.", finding_columns());
    view.findings.keep(rows_of(page.findings, finding_row));
    add_changes(view, page);
    view.packets = list_of("packets", "Packets of " + view.title, "No packets.", packet_columns());
    for (const ledger::JobLine& job : page.visits)
        if (job.flagged) view.flagged_jobs.insert(job.job);
    view.packets.keep(rows_of(page.packets, [&](const ledger::PacketLine& p) {
        return packet_row(p, ledger::flagged(p.standing) && !view.doubtful(p));
    }));
    view.packet_lines = page.packets;
    add_costs(view, page.costs);
    for (const Forecast& f : page.wear) view.wear.push_back(wear_of(f));
    std::stable_partition(view.wear.begin(), view.wear.end(), [](const Wear& w) { return w.told; });
    add_pairs(view, page.pairs);
    return view;
}

Compared compared_view(const ledger::Comparison& c) {
    Compared view;
    const std::string unit = c.now.unit.empty() ? c.now.plate : c.now.unit;
    view.title = fmt::format("{}: {} and {}", unit.empty() ? "Two visits" : one_line(unit, kMostName),
                             day_words(c.before.opened), day_words(c.now.opened));
    view.under =
        fmt::format("By {} and {}", one_line(c.before.technician, kMostName), one_line(c.now.technician, kMostName));
    view.readings = list_of("readings", view.title, "No reading was taken at both visits.", change_columns());
    std::vector<TableRow> rows;
    for (const ReadingChange& change : c.readings) rows.push_back(change_row(change, rows.size()));
    view.readings.keep(std::move(rows));
    view.findings = list_of("findings", "Findings of both", "Nothing was open at either visit.", stayed_columns());
    std::vector<TableRow> findings;
    for (const auto& [lines, what] :
         {std::pair{&c.appeared, "appeared"}, {&c.stayed, "still open"}, {&c.gone, "settled"}})
        for (const ledger::FindingLine& line : *lines) findings.push_back(stayed_row(line, what));
    view.findings.keep(std::move(findings));
    for (TableColumn& column : view.findings.columns) column.sorts = false;
    return view;
}

}  // namespace cotter::desk
