// The re-checks that are due after a job, and rechecks.ics (RFC 5545). Pure; any thread.
//
// The intervals are common practice, not law, unless said: each entry says so and asks for the axle maker's own. What
// is due by distance cannot be a date, so its entry stands at the day by which it should have come and says the miles.
#pragma once

#include <string>
#include <vector>

#include "core/survey/job.h"

namespace cotter {

struct Recheck {
    std::string key;  // "wheel-nuts": the same in every revision of a job
    std::string what;
    std::string when;    // "at 10, 25 and 50 miles", "every 12 months or 12,000 miles"
    std::string source;  // "common practice (c): confirm with the axle maker"
    Date due;
    std::string because;  // which records call for it
};

// From what was done: tightened wheel nuts, hub fluid, brakes, brake fluid, inspection, … `from`: the hand-over's day.
[[nodiscard]] std::vector<Recheck> rechecks(const Job& job, const Date& from);

// All entries are whole days, so no time zone can move them. UID: job and key, SEQUENCE: revision less one, so a later
// revision replaces an entry instead of doubling it. `at` is written in UTC as DTSTAMP. Lines end in CR LF and are
// folded at 75 bytes between characters. Empty when nothing is due: a calendar without entries is none.
[[nodiscard]] std::string rechecks_ics(const Job& job, int revision, const Instant& at, const std::string& software);

}  // namespace cotter
