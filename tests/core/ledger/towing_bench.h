// Trailers on which everything essential was answered, handed in to a ledger. For the tests of what the ledger says
// about towing.
#pragma once

#include "tests/core/judge/answer_yard.h"
#include "tests/core/ledger/ledger_bench.h"

namespace cotter::test {

inline constexpr const char* kYardDay = "2026-05-14";

// Vouches for the yard's technician.
[[nodiscard]] ledger::TrustList yard_trust();

struct Handed {
    std::string signer = kTechnician;  // whose key
    bool trusted = true;               // the trust list is held against it
    int revision = 1;
    std::string previous = {};  // its fingerprint, for a later revision
};
// Takes the visit in; gives the packet's fingerprint.
std::string take(LedgerBench& bench, const AnswerYard& yard, const Handed& how = {});

// The only trailer on file.
[[nodiscard]] ledger::TrailerLine the_trailer(LedgerBench& bench);
// Its answer, which must be there.
[[nodiscard]] ledger::TowLine tow_of(LedgerBench& bench);
// What it says after everything that no longer counts was made anew.
[[nodiscard]] ledger::TowLine renewed(LedgerBench& bench);

// The register with limits of tread depth that no tire has.
[[nodiscard]] std::vector<Limit> other_limits(const LedgerBench& bench);

// Everything answered well at that visit.
[[nodiscard]] AnswerYard good_visit(const char* day = kYardDay, int number = 1);
// The same, and a finding that forbids towing.
[[nodiscard]] AnswerYard bad_visit(const char* day = kYardDay, int number = 1);

}  // namespace cotter::test
