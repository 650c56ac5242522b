// Steps of a job: commit, undo, redo.
//
// Method: the last job stays in memory. That is in step with the disk because the connection holds SQLite's exclusive
// lock as long as it lives, every write goes through take_step(), and whenever one fails the memory is dropped.
#include "core/book/book.h"

#include "core/book/rows.h"
#include "core/store/sqlite.h"
#include "core/survey/json.h"

namespace cotter {

struct Book::Held {
    JobId id;
    StoredJob stored;
    std::optional<UndoStacks> stacks;  // once an undo or redo has asked for them
};

Book::Book(std::unique_ptr<FileLock> lock, std::unique_ptr<Sqlite> db) : lock_(std::move(lock)), db_(std::move(db)) {}
Book::~Book() = default;

namespace {

unexpected<Error> no_such_job(const JobId& job) {
    return fail(Errc::not_found, "there is no such job in the book", job.text());
}

// What is not the same after being written down and read again would be lost.
Result<> check_can_be_written(const Edit& edit) {
    const auto again = edit_from_json(edit_json(edit));
    if (!again || !(*again == edit))
        return fail(Errc::refused, "the edit holds a value that cannot be written down", edit.job.text(),
                    "look for a text that is not UTF-8 or a number that is none");
    return {};
}

std::string reason_of(StepKind kind, const Job& job, const Edit& original) {
    if (!job.signed_off()) return {};
    return (kind == StepKind::undo ? "undone: " : "done again: ") + original.reason;
}

}  // namespace

// Makes held_ the job, or an empty one when the book has no such job.
Result<> Book::hold(const JobId& job) {
    if (held_ && held_->id == job) return {};
    held_.reset();
    COTTER_ASSIGN(auto stored, load_rows(*db_, job));
    held_ = std::make_unique<Held>(Held{job, stored ? std::move(*stored) : StoredJob{}, {}});
    return {};
}

Result<Job> Book::take_step(JournalStep step) {
    COTTER_TRY(check_can_be_written(step.edit));
    COTTER_TRY(hold(step.edit.job));
    COTTER_ASSIGN(Job after, apply(held_->stored.job, step.edit));
    step.inverse = inverse(held_->stored.job, step.edit);
    const auto before = std::move(held_);  // only a step that is on the disk puts it back
    COTTER_ASSIGN(Transaction transaction, Transaction::begin(*db_));
    COTTER_ASSIGN(auto stored, write_rows(*db_, before->stored, std::move(after), step.edit.at));
    COTTER_TRY(add_step(*db_, step));
    const std::int64_t seq = db_->last_row();
    COTTER_TRY(transaction.commit());
    held_ = std::make_unique<Held>(Held{step.edit.job, std::move(stored), std::move(before->stacks)});
    if (held_->stacks && !held_->stacks->take(seq, step.kind, step.target.value_or(0))) held_->stacks.reset();
    return held_->stored.job;
}

Result<Job> Book::commit(const Edit& edit) {
    return take_step({0, StepKind::edit, std::nullopt, edit, {}});
}

Result<Job> Book::move_step(StepKind kind, const JobId& job, const Instant& at, const std::string& by) {
    COTTER_TRY(hold(job));
    if (held_->stored.job.only<Visit>() == nullptr) return no_such_job(job);
    if (!held_->stacks) {
        COTTER_ASSIGN(held_->stacks, undo_stacks(*db_, job));
    }
    const bool back = kind == StepKind::undo;
    const auto& stack = back ? held_->stacks->undo : held_->stacks->redo;
    if (stack.empty())
        return fail(Errc::not_found, back ? "there is nothing to undo" : "there is nothing to redo", job.text());
    COTTER_ASSIGN(const JournalStep original, one_step(*db_, stack.back()));
    Edit edit = back ? original.inverse : original.edit;
    edit.at = at;
    edit.by = by;
    edit.reason = reason_of(kind, held_->stored.job, original.edit);
    return take_step({0, kind, original.seq, std::move(edit), {}});
}

Result<Job> Book::undo(const JobId& job, const Instant& at, const std::string& by) {
    return move_step(StepKind::undo, job, at, by);
}

Result<Job> Book::redo(const JobId& job, const Instant& at, const std::string& by) {
    return move_step(StepKind::redo, job, at, by);
}

Result<Job> Book::load(const JobId& job) {
    COTTER_TRY(hold(job));
    if (held_->stored.job.only<Visit>() == nullptr) return no_such_job(job);
    return held_->stored.job;
}

}  // namespace cotter
