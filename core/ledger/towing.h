// What the ledger says about towing a trailer: the word of core's answer engine over all of its visits, and the rows
// that keep it. For core/ledger only; one thread.
//
// Method: a row holds the answer as of one instant, the first instant from which it may no longer be shown, and the
// version of the rules. A row counts while that instant is ahead and the rules are those of this program; a query reads
// any other as 'not made yet', so that nothing out of date can ever be shown. Taking in makes the rows of the trailers
// it touches; all others are made anew by Ledger::renew_answers(), a few in each transaction. The page of one trailer
// has its visits in memory and asks the engine itself.
//
// A packet counts as accepted when the trust list gives its key to its technician, or a person accepted the key. Any
// other may forbid, never permit; so may a packet that is held, and one that contradicts the packet in view, unless a
// person has chosen the one in view since it came.
#pragma once

#include <map>
#include <memory>
#include <span>

#include "core/ledger/ledger.h"
#include "core/ledger/rows.h"
#include "core/store/sql.h"

namespace cotter::ledger {

// Jobs by their packet's fingerprint: those put in here, all others from their documents.
class Jobs {
public:
    explicit Jobs(SqlDb& db) : db_(db) {}
    void keep(const std::string& fingerprint, const Job& job);
    [[nodiscard]] Result<std::shared_ptr<const Job>> get(const std::string& fingerprint) const;

private:
    SqlDb& db_;
    std::map<std::string, std::shared_ptr<const Job>> kept_;
};

// One packet that has a word in the answer about its trailer.
struct Witness {
    std::int64_t n = 0;  // of its job: the newest is the largest
    std::string fingerprint;
    bool shown = true;  // the packet in view of its job
    bool accepted = false;
    std::shared_ptr<const Job> job;  // once read
};
// Of the oldest visit first.
[[nodiscard]] Result<std::vector<Witness>> witnesses_of(SqlDb& db, const std::string& trailer);
[[nodiscard]] Result<> read_jobs(std::vector<Witness>& witnesses, const Jobs& jobs);

// What the engine says of them now. All of them have been read, and at least one is shown.
[[nodiscard]] TowLine towing_of(std::span<const Witness> witnesses, const Rules& rules, const Instant& now);
// The same from reading on: what cannot be read is said in the answer, and looked at again the day after. Fails only
// when the ledger itself cannot be reached.
[[nodiscard]] Result<TowLine> towing_of(std::vector<Witness>& witnesses, const Jobs& jobs, const Rules& rules,
                                        const Instant& now);

// Two that are equal give the same answers for the same visits.
[[nodiscard]] std::string rules_version(const Rules& rules);

// ---- rows
inline constexpr std::int64_t kNever = 253'402'300'799;  // of an answer that does not run out: the end of the year 9999
[[nodiscard]] Result<> put_answer(SqlDb& db, const std::string& trailer, const TowLine& answer,
                                  const std::string& rules);
// Keeps a row that does not count, to be made later.
[[nodiscard]] Result<> put_off_answer(SqlDb& db, const std::string& trailer);
// Answers that rest on what this technician signed with this key no longer count.
[[nodiscard]] Result<> put_off_answers(SqlDb& db, const std::string& technician_key, const std::string& signer);

// Whether a row of `towing` counts, as SQL. Its values come next in the statement.
[[nodiscard]] std::string counts_sql(Conditions& values, const Instant& now, const std::string& rules);
// The columns that tow_line() reads, behind one that says whether the row counts.
inline constexpr std::string_view kTowColumns =
    "towing.outcome, towing.says, towing.reason, towing.looked_at, towing.of_points, towing.essential_open, "
    "towing.trip_check_due, towing.as_of, towing.runs_out";
inline constexpr int kTowColumnCount = 9;
// `from`: the column that says whether it counts. Nothing when it does not.
[[nodiscard]] std::optional<TowLine> tow_line(const SqlRows& row, int from);

}  // namespace cotter::ledger
