// Finding jobs, and trailers by what people call them.
#include <algorithm>
#include <fmt/format.h>
#include <set>

#include "core/base/text.h"
#include "core/ledger/parts.h"
#include "core/ledger/rows.h"
#include "core/ledger/towing.h"
#include "core/ledger/words.h"

namespace cotter::ledger {

namespace {

// Every word may be the beginning of one in the index. Words hold only letters and digits, so quotes are safe.
std::string match_text(SqlEngine engine, const std::vector<std::string>& words) {
    std::string out;
    for (const std::string& word : words)
        out += engine == SqlEngine::sqlite ? fmt::format("{}\"{}\"*", out.empty() ? "" : " AND ", word)
                                           : fmt::format("{}'{}':*", out.empty() ? "" : " & ", word);
    return out;
}

// Where the jobs found come from; `where` gets the condition.
std::string found_sql(SqlEngine engine, Conditions& where, const std::vector<std::string>& words) {
    const bool sqlite = engine == SqlEngine::sqlite;
    if (words.empty()) return " FROM job";
    where.add(sqlite ? "search MATCH ?" : "search.words @@ CAST(? AS tsquery)", match_text(engine, words));
    return fmt::format(" FROM search JOIN job ON job.n = search.{}", sqlite ? "rowid" : "n");
}

// The newest come first without sorting: a job's number is the order of the index as well.
std::string order_sql(SqlEngine engine, const SearchAsk& ask, bool words) {
    const char* way = ask.rising ? "ASC" : "DESC";
    const char* number = words && engine == SqlEngine::sqlite ? "search.rowid" : "job.n";
    switch (ask.order) {
        case JobOrder::unit:
            return fmt::format(" ORDER BY job.unit_key {}, {} DESC", way, number);
        case JobOrder::customer:
            return fmt::format(" ORDER BY job.customer_key {}, {} DESC", way, number);
        case JobOrder::technician:
            return fmt::format(" ORDER BY job.technician_key {}, {} DESC", way, number);
        case JobOrder::worst:
            return fmt::format(" ORDER BY job.worst {}, {} DESC", way, number);
        case JobOrder::open_findings:
            return fmt::format(" ORDER BY job.open_findings {}, {} DESC", way, number);
        case JobOrder::opened:
            break;
    }
    return fmt::format(" ORDER BY {} {}", number, way);
}

// All that a text may name: by number of the trailer, by key, or by the beginning of a job's id.
struct Named {
    std::set<std::string> trailers, jobs;
};

Result<Named> named(SqlDb& db, std::string_view text) {
    Named out;
    const std::string number = number_key(text), id = ascii_lower(text);
    COTTER_TRY(
        db.each("SELECT trailer FROM trailer WHERE trailer=$1", {std::string(text)}, [&](const SqlRows& r) -> Result<> {
            out.trailers.insert(r.text(0));
            return {};
        }));
    if (number.empty()) return out;
    for (const char* column : {"unit_key", "plate_key", "vin_key"})
        COTTER_TRY(db.each(fmt::format("SELECT DISTINCT trailer FROM job WHERE {}=$1", column), {number},
                           [&](const SqlRows& r) -> Result<> {
                               out.trailers.insert(r.text(0));
                               return {};
                           }));
    if (id.size() < 4 || id.find_first_not_of("0123456789abcdef-") != std::string::npos) return out;
    return db
        .each("SELECT id, trailer FROM job WHERE id>=$1 AND id<$2 LIMIT 3", {id, id + "g"},
              [&](const SqlRows& r) -> Result<> {
                  out.jobs.insert(r.text(0));
                  out.trailers.insert(r.text(1));
                  return {};
              })
        .map([&] { return out; });
}

unexpected<Error> several_named(std::string_view text, const std::set<std::string>& all) {
    std::string list;
    for (const std::string& one : all) list += (list.empty() ? "" : ", ") + one;
    return fail(Errc::refused, fmt::format("that names several: {}", one_line(list, 200)), one_line(text, 60),
                "say which");
}

}  // namespace

unexpected<Error> nothing_named(std::string_view text) {
    return fail(Errc::not_found, "the ledger has nothing of that name", one_line(text, 60),
                "give a unit, a plate, a VIN, or the first digits of a job's id");
}

Result<std::vector<Hit>> Ledger::search(const SearchAsk& ask) {
    const auto words = typed_words(ask.words);
    Conditions where;
    const std::string counts = counts_sql(where, ports().clock.now(), parts_->rules_version);
    const std::string from = found_sql(db().engine(), where, words);
    add_filter(where, ask.filter);
    const bool fields = !words.empty();
    std::string sql = fmt::format(
        "SELECT {}, {}, CASE WHEN {} THEN 1 ELSE 0 END, {}{}{} LEFT JOIN towing ON towing.trailer = job.trailer",
        kJobColumns, fields ? "searched.fields" : "''", counts, kTowColumns, from,
        fields ? " JOIN searched ON searched.n = job.n" : "");
    sql += where.text() + order_sql(db().engine(), ask, fields);
    sql += " LIMIT " + where.next(bounded(ask.limit));
    sql += " OFFSET " + where.next(static_cast<std::int64_t>(ask.offset));
    std::vector<Hit> out;
    COTTER_TRY(db().each(sql, where.values(), [&](const SqlRows& r) -> Result<> {
        Hit hit{job_line(r), tow_line(r, kJobColumnCount + 1), {}, {}};
        if (!words.empty()) {
            Field field = where_found(fields_from_text(r.text(kJobColumnCount)), words.back());
            hit.field = std::move(field.name);
            hit.text = std::move(field.text);
        }
        out.push_back(std::move(hit));
        return {};
    }));
    return out;
}

Result<std::int64_t> Ledger::count(const SearchAsk& ask) {
    Conditions where;
    const std::string from = found_sql(db().engine(), where, typed_words(ask.words));
    add_filter(where, ask.filter);
    return db().integer("SELECT count(*)" + from + where.text(), where.values());
}

Result<std::vector<JobLine>> Ledger::jobs(const JobFilter& filter, std::size_t limit, std::size_t offset) {
    COTTER_ASSIGN(auto hits, search({{}, filter, limit, offset}));
    std::vector<JobLine> out;
    for (Hit& hit : hits) out.push_back(std::move(hit.job));
    return out;
}

Result<std::string> Ledger::find_trailer(std::string_view text) {
    COTTER_ASSIGN(const Named all, named(db(), text));
    if (all.trailers.empty()) return nothing_named(text);
    if (all.trailers.size() > 1) return several_named(text, all.trailers);
    return *all.trailers.begin();
}

Result<std::string> Ledger::find_job(std::string_view text) {
    COTTER_ASSIGN(const Named all, named(db(), text));
    if (all.jobs.size() == 1) return *all.jobs.begin();
    if (all.jobs.size() > 1) return several_named(text, all.jobs);
    if (all.trailers.empty()) return nothing_named(text);
    if (all.trailers.size() > 1) return several_named(text, all.trailers);
    return db().text("SELECT id FROM job WHERE trailer=$1 ORDER BY n DESC LIMIT 1", {*all.trailers.begin()});
}

}  // namespace cotter::ledger
