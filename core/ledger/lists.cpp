// What is due, what is to be ordered, what fails, what came in.
#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>

#include "core/ledger/derive.h"
#include "core/ledger/rows.h"

namespace cotter::ledger {

namespace {

// The rows of one pack at one supplier, as they come: sorted by what makes them one.
void add_order(std::vector<OrderRow>& out, const SqlRows& r) {
    const std::string supplier = r.text(0), part = r.text(1), title = r.text(2), currency = r.text(3);
    if (out.empty() || out.back().supplier != supplier || out.back().part_number != part || out.back().title != title ||
        out.back().cost.currency != currency)
        out.push_back({supplier, part, title, 0, 0, {0, currency}, {}, {}});
    OrderRow& row = out.back();
    row.packs += r.integer(4);
    row.price = r.integer(5);
    row.cost.minor += r.integer(4) * r.integer(5);
    const auto add = [](std::vector<std::string>& all, const std::string& one) {
        if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
    };
    add(row.units, r.text(6));
    add(row.jobs, r.text(7));
}

}  // namespace

Result<std::vector<DueRow>> Ledger::due(const DueAsk& ask) {
    Conditions where;
    where.add("recheck.newest = ?", std::int64_t{1});
    if (!ask.each_trip) where.add("recheck.each_trip = ?", std::int64_t{0});
    if (ask.from) where.add("recheck.due_day >= ?", ask.from->days());
    if (ask.until) where.add("recheck.due_day <= ?", ask.until->days());
    if (!ask.trailer.empty()) where.add("recheck.trailer = ?", ask.trailer);
    std::string kinds;
    for (const DueKind kind : ask.kinds)
        kinds += fmt::format("{}{}", kinds.empty() ? "" : ", ", static_cast<int>(kind));
    if (!kinds.empty()) where.add(fmt::format("recheck.kind IN ({})", kinds));
    const std::string limit = ask.limit == 0 ? "" : " LIMIT " + where.next(static_cast<std::int64_t>(ask.limit));
    std::vector<DueRow> out;
    COTTER_TRY(db().each(
        "SELECT recheck.rule, recheck.kind, recheck.due_day, recheck.each_trip, recheck.body, job.trailer, job.unit, "
        "job.customer, job.place FROM recheck JOIN job ON job.n = recheck.n" +
            where.text() + " ORDER BY recheck.due_day, job.unit_key, job.trailer, recheck.rule" + limit,
        where.values(), [&](const SqlRows& r) -> Result<> {
            DueRow row = due_from_text(r.text(4));
            row.rule = r.text(0);
            row.kind = static_cast<DueKind>(r.integer(1));
            row.day = Date::from_days(r.integer(2));
            row.each_trip = r.integer(3) != 0;
            row.trailer = r.text(5);
            row.unit = r.text(6);
            row.customer = r.text(7);
            row.place = r.text(8);
            out.push_back(std::move(row));
            return {};
        }));
    return out;
}

Result<std::vector<OrderRow>> Ledger::orders() {
    std::vector<OrderRow> out;
    COTTER_TRY(
        db().each("SELECT o.supplier, o.part_number, o.title, o.currency, o.packs, o.price, o.unit, job.id FROM "
                  "order_line o JOIN job ON job.n = o.n ORDER BY o.supplier, o.part_number, o.title, "
                  "o.currency, o.n, o.number",
                  {}, [&](const SqlRows& r) -> Result<> {
                      add_order(out, r);
                      return {};
                  }));
    return out;
}

Result<std::vector<AxleFailure>> Ledger::failures() {
    std::map<std::string, std::size_t> models;
    COTTER_TRY(db().each("SELECT axle_model, count(*) FROM axle_model GROUP BY axle_model", {},
                         [&](const SqlRows& r) -> Result<> {
                             models[r.text(0)] = static_cast<std::size_t>(r.integer(1));
                             return {};
                         }));
    std::vector<AxleFailure> out;
    COTTER_TRY(db().each(
        "SELECT axle_model, component, defect, count(*), count(DISTINCT trailer), max(grade) FROM finding GROUP BY "
        "axle_model, component, defect ORDER BY count(*) DESC, axle_model, component, defect",
        {}, [&](const SqlRows& r) -> Result<> {
            out.push_back({r.text(0), r.text(1), r.text(2), static_cast<std::size_t>(r.integer(3)),
                           static_cast<std::size_t>(r.integer(4)), models[r.text(0)], grade_of(r.integer(5))});
            return {};
        }));
    return out;
}

Result<std::vector<Receipt>> Ledger::receipts(std::size_t limit, std::size_t offset) {
    std::vector<Receipt> out;
    COTTER_TRY(db().each(
        "SELECT number, at, path, arrival, why, fingerprint, job, revision, bytes FROM receipt ORDER "
        "BY number DESC LIMIT $1 OFFSET $2",
        {static_cast<std::int64_t>(limit), static_cast<std::int64_t>(offset)}, [&](const SqlRows& r) -> Result<> {
            out.push_back({r.integer(0), time_of(r.text(1)), r.text(2), static_cast<Arrival>(r.integer(3)), r.text(4),
                           r.text(5), r.text(6), static_cast<int>(r.integer(7)),
                           static_cast<std::uint64_t>(r.integer(8))});
            return {};
        }));
    return out;
}

}  // namespace cotter::ledger
