// Rows of the ledger's tables as answers. For core/ledger only.
#pragma once

#include "core/ledger/answers.h"
#include "core/store/sql.h"

namespace cotter::ledger {

// The columns that job_line() reads, in its order, of a table named `job`.
inline constexpr std::string_view kJobColumns =
    "job.id, job.trailer, job.revision, job.opened, job.handed_over, job.unit, job.plate, job.vin, job.place, "
    "job.customer, job.technician, job.company, job.findings, job.open_findings, job.worst, job.flagged, job.conflict";
inline constexpr int kJobColumnCount = 17;
[[nodiscard]] JobLine job_line(const SqlRows& row);

inline constexpr std::string_view kPacketColumns =
    "packet.fingerprint, packet.name, packet.job, packet.revision, packet.previous, packet.handed_over, "
    "packet.technician, packet.signer, packet.standing, packet.role, packet.conflict, packet.chain_broken, "
    "packet.newer";
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

}  // namespace cotter::ledger
