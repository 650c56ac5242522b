// Journal rows.
#include "core/book/journal.h"

#include <fmt/format.h>

#include "core/store/sqlite.h"
#include "core/survey/json.h"

namespace cotter {

namespace {

unexpected<Error> step_is_damaged(std::int64_t seq, const std::string& why) {
    return fail(Errc::damaged, fmt::format("a step of the journal cannot be understood ({})", why),
                fmt::format("step {}", seq), "put back the last good copy");
}

constexpr const char* kColumns = "SELECT seq, kind, target, edit, inverse FROM journal ";

Result<JournalStep> step_of(const Statement& row) {
    JournalStep step;
    step.seq = row.integer(0);
    const auto kind = from_name<StepKind>(row.text(1));
    if (!kind) return step_is_damaged(step.seq, "no such kind");
    step.kind = *kind;
    if (!row.is_null(2)) step.target = row.integer(2);
    auto edit = edit_from_json(row.text(3));
    if (!edit) return step_is_damaged(step.seq, edit.error().line());
    auto inverse = edit_from_json(row.text(4));
    if (!inverse) return step_is_damaged(step.seq, inverse.error().line());
    step.edit = std::move(*edit);
    step.inverse = std::move(*inverse);
    return step;
}

}  // namespace

bool UndoStacks::take(std::int64_t seq, StepKind kind, std::int64_t target) {
    if (kind == StepKind::edit) {
        undo.push_back(seq);
        redo.clear();
        return true;
    }
    auto& from = kind == StepKind::undo ? undo : redo;
    auto& to = kind == StepKind::undo ? redo : undo;
    if (from.empty() || from.back() != target) return false;
    from.pop_back();
    to.push_back(target);
    return true;
}

Result<> add_step(Sqlite& db, const JournalStep& step) {
    const SqlValue target = step.target ? SqlValue{*step.target} : SqlValue{};
    return db.run("INSERT INTO journal(job, at, by, kind, target, edit, inverse) VALUES(?, ?, ?, ?, ?, ?, ?)",
                  {step.edit.job.text(), step.edit.at.text(), step.edit.by, std::string(name_of(step.kind)), target,
                   edit_json(step.edit), edit_json(step.inverse)});
}

Result<std::vector<JournalStep>> all_steps(Sqlite& db, const JobId& job) {
    COTTER_ASSIGN(Statement rows, db.query(std::string(kColumns) + "WHERE job=? ORDER BY seq", {job.text()}));
    std::vector<JournalStep> out;
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return out;
        COTTER_ASSIGN(auto step, step_of(rows));
        out.push_back(std::move(step));
    }
}

Result<JournalStep> one_step(Sqlite& db, std::int64_t seq) {
    COTTER_ASSIGN(Statement rows, db.query(std::string(kColumns) + "WHERE seq=?", {seq}));
    COTTER_ASSIGN(const bool found, rows.next());
    if (!found) return step_is_damaged(seq, "it is missing");
    return step_of(rows);
}

Result<UndoStacks> undo_stacks(Sqlite& db, const JobId& job) {
    COTTER_ASSIGN(Statement rows,
                  db.query("SELECT seq, kind, target FROM journal WHERE job=? ORDER BY seq", {job.text()}));
    UndoStacks stacks;
    bool first = true;
    for (;;) {
        COTTER_ASSIGN(const bool more, rows.next());
        if (!more) return stacks;
        const auto kind = from_name<StepKind>(rows.text(1));
        if (!first && (!kind || !stacks.take(rows.integer(0), *kind, rows.integer(2))))
            return step_is_damaged(rows.integer(0), "it is out of order");
        first = false;
    }
}

}  // namespace cotter
