// The journal: every step that a job took, with its exact inverse, and what undo and redo would do next.
// For core/book and its readers; one thread per connection.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/survey/edit.h"

namespace cotter {

class Sqlite;

enum class StepKind { edit, undo, redo };
constexpr auto names(StepKind) {
    return name_list("edit", "undo", "redo");
}

// One step. Applying the `edit`s of all steps in order, from nothing, gives the job.
struct JournalStep {
    std::int64_t seq = 0;  // rises with time, over all jobs of a book
    StepKind kind = StepKind::edit;
    std::optional<std::int64_t> target;  // undo, redo: the step that was taken back or done again
    Edit edit;                           // what was applied, with its time and person
    Edit inverse;                        // what takes it back

    bool operator==(const JournalStep&) const = default;
};

// Adds a step (its `seq` is given by the book). Inside a transaction.
[[nodiscard]] Result<> add_step(Sqlite& db, const JournalStep& step);

[[nodiscard]] Result<std::vector<JournalStep>> all_steps(Sqlite& db, const JobId& job);  // oldest first
[[nodiscard]] Result<JournalStep> one_step(Sqlite& db, std::int64_t seq);

// The steps that undo would take back and redo would do again, next one last. The step that opened the job is not
// among them: a job cannot lose its visit.
struct UndoStacks {
    std::vector<std::int64_t> undo;
    std::vector<std::int64_t> redo;

    // One more step's effect; false when it takes back or does again what is not next. `target` as in JournalStep.
    [[nodiscard]] bool take(std::int64_t seq, StepKind kind, std::int64_t target);
};
[[nodiscard]] Result<UndoStacks> undo_stacks(Sqlite& db, const JobId& job);

}  // namespace cotter
