// What a later revision of a visit's records says otherwise than the one before it. For core/ledger only.
//
// Method: two documents are held against each other record by record, by id, whatever their amendments say; amendments
// only tell who did it and why. Where the revision before is not on file, the job as it was signed is made from the
// amendments' old values. Of a signed job every record counts; of an unsigned one what was found, measured and
// answered, where it was changed or taken out: the rest is work going on.
#pragma once

#include <span>

#include "core/ledger/answers.h"
#include "core/store/sql.h"

namespace cotter::ledger {

struct VisitOnFile;

// The eased grades first, the gravest of them first of all; then other findings; then the rest, a line a record. Pure.
[[nodiscard]] std::vector<RevisionChange> changes_between(const Job& before, const Job& now, int revision);
// What the job's own amendments changed since the sign-off. Pure.
[[nodiscard]] std::vector<RevisionChange> changes_amended(const Job& job, int revision);
// For a receipt: the first of them in words, places by their codes, and how many more there are. Empty for none.
[[nodiscard]] std::string changes_line(std::span<const RevisionChange> changes);

// What the packet changes of the revision before it on file; or, where a later one is on file, what that changes of
// this one. Held packets count as absent; one that is held itself, or contradicts another, is compared with what is
// shown.
[[nodiscard]] Result<std::vector<RevisionChange>> changes_around(SqlDb& db, const std::string& fingerprint,
                                                                 const Job& job, int revision);
// All of them for a trailer, as TrailerPage has them. `visits`: as they are in view, of any order.
[[nodiscard]] Result<std::vector<RevisionChange>> changes_of(SqlDb& db, const std::string& trailer,
                                                             const std::vector<VisitOnFile>& visits);

}  // namespace cotter::ledger
