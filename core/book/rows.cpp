// Reading and writing a job's rows.
#include "core/book/rows.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

#include "core/book/positions.h"
#include "core/survey/json.h"

namespace cotter {

namespace {

unexpected<Error> row_is_damaged(const Error& error, std::string_view table, const std::string& id) {
    return fail(Errc::damaged, fmt::format("a record of the book cannot be understood ({})", error.line()),
                fmt::format("{} {}", table, id), "put back the last good copy");
}

Result<> load_kind(Sqlite& db, const std::string& job_id, RecordKind kind, StoredJob& into) {
    const std::string_view table = name_of(kind);
    COTTER_ASSIGN(
        Statement rows,
        db.query(fmt::format("SELECT id, position, body FROM {} WHERE job=? ORDER BY position, id", table), {job_id}));
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return {};
        auto record = record_from_json(kind, rows.text(2));
        if (!record) return row_is_damaged(record.error(), table, rows.text(0));
        into.positions[static_cast<std::size_t>(kind)].push_back(rows.integer(1));
        std::visit([&]<class R>(R& r) { into.job.all<R>().push_back(std::move(r)); }, *record);
    }
}

Result<> load_amendments(Sqlite& db, const std::string& job_id, Job& job) {
    COTTER_ASSIGN(Statement rows, db.query("SELECT body FROM amendment WHERE job=? ORDER BY position", {job_id}));
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return {};
        auto amendment = amendment_from_json(rows.text(0));
        if (!amendment) return row_is_damaged(amendment.error(), "amendment of job", job_id);
        job.amendments.push_back(std::move(*amendment));
    }
}

// What was before, found by id.
template <class R>
struct Before {
    const std::vector<R>& records;
    const std::vector<std::int64_t>& positions;
    std::map<Uuid, std::size_t> by_id;

    Before(const std::vector<R>& r, const std::vector<std::int64_t>& p) : records(r), positions(p) {
        for (std::size_t i = 0; i < r.size(); ++i) by_id.emplace(r[i].id.uuid, i);
    }
    [[nodiscard]] std::optional<std::size_t> find(const R& record) const {
        const auto it = by_id.find(record.id.uuid);
        return it == by_id.end() ? std::nullopt : std::optional(it->second);
    }
};

template <class R>
Result<std::vector<std::int64_t>> write_list(Sqlite& db, std::string_view table, const std::string& job_id,
                                             Before<R> before, const std::vector<R>& after) {
    std::vector<std::optional<std::int64_t>> old_positions;
    for (const R& record : after) {
        const auto at = before.find(record);
        old_positions.push_back(at ? std::optional(before.positions[*at]) : std::nullopt);
    }
    auto positions = assign_positions(old_positions);
    for (std::size_t i = 0; i < after.size(); ++i) {
        const auto at = before.find(after[i]);
        const std::string id = after[i].id.text();
        if (!at)
            COTTER_TRY(db.run(fmt::format("INSERT INTO {}(job, id, position, body) VALUES(?, ?, ?, ?)", table),
                              {job_id, id, positions[i], record_json(Record{after[i]})}));
        else if (positions[i] != before.positions[*at] || !(after[i] == before.records[*at]))
            COTTER_TRY(db.run(fmt::format("UPDATE {} SET position=?, body=? WHERE job=? AND id=?", table),
                              {positions[i], record_json(Record{after[i]}), job_id, id}));
        before.by_id.erase(after[i].id.uuid);
    }
    for (const auto& [id, unused] : before.by_id)
        COTTER_TRY(db.run(fmt::format("DELETE FROM {} WHERE job=? AND id=?", table), {job_id, id.text()}));
    return positions;
}

Result<> write_kind(Sqlite& db, RecordKind kind, const std::string& job_id, const StoredJob& before, StoredJob& after) {
    const auto index = static_cast<std::size_t>(kind);
    return with_records(after.job, kind, [&]<class R>(const std::vector<R>& list) -> Result<> {
        const auto& old = before.job.all<R>();
        after.positions[index] = before.positions[index];
        if (list == old) return {};
        COTTER_ASSIGN(after.positions[index],
                      write_list(db, name_of(kind), job_id, Before<R>(old, before.positions[index]), list));
        return {};
    });
}

Result<> write_job_row(Sqlite& db, const Job& job, const Instant& changed) {
    const JobRow row = job_row(job);
    return db.run(
        "INSERT INTO job(id, opened, opened_s, unit, signed_off, changed) VALUES(?, ?, ?, ?, ?, ?) ON CONFLICT(id) DO "
        "UPDATE SET opened=excluded.opened, opened_s=excluded.opened_s, unit=excluded.unit, "
        "signed_off=excluded.signed_off, changed=excluded.changed",
        {row.id, row.opened, row.opened_s, row.unit, row.signed_off, changed.text()});
}

}  // namespace

JobRow job_row(const Job& job) {
    const Visit* visit = job.only<Visit>();
    const Trailer* trailer = job.only<Trailer>();
    return {job.id().text(), visit == nullptr ? std::string() : visit->opened.text(),
            visit == nullptr ? 0 : visit->opened.unix_s, trailer == nullptr ? std::string() : trailer->unit,
            job.signed_off() ? 1 : 0};
}

Result<std::optional<StoredJob>> load_rows(Sqlite& db, const JobId& id) {
    StoredJob stored;
    for (std::size_t kind = 0; kind < kRecordKinds; ++kind)
        COTTER_TRY(load_kind(db, id.text(), static_cast<RecordKind>(kind), stored));
    COTTER_TRY(load_amendments(db, id.text(), stored.job));
    if (stored.job.only<Visit>() == nullptr) return std::optional<StoredJob>();
    return stored;
}

Result<StoredJob> write_rows(Sqlite& db, const StoredJob& before, Job after, const Instant& changed) {
    StoredJob out{std::move(after), {}};
    const std::string job_id = out.job.id().text();
    COTTER_TRY(write_job_row(db, out.job, changed));
    for (std::size_t kind = 0; kind < kRecordKinds; ++kind)
        COTTER_TRY(write_kind(db, static_cast<RecordKind>(kind), job_id, before, out));
    for (std::size_t i = before.job.amendments.size(); i < out.job.amendments.size(); ++i)
        COTTER_TRY(db.run("INSERT INTO amendment(job, position, body) VALUES(?, ?, ?)",
                          {job_id, static_cast<std::int64_t>(i), amendment_json(out.job.amendments[i])}));
    return out;
}

}  // namespace cotter
