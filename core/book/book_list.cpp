// What a book holds: lists of jobs, finding one, packets made.
#include <algorithm>
#include <fmt/format.h>
#include <map>

#include "core/base/text.h"
#include "core/book/book.h"
#include "core/store/sqlite.h"

namespace cotter {

namespace {

constexpr std::size_t kFewestDigits = 4;

template <class T>
Result<T> stored(Result<T> parsed, const std::string& where) {
    if (parsed) return parsed;
    return fail(Errc::damaged, fmt::format("the book is damaged ({})", parsed.error().line()), where,
                "put back the last good copy");
}

Result<JobId> job_id(const std::string& text) {
    COTTER_ASSIGN(const Uuid id, stored(Uuid::parse(text), "job " + text));
    return JobId{id};
}

Result<JobSummary> summary_of(const Statement& row) {
    JobSummary out;
    const std::string id = row.text(0);
    COTTER_ASSIGN(out.id, job_id(id));
    COTTER_ASSIGN(out.opened, stored(Instant::parse(row.text(1)), "job " + id));
    out.unit = row.text(2);
    out.signed_off = row.integer(3) != 0;
    out.customer = row.text(4);
    out.place = row.text(5);
    out.technician = row.text(6);
    out.shots = static_cast<std::size_t>(row.integer(7));
    COTTER_ASSIGN(const Instant changed, stored(Instant::parse(row.text(8)), "job " + id));
    out.unpacked_since = out.opened;
    if (row.is_null(9)) return out;
    COTTER_ASSIGN(const Instant packed, stored(Instant::parse(row.text(9)), "packet of job " + id));
    out.unpacked_since = changed.unix_s > packed.unix_s ? std::optional(packed) : std::nullopt;
    return out;
}

struct Graded {
    std::size_t findings = 0;
    std::optional<Grade> worst;
};

Result<std::map<std::string, Graded>> grades_by_job(Sqlite& db) {
    std::map<std::string, Graded> out;
    COTTER_ASSIGN(Statement rows, db.query("SELECT job, grade, count(*) FROM finding GROUP BY job, grade"));
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return out;
        Graded& graded = out[rows.text(0)];
        graded.findings += static_cast<std::size_t>(rows.integer(2));
        if (const auto grade = from_name<Grade>(rows.text(1)); grade && (!graded.worst || *grade > *graded.worst))
            graded.worst = *grade;
    }
}

Result<std::vector<std::string>> ids(Sqlite& db, const std::string& sql, std::initializer_list<SqlValue> values) {
    std::vector<std::string> out;
    COTTER_ASSIGN(Statement rows, db.query(sql, values));
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return out;
        out.push_back(rows.text(0));
    }
}

// The digits of an id or of the beginning of one; empty when the text cannot be one.
std::string id_digits(std::string_view text) {
    std::string out;
    for (const char c : ascii_lower(text)) {
        if (c == '-') continue;
        if ((c < '0' || c > '9') && (c < 'a' || c > 'f')) return {};
        out += c;
    }
    return out.size() >= kFewestDigits ? out : std::string();
}

Result<std::vector<std::string>> ids_beginning_with(Sqlite& db, const std::string& digits) {
    if (digits.empty()) return std::vector<std::string>();
    return ids(db, "SELECT id FROM job WHERE substr(replace(id, '-', ''), 1, length(?1)) = ?1 ORDER BY id", {digits});
}

}  // namespace

Result<std::vector<JobSummary>> Book::jobs() {
    COTTER_ASSIGN(const auto grades, grades_by_job(*db_));
    COTTER_ASSIGN(Statement rows,
                  db_->query("SELECT job.id, job.opened, job.unit, job.signed_off, customer, place, technician, "
                             "(SELECT count(*) FROM shot WHERE shot.job = job.id), job.changed, "
                             "(SELECT made_at FROM packet WHERE packet.job = job.id ORDER BY revision DESC LIMIT 1) "
                             "FROM job "
                             "JOIN visit ON visit.job = job.id ORDER BY opened_s DESC, job.id"));
    std::vector<JobSummary> out;
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return out;
        COTTER_ASSIGN(JobSummary job, summary_of(rows));
        if (const auto it = grades.find(job.id.text()); it != grades.end()) {
            job.findings = it->second.findings;
            job.worst = it->second.worst;
        }
        out.push_back(std::move(job));
    }
}

Result<JobId> Book::find_job(std::string_view text) {
    const std::string shown = fmt::format("'{}'", one_line(text, 60));
    COTTER_ASSIGN(const auto by_id, ids_beginning_with(*db_, id_digits(text)));
    if (by_id.size() > 1)
        return fail(Errc::refused, fmt::format("{} jobs have ids that begin so", by_id.size()), shown,
                    "give more digits");
    COTTER_ASSIGN(const auto by_unit, ids(*db_,
                                          "SELECT id FROM job WHERE unit = ? COLLATE NOCASE AND unit <> '' "
                                          "ORDER BY opened_s DESC, id",
                                          {std::string(text)}));
    const bool both = !by_id.empty() && !by_unit.empty();
    if (both && std::find(by_unit.begin(), by_unit.end(), by_id[0]) == by_unit.end())
        return fail(Errc::refused, "this is a unit and also the beginning of another job's id", shown,
                    "give the whole id: " + by_unit[0] + " or " + by_id[0]);
    if (!by_id.empty()) return job_id(by_id[0]);
    if (!by_unit.empty()) return job_id(by_unit[0]);
    return fail(Errc::not_found, "the book has no job with such an id or unit", shown,
                "give a unit, or the first 4 or more digits of a job's id");
}

Result<std::vector<JobId>> Book::jobs_before(const Job& job) {
    std::vector<JobId> out;
    const Trailer* trailer = job.only<Trailer>();
    const Visit* visit = job.only<Visit>();
    if (trailer == nullptr || visit == nullptr) return out;
    COTTER_ASSIGN(
        const auto found,
        ids(*db_,
            "SELECT job.id FROM trailer JOIN job ON job.id = trailer.job WHERE job.id <> ?1 AND opened_s < ?2 "
            "AND ((?3 <> '' AND trailer.unit = ?3 COLLATE NOCASE) OR "
            "(?4 <> '' AND json_extract(trailer.body, '$.vin') = ?4 COLLATE NOCASE)) "
            "ORDER BY opened_s DESC, job.id",
            {job.id().text(), visit->opened.unix_s, trailer->unit, trailer->vin}));
    for (const std::string& id : found) {
        COTTER_ASSIGN(const JobId one, job_id(id));
        out.push_back(one);
    }
    return out;
}

Result<std::vector<PacketMade>> Book::packets(const JobId& job) {
    COTTER_ASSIGN(Statement row,
                  db_->query("SELECT revision, content_sha256, tagmanifest_sha256, name, made_at FROM packet "
                             "WHERE job=? ORDER BY revision",
                             {job.text()}));
    std::vector<PacketMade> out;
    for (;;) {
        COTTER_ASSIGN(const bool more, row.next());
        if (!more) return out;
        COTTER_ASSIGN(const Instant made_at, stored(Instant::parse(row.text(4)), "packet of job " + job.text()));
        out.push_back({job, static_cast<int>(row.integer(0)), row.text(1), row.text(2), row.text(3), made_at});
    }
}

Result<std::optional<PacketMade>> Book::last_packet(const JobId& job) {
    COTTER_ASSIGN(const auto all, packets(job));
    return all.empty() ? std::nullopt : std::optional(all.back());
}

Result<> Book::record_packet(const PacketMade& packet) {
    const std::string job = packet.job.text();
    COTTER_ASSIGN(Transaction transaction, Transaction::begin(*db_));
    COTTER_ASSIGN(const auto known, db_->integer("SELECT count(*) FROM job WHERE id=?", {job}));
    if (known == 0) return fail(Errc::not_found, "there is no such job in the book", job);
    COTTER_ASSIGN(const auto last, last_packet(packet.job));
    if (packet.revision < 1 || (last && packet.revision <= last->revision))
        return fail(Errc::refused, fmt::format("revision {} of the packet was made already", packet.revision), job);
    COTTER_TRY(
        db_->run("INSERT INTO packet(job, revision, content_sha256, tagmanifest_sha256, name, made_at) "
                 "VALUES(?, ?, ?, ?, ?, ?)",
                 {job, std::int64_t{packet.revision}, packet.content_sha256, packet.tagmanifest_sha256, packet.name,
                  packet.made_at.text()}));
    return transaction.commit();
}

Result<std::vector<JournalStep>> Book::journal(const JobId& job) {
    return all_steps(*db_, job);
}

}  // namespace cotter
