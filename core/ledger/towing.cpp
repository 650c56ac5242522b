// See towing.h.
#include "core/ledger/towing.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/base/text.h"
#include "core/judge/fact_english.h"
#include "core/judge/rules_version.h"
#include "core/ledger/filing.h"
#include "core/packet/pack.h"
#include "core/survey/json_visitors.h"

namespace cotter::ledger {

namespace {

constexpr int kWords = 1;  // raise it when reason_of() or cannot_read() say the same in other words
constexpr std::int64_t kDay = 86'400;
constexpr std::size_t kLongestReason = 400;

// As a visit of its own right after the one in view: else the engine would take the two for one, or what the one in
// view says well for the last word on what this one forbids.
std::shared_ptr<const Job> beside_the_shown(const std::shared_ptr<const Job>& job, const std::string& fingerprint) {
    auto out = std::make_shared<Job>(*job);
    Visit& visit = out->all<Visit>().front();
    ++visit.opened.unix_s;
    Uuid& id = visit.id.uuid;
    for (std::size_t i = 0; i < id.bytes.size() && i < fingerprint.size(); ++i)
        id.bytes[i] = static_cast<std::uint8_t>(id.bytes[i] ^ static_cast<std::uint8_t>(fingerprint[i]));
    return out;
}

// The newest that is accepted: nobody else may say what the trailer is made of.
const Witness& speaker_of(std::span<const Witness> all) {
    const Witness* out = nullptr;
    for (const Witness& w : all)
        if (w.shown && (out == nullptr || w.accepted || !out->accepted)) out = &w;
    return *out;
}

std::string reason_of(const TowAnswer& a) {
    std::string out;
    if (a.first)
        out = english(*a.first);
    else if (a.reason() != nullptr)
        out = english(*a.reason());
    else if (!a.watch.empty())
        out = "watch: " + english(a.points[a.watch.front()]);
    return one_line(out, kLongestReason);
}

// Records from ahead of the clock are believed when their day has come.
bool ahead_of(std::span<const Witness> all, const Instant& now) {
    return std::any_of(all.begin(), all.end(),
                       [&](const Witness& w) { return packet_time(*w.job).unix_s > now.unix_s + kDay; });
}

TowLine cannot_read(const Error& error, const Instant& now) {
    TowLine out;
    out.reason = "the records on file cannot be read: " + one_line(error.line(), kLongestReason);
    out.says = fmt::format("Cannot tell: {}.", out.reason);
    out.as_of = now;
    out.runs_out = Instant{now.unix_s + kDay, now.offset_min};
    return out;
}

}  // namespace

void Jobs::keep(const std::string& fingerprint, const Job& job) {
    kept_[fingerprint] = std::make_shared<Job>(job);
}

Result<std::shared_ptr<const Job>> Jobs::get(const std::string& fingerprint) const {
    if (const auto found = kept_.find(fingerprint); found != kept_.end()) return found->second;
    COTTER_ASSIGN(Job job, load_job(db_, fingerprint));
    return std::make_shared<const Job>(std::move(job));
}

Result<std::vector<Witness>> witnesses_of(SqlDb& db, const std::string& trailer) {
    std::vector<Witness> out;
    const std::string sql = fmt::format(
        "SELECT job.n, p.fingerprint, CASE WHEN p.fingerprint=job.fingerprint THEN 1 ELSE 0 END, {} FROM job JOIN "
        "packet p ON p.job=job.id JOIN packet v ON v.fingerprint=job.fingerprint WHERE job.trailer=$1 AND "
        "(p.fingerprint=job.fingerprint OR ((p.role={} OR (p.conflict=1 AND p.revision=job.revision)) AND "
        "p.seq>v.chosen)) ORDER BY job.n, p.seq",
        accepted_sql("p"), static_cast<int>(Role::held));
    COTTER_TRY(db.each(sql, {trailer}, [&](const SqlRows& r) -> Result<> {
        const bool shown = r.integer(2) != 0;
        out.push_back({r.integer(0), r.text(1), shown, shown && r.integer(3) != 0, nullptr});
        return {};
    }));
    return out;
}

Result<> read_jobs(std::vector<Witness>& witnesses, const Jobs& jobs) {
    for (Witness& w : witnesses) {
        if (w.job != nullptr) continue;
        COTTER_ASSIGN(w.job, jobs.get(w.fingerprint));
        if (w.job->only<Visit>() == nullptr) return fail(Errc::damaged, "the job has no visit in it", w.fingerprint);
        if (!w.shown) w.job = beside_the_shown(w.job, w.fingerprint);
    }
    return {};
}

TowLine towing_of(std::span<const Witness> witnesses, const Rules& rules, const Instant& now) {
    const Witness& speaker = speaker_of(witnesses);
    std::vector<EarlierVisit> others;
    for (const Witness& w : witnesses)
        if (&w != &speaker) others.push_back({w.job.get(), w.accepted});
    const TowAnswer a =
        answer_towing(TowQuestion{*speaker.job, others, rules.limits, now, State::now, speaker.accepted});
    TowLine out;
    out.outcome = a.outcome;
    out.says = one_line(english(a, law_setting(*speaker.job)), 2 * kLongestReason);
    out.reason = reason_of(a);
    out.looked_at = a.looked_at;
    out.of = a.of;
    out.essential_open = a.essential_open;
    out.trip_check_due = a.trip_check_due;
    out.as_of = now;
    out.runs_out = a.runs_out;
    const Instant tomorrow{now.unix_s + kDay, now.offset_min};
    if (ahead_of(witnesses, now)) out.runs_out = std::min(out.runs_out.value_or(tomorrow), tomorrow);
    return out;
}

Result<TowLine> towing_of(std::vector<Witness>& witnesses, const Jobs& jobs, const Rules& rules, const Instant& now) {
    const auto read = read_jobs(witnesses, jobs);
    if (read) return towing_of(std::span<const Witness>(witnesses), rules, now);
    const Errc code = read.error().code;
    if (code == Errc::io || code == Errc::busy || code == Errc::no_space) return unexpected(read.error());
    return cannot_read(read.error(), now);
}

std::string rules_version(const Rules& rules) {
    Hasher hasher;
    hasher.add(as_bytes(fmt::format("{} {}\n", kRulesVersion, kWords)));
    for (const Limit& limit : rules.limits) hasher.add(as_bytes(compact_json(to_json_value(limit))));
    return hasher.finish_hex().substr(0, 16);
}

Result<> put_answer(SqlDb& db, const std::string& trailer, const TowLine& a, const std::string& rules) {
    const auto number = [](std::size_t n) { return static_cast<std::int64_t>(n); };
    COTTER_TRY(db.run("DELETE FROM towing WHERE trailer=$1", {trailer}));
    return db.run(
        "INSERT INTO towing(trailer, n, outcome, worst_first, says, reason, looked_at, of_points, essential_open, "
        "trip_check_due, as_of, as_of_s, runs_out, runs_out_s, rules) SELECT trailer, n, CAST($1 AS BIGINT), CAST($2 "
        "AS BIGINT), CAST($3 AS TEXT), CAST($4 AS TEXT), CAST($5 AS BIGINT), CAST($6 AS BIGINT), CAST($7 AS BIGINT), "
        "CAST($8 AS BIGINT), CAST($9 AS TEXT), CAST($10 AS BIGINT), CAST($11 AS TEXT), CAST($12 AS BIGINT), CAST($13 "
        "AS TEXT) FROM trailer WHERE trailer=$14",
        {std::int64_t{static_cast<int>(a.outcome)}, std::int64_t{worst_first(a.outcome)}, a.says, a.reason,
         number(a.looked_at), number(a.of), number(a.essential_open), std::int64_t{a.trip_check_due ? 1 : 0},
         a.as_of.text(), a.as_of.unix_s, a.runs_out ? a.runs_out->text() : "", a.runs_out ? a.runs_out->unix_s : kNever,
         rules, trailer});
}

Result<> put_off_answer(SqlDb& db, const std::string& trailer) {
    TowLine none;
    none.runs_out = Instant{};
    return put_answer(db, trailer, none, {});
}

Result<> put_off_answers(SqlDb& db, const std::string& technician_key, const std::string& signer) {
    return db.run(
        "UPDATE towing SET rules='' WHERE trailer IN (SELECT job.trailer FROM packet JOIN job ON job.id=packet.job "
        "WHERE packet.technician_key=$1 AND packet.signer=$2)",
        {technician_key, signer});
}

std::string counts_sql(Conditions& values, const Instant& now, const std::string& rules) {
    const std::string ends = values.next(now.unix_s), made = values.next(now.unix_s + kDay), by = values.next(rules);
    return fmt::format("(towing.runs_out_s>{} AND towing.as_of_s<={} AND towing.rules={})", ends, made, by);
}

std::optional<TowLine> tow_line(const SqlRows& r, int from) {
    if (r.is_null(from) || r.integer(from) == 0) return std::nullopt;
    const auto count = [&](int column) { return static_cast<std::size_t>(r.integer(from + column)); };
    TowLine out;
    out.outcome = static_cast<TowOutcome>(r.integer(from + 1));
    out.says = r.text(from + 2);
    out.reason = r.text(from + 3);
    out.looked_at = count(4);
    out.of = count(5);
    out.essential_open = count(6);
    out.trip_check_due = r.integer(from + 7) != 0;
    out.as_of = time_of(r.text(from + 8));
    if (const std::string end = r.text(from + 9); !end.empty()) out.runs_out = time_of(end);
    return out;
}

}  // namespace cotter::ledger
