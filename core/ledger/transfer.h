// The ledger as a whole going elsewhere: exports that anyone can read, a backup in one file, another engine. One
// thread.
#pragma once

#include "core/ledger/ledger.h"

namespace cotter::ledger {

using Step = std::function<bool(std::size_t done, std::size_t total)>;  // false: stop; nothing half done is left

// Writes packets.csv, jobs.csv, trailers.csv, findings.csv, readings.csv, torques.csv, levels.csv, quotes.csv, due.csv,
// orders.csv (RFC 4180) and ledger.jsonl (one JSON object a line: every packet with its whole job document) into the
// folder. The same packets taken in in the same order give the same bytes, on either engine, whenever that was. When
// packets came, and what was refused, is the log of receipts and stays out.
[[nodiscard]] Result<> export_all(Ledger& ledger, const std::string& folder, const Step& step = {});

[[nodiscard]] std::string due_csv(const std::vector<DueRow>& rows);
[[nodiscard]] std::string due_ics(const std::vector<DueRow>& rows, const Instant& at, const std::string& software);
[[nodiscard]] std::string orders_csv(const std::vector<OrderRow>& rows);

// What two ledgers must agree in to hold the same: rows a table, and one digest over all of them in a fixed order.
struct Digest {
    std::vector<std::pair<std::string, std::int64_t>> rows;  // table, number
    std::string sha256;
    bool operator==(const Digest&) const = default;
};
[[nodiscard]] Result<Digest> digest(Ledger& ledger);

// One zip: every row, every photo and report, and their digest. Complete or absent.
[[nodiscard]] Result<> backup(Ledger& ledger, const std::string& file, const Step& step = {});
// Is the backup whole? Reads all of it.
[[nodiscard]] Result<Digest> check_backup(Files& files, Workers& workers, const std::string& file);
// Into a ledger that is empty; anything else is `refused`. Verified by digest before it counts.
[[nodiscard]] Result<> restore(Ledger& empty, const std::string& file, const Step& step = {});

// Copies every row to an empty ledger, on whichever engine, and verifies counts and digest. Photos stay in their vault,
// which both may share; when the folders differ they are copied.
[[nodiscard]] Result<Digest> copy(Ledger& from, Ledger& to_empty, const Step& step = {});

}  // namespace cotter::ledger
