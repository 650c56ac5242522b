// Trailers in lists, with what the answer engine says about towing them; and such answers made anew.
#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/ledger/parts.h"
#include "core/ledger/rows.h"
#include "core/ledger/towing.h"
#include "core/ledger/words.h"

namespace cotter::ledger {

namespace {

constexpr int kMoreColumns = 5;  // of a trailer, behind those of its newest job

// `counts`: as counts_sql() gives it.
std::string select_sql(const std::string& counts) {
    return fmt::format(
        "SELECT {}, job.kind, job.maker, job.models, trailer.visits, trailer.first_opened, CASE WHEN {} THEN 1 ELSE 0 "
        "END, {} FROM towing JOIN trailer ON trailer.trailer = towing.trailer JOIN job ON job.n = towing.n",
        kJobColumns, counts, kTowColumns);
}

TrailerLine trailer_line(const SqlRows& r) {
    TrailerLine out;
    const JobLine job = job_line(r);
    out.key = job.trailer;
    out.unit = job.unit;
    out.plate = job.plate;
    out.vin = job.vin;
    out.last = job.opened;
    out.customer = job.customer;
    out.place = job.place;
    out.technician = job.technician;
    out.open_findings = job.open_findings;
    out.worst = job.worst;
    out.kind = r.text(kJobColumnCount);
    out.maker = r.text(kJobColumnCount + 1);
    const std::string models = r.text(kJobColumnCount + 2);
    for (std::size_t at = 0; at < models.size(); at = models.find('\n', at) + 1)
        out.axle_models.push_back(models.substr(at, models.find('\n', at) - at));
    out.visits = static_cast<std::size_t>(r.integer(kJobColumnCount + 3));
    out.first = time_of(r.text(kJobColumnCount + 4));
    out.tow = tow_line(r, kJobColumnCount + kMoreColumns);
    return out;
}

void add_words(Conditions& where, const std::string& words) {
    const std::string number = number_key(words), name = name_key(words);
    if (name.empty()) return;
    const std::string as_name = where.next("%" + name + "%");
    std::string any = fmt::format("job.customer_key LIKE {}", as_name);
    if (!number.empty()) {
        const std::string as_number = where.next("%" + number + "%");
        for (const char* column : {"unit_key", "plate_key", "vin_key"})
            any += fmt::format(" OR job.{} LIKE {}", column, as_number);
    }
    where.add(fmt::format("({})", any));
}

void add_ask(Conditions& where, const FleetAsk& ask, const std::string& counts) {
    add_words(where, ask.words);
    std::string outcomes;
    for (const TowOutcome outcome : ask.outcomes)
        outcomes += fmt::format("{}{}", outcomes.empty() ? "" : ", ", static_cast<int>(outcome));
    if (!outcomes.empty()) where.add(fmt::format("towing.outcome IN ({})", outcomes));
    if (ask.trip_check_due) where.add("towing.trip_check_due = 1");
    if (!outcomes.empty() || ask.trip_check_due) where.add(counts);
}

const char* order_sql(const FleetAsk& ask) {
    switch (ask.order) {
        case FleetOrder::unit:
            return ask.falling ? " ORDER BY trailer.unit_key DESC, towing.n DESC"
                               : " ORDER BY trailer.unit_key, towing.n DESC";
        case FleetOrder::last:
            return ask.falling ? " ORDER BY towing.n DESC" : " ORDER BY towing.n";
        case FleetOrder::outcome:
            break;
    }
    return ask.falling ? " ORDER BY towing.worst_first DESC, towing.n DESC"
                       : " ORDER BY towing.worst_first, towing.n DESC";
}

}  // namespace

Result<std::vector<TrailerLine>> Ledger::fleet(const FleetAsk& ask) {
    Conditions where;
    const std::string counts = counts_sql(where, ports().clock.now(), parts_->rules_version);
    add_ask(where, ask, counts);
    std::string sql = select_sql(counts) + where.text() + order_sql(ask);
    sql += " LIMIT " + where.next(bounded(ask.limit));
    sql += " OFFSET " + where.next(static_cast<std::int64_t>(ask.offset));
    std::vector<TrailerLine> out;
    COTTER_TRY(db().each(sql, where.values(), [&](const SqlRows& r) -> Result<> {
        out.push_back(trailer_line(r));
        return {};
    }));
    return out;
}

Result<std::int64_t> Ledger::count(const FleetAsk& ask) {
    Conditions where;
    const std::string counts = counts_sql(where, ports().clock.now(), parts_->rules_version);
    add_ask(where, ask, counts);
    return db().integer(fmt::format("SELECT count(*), sum(CASE WHEN {} THEN 1 ELSE 0 END) FROM towing JOIN job ON "
                                    "job.n = towing.n{}",
                                    counts, where.text()),
                        where.values());
}

Result<FleetCounts> Ledger::fleet_counts() {
    FleetCounts out;
    const Instant now = ports().clock.now();
    Conditions values;
    const std::string counts = counts_sql(values, now, parts_->rules_version);
    COTTER_TRY(db().each(
        fmt::format(
            "SELECT CASE WHEN {} THEN outcome ELSE -1 END, trip_check_due, count(*), min(runs_out_s) FROM towing "
            "GROUP BY 1, 2",
            counts),
        values.values(), [&](const SqlRows& r) -> Result<> {
            const std::int64_t outcome = r.integer(0), n = r.integer(2), end = r.integer(3);
            if (outcome < 0 || outcome >= static_cast<std::int64_t>(out.of.size())) {
                out.waiting += n;
                return {};
            }
            out.of[static_cast<std::size_t>(outcome)] += n;
            if (r.integer(1) != 0) out.trip_check_due += n;
            if (end < kNever && (!out.next_end || end < out.next_end->unix_s))
                out.next_end = Instant{end, now.offset_min};
            return {};
        }));
    return out;
}

Result<std::vector<TrailerLine>> Ledger::trailers(std::size_t limit, std::size_t offset) {
    Conditions values;
    const std::string counts = counts_sql(values, ports().clock.now(), parts_->rules_version);
    std::string sql = select_sql(counts) + " ORDER BY trailer.unit_key, trailer.trailer";
    sql += " LIMIT " + values.next(bounded(limit));
    sql += " OFFSET " + values.next(static_cast<std::int64_t>(offset));
    std::vector<TrailerLine> out;
    COTTER_TRY(db().each(sql, values.values(), [&](const SqlRows& r) -> Result<> {
        out.push_back(trailer_line(r));
        return {};
    }));
    return out;
}

Result<TrailerLine> Ledger::trailer_head(const std::string& key) {
    Conditions where;
    const std::string counts = counts_sql(where, ports().clock.now(), parts_->rules_version);
    where.add("towing.trailer = ?", key);
    COTTER_ASSIGN(const auto rows, db().query(select_sql(counts) + where.text(), where.values()));
    COTTER_ASSIGN(const bool there, rows->next());
    if (!there) return nothing_named(key);
    return trailer_line(*rows);
}

Result<> Ledger::renew_one(const std::string& trailer, const Instant& now) {
    COTTER_ASSIGN(auto witnesses, witnesses_of(db(), trailer));
    if (witnesses.empty()) return {};
    COTTER_ASSIGN(const TowLine answer, towing_of(witnesses, Jobs(db()), rules(), now));
    return put_answer(db(), trailer, answer, parts_->rules_version);
}

Result<std::size_t> Ledger::renew_answers(std::size_t most) {
    const Instant now = ports().clock.now();
    Conditions values;
    const std::string counts = counts_sql(values, now, parts_->rules_version);
    const std::string sql = fmt::format("SELECT trailer FROM towing WHERE NOT {} LIMIT {}", counts,
                                        values.next(static_cast<std::int64_t>(most)));
    const auto waiting = [&]() -> Result<std::vector<std::string>> {
        std::vector<std::string> out;
        COTTER_TRY(db().each(sql, values.values(), [&](const SqlRows& r) -> Result<> {
            out.push_back(r.text(0));
            return {};
        }));
        return out;
    };
    COTTER_ASSIGN(const auto any, waiting());
    if (any.empty()) return std::size_t{0};  // without keeping other seats from writing
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db()));
    COTTER_ASSIGN(const auto trailers, waiting());
    for (const std::string& trailer : trailers) COTTER_TRY(renew_one(trailer, now));
    COTTER_TRY(transaction.commit());
    return trailers.size();
}

Result<> Ledger::renew_answers_of(const std::vector<std::string>& trailers) {
    if (trailers.empty()) return {};
    const Instant now = ports().clock.now();
    COTTER_ASSIGN(auto transaction, SqlTransaction::begin(db()));
    for (const std::string& trailer : trailers) COTTER_TRY(renew_one(trailer, now));
    return transaction.commit();
}

}  // namespace cotter::ledger
