// rechecks.ics: what is due after a job as calendar entries (RFC 5545). Pure; any thread.
#pragma once

#include <span>
#include <string>

#include "core/work/recheck.h"

namespace cotter {

struct CalendarFace {
    int revision = 1;      // of the packet
    Instant at;            // of the hand-over
    std::string software;  // "Cotter 0.1.0"
};

// All entries are whole days, so no time zone can move them; what is due by distance alone stands on the day after the
// work. UID: job and rule, SEQUENCE: revision less one, so a later revision replaces an entry instead of doubling it.
// DTSTAMP is `at` in UTC. Lines end in CR LF and are folded at 75 bytes between characters. Each entry says whose
// figure it is. Empty when nothing is due: a calendar without entries is none.
[[nodiscard]] std::string rechecks_ics(const Job& job, std::span<const Recheck> due, const CalendarFace& face);

}  // namespace cotter
