// The whole of a book, checked.
#include <fmt/format.h>

#include "core/book/book.h"
#include "core/book/rows.h"

namespace cotter {

namespace {

unexpected<Error> wrong(std::string what, std::string where) {
    return fail(Errc::damaged, std::move(what), std::move(where), "put back the last good copy");
}

Result<> check_database(Sqlite& db) {
    COTTER_ASSIGN(const std::string said, db.text("PRAGMA integrity_check(1)"));
    if (said != "ok") return wrong(fmt::format("the book is damaged ({})", said), "book.sqlite");
    COTTER_ASSIGN(Statement dangling, db.query("PRAGMA foreign_key_check"));
    COTTER_ASSIGN(const bool any, dangling.next());
    if (any)
        return wrong("a record refers to one that is not there",
                     fmt::format("{} {}", dangling.text(0), dangling.text(1)));
    return {};
}

Result<std::vector<JobRow>> job_rows(Sqlite& db) {
    std::vector<JobRow> out;
    COTTER_ASSIGN(Statement rows, db.query("SELECT id, opened, opened_s, unit, signed_off FROM job ORDER BY id"));
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return out;
        out.push_back({rows.text(0), rows.text(1), rows.integer(2), rows.text(3), rows.integer(4)});
    }
}

// The journal once more from nothing, each step with the inverse it should have.
Result<Job> replayed(const std::vector<JournalStep>& steps) {
    Job job;
    for (const JournalStep& step : steps) {
        const std::string where = fmt::format("job {}, step {}", step.edit.job.text(), step.seq);
        auto after = apply(job, step.edit);
        if (!after) return wrong(fmt::format("the journal cannot be replayed ({})", after.error().line()), where);
        if (!(inverse(job, step.edit) == step.inverse)) return wrong("a step's undo does not take it back", where);
        job = std::move(*after);
    }
    return job;
}

Result<> check_job(Sqlite& db, const JobRow& row) {
    const auto id = Uuid::parse(row.id);
    if (!id) return wrong("a job's id is not one", "job " + row.id);
    COTTER_ASSIGN(const auto stored, load_rows(db, JobId{*id}));
    if (!stored) return wrong("a job has lost its visit", "job " + row.id);
    if (!(job_row(stored->job) == row))
        return wrong("a job's line in the list is not what its records say", "job " + row.id);
    COTTER_ASSIGN(const auto steps, all_steps(db, JobId{*id}));
    COTTER_TRY(undo_stacks(db, JobId{*id}));
    COTTER_ASSIGN(const Job again, replayed(steps));
    if (!(again == stored->job)) return wrong("a job is not what its journal makes of it", "job " + row.id);
    return {};
}

}  // namespace

Result<> Book::verify_pages() {
    COTTER_ASSIGN(const std::string said, db_->text("PRAGMA quick_check(1)"));
    if (said != "ok") return wrong(fmt::format("the book is damaged ({})", said), "book.sqlite");
    return {};
}

Result<> Book::verify() {
    COTTER_TRY(check_database(*db_));
    COTTER_ASSIGN(const auto rows, job_rows(*db_));
    for (const JobRow& row : rows) COTTER_TRY(check_job(*db_, row));
    return {};
}

}  // namespace cotter
