// Rows of the ledger's tables as answers. For core/ledger only.
#pragma once

#include <algorithm>

#include "core/ledger/answers.h"
#include "core/store/sql.h"

namespace cotter::ledger {

// The columns that job_line() reads, in its order, of a table named `job`.
inline constexpr std::string_view kJobColumns =
    "job.id, job.trailer, job.revision, job.opened, job.handed_over, job.unit, job.plate, job.vin, job.place, "
    "job.customer, job.technician, job.company, job.findings, job.open_findings, job.worst, job.flagged, job.conflict";
inline constexpr int kJobColumnCount = 17;
[[nodiscard]] JobLine job_line(const SqlRows& row);

// Whether the ledger accepts who signed a packet, as SQL over a table of that name: 1 or 0. Flagged packets need a
// person's word; for others it is enough that the trust list gave the key to the technician once.
[[nodiscard]] std::string accepted_sql(std::string_view packet);

// The columns that packet_line() reads, of a table named `packet`.
[[nodiscard]] std::string packet_columns();
[[nodiscard]] PacketLine packet_line(const SqlRows& row);

// A time that the ledger itself has written; the epoch when it cannot be read.
[[nodiscard]] Instant time_of(const std::string& text);
// From −1 for none.
[[nodiscard]] std::optional<Grade> grade_of(std::int64_t number);

// Collects conditions with their values: where.add("job.n > ?", 5) numbers the parameters.
class Conditions {
public:
    explicit Conditions(SqlValues values = {}) : values_(std::move(values)) {}
    void add(std::string_view condition, SqlValue value);
    void add(std::string_view condition);                     // without a value
    [[nodiscard]] std::string text() const { return text_; }  // " WHERE … AND …", or empty
    [[nodiscard]] const SqlValues& values() const { return values_; }
    [[nodiscard]] std::string next(SqlValue value);  // "$n" for a value elsewhere in the statement

private:
    std::string text_;
    SqlValues values_;
};

// What a filter asks of the table job.
void add_filter(Conditions& where, const JobFilter& filter);

// How many rows a query gives at most, as SQL has it.
inline constexpr std::size_t kMostAtOnce = 1000;
[[nodiscard]] inline std::int64_t bounded(std::size_t limit) {
    return static_cast<std::int64_t>(std::clamp<std::size_t>(limit, 1, kMostAtOnce));
}

}  // namespace cotter::ledger
