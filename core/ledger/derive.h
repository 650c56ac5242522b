// What lists and searches need of a job, derived from its records when its packet comes into view. For core/ledger
// only. Pure; any thread.
#pragma once

#include "core/ledger/ledger.h"
#include "core/ledger/words.h"
#include "core/work/recheck.h"

namespace cotter::ledger {

// Version of the derivation rules. Bump it when derive.cpp or words.cpp changes: ledgers made before are then derived
// anew when they are opened.
inline constexpr int kDerivation = 1;

// Where in the life of the ledger a job stands: by the moment it was opened, then by its id. Newest is largest.
[[nodiscard]] std::int64_t job_number(const Instant& opened, const JobId& id);

struct DerivedFinding {
    int number = 0;
    std::string component, defect;
    Grade grade = Grade::repair;
    std::string axle_model;
};

struct DerivedOrder {
    int number = 0;
    std::string supplier, part_number, title;
    std::int64_t packs = 0, price = 0;
    std::string currency;
};

struct Derived {
    std::int64_t n = 0;
    JobLine line;  // trailer, flagged and conflict are not known here
    std::string kind, maker;
    std::vector<std::string> models;       // front to rear, empty where not read
    std::vector<Field> fields;             // for the search
    std::vector<DerivedFinding> findings;  // 'repair' or worse at corners of axles with a model, as found
    std::vector<DueRow> due;               // without unit, customer, place and trailer
    std::vector<DerivedOrder> orders;
};

[[nodiscard]] Derived derive(const Job& job, int revision, const Instant& handed_over, const Rules& rules);

// What wear foretells of a trailer at its newest visit: `visits` are all that count, the newest last.
[[nodiscard]] std::vector<DueRow> wear_due(std::span<const Job> visits, const Rules& rules);

// The day on which a forecast says the limit is reached: none when it cannot be told.
[[nodiscard]] std::optional<Date> day_of(const Forecast& forecast);

// A due row as the table keeps it and back.
[[nodiscard]] std::string due_text(const DueRow& row);
[[nodiscard]] DueRow due_from_text(std::string_view text);

}  // namespace cotter::ledger
