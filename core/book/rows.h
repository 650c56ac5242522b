// A job as rows: read whole, written by difference. For core/book only; one thread per connection.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/store/sqlite.h"
#include "core/survey/edit.h"

namespace cotter {

inline constexpr std::size_t kRecordKinds = std::variant_size_v<Record>;

// A job with the positions its records have in their tables.
struct StoredJob {
    Job job;
    std::array<std::vector<std::int64_t>, kRecordKinds> positions;
};

// Nothing when the book has no such job; `damaged` when a row cannot be understood.
[[nodiscard]] Result<std::optional<StoredJob>> load_rows(Sqlite& db, const JobId& id);

// Writes what differs between `before` and `after`, and the job's own row. Inside a transaction.
[[nodiscard]] Result<StoredJob> write_rows(Sqlite& db, const StoredJob& before, Job after, const Instant& changed);

// What the job's own row says, in its columns' order: id, opened, opened_s, unit, signed_off.
struct JobRow {
    std::string id, opened;
    std::int64_t opened_s = 0;
    std::string unit;
    std::int64_t signed_off = 0;

    bool operator==(const JobRow&) const = default;
};
[[nodiscard]] JobRow job_row(const Job& job);

}  // namespace cotter
