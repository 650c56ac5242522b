// What the ledger answers: plain values for the desk's screens, the command line and the exports. No thread rule.
//
// A trailer goes by its `key`: "vin:1x9dem0f0madm0014" where a VIN was read, else "unit:nur-07", else "plate:…", else
// "job:<id>". Visits without a VIN join the trailer of that unit's only VIN. Keys are folded (core/ledger/words.h) and
// stay the same whatever order packets come in.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/base/money.h"
#include "core/judge/answer.h"
#include "core/judge/forecast.h"
#include "core/judge/since.h"
#include "core/survey/job.h"

namespace cotter::ledger {

// Whose key signed a packet, seen from the trust list and from what came before.
enum class KeyStanding {
    listed,      // the trust list gives this key to this technician
    seen,        // not in the list, but this technician has signed with it before, or a person accepted it
    first,       // neither the technician nor the key was known: the first packet of somebody new
    new_key,     // flagged: the technician is known, by another key
    other_name,  // flagged: the list gives this key to somebody else
    lapsed,      // flagged: the list's dates do not cover the hand-over
};
constexpr auto names(KeyStanding) {
    return name_list("listed", "seen", "first", "new key", "other name", "lapsed");
}
[[nodiscard]] constexpr bool flagged(KeyStanding s) {
    return s == KeyStanding::new_key || s == KeyStanding::other_name || s == KeyStanding::lapsed;
}

// What a packet is to its job.
enum class Role {
    view,     // what is shown of the job
    history,  // an earlier or a set-aside revision
    held,     // flagged, and an unflagged packet is there: filed, not shown, until a person accepts it
};
constexpr auto names(Role) {
    return name_list("view", "history", "held");
}

// A packet on file.
struct PacketLine {
    std::string fingerprint;  // SHA-256 of its tag manifest
    std::string name;         // "2026-05-14_NUR-07_3f9c1a2b_r1"
    std::string job;          // UUID
    int revision = 1;
    std::string previous;  // fingerprint of the revision before; empty for the first
    Instant handed_over;
    std::string technician;
    std::string signer;  // "SHA256:…"
    KeyStanding standing = KeyStanding::first;
    Role role = Role::view;
    bool conflict = false;      // another packet claims the same job and revision
    bool chain_broken = false;  // the revision before is on file under another fingerprint
    bool newer_format = false;  // holds what this program does not know; kept untouched
    bool accepted = false;      // by the trust list or by a person; else it may forbid towing, never permit it
};

// What the answer engine says about towing a trailer, from all of its visits on file.
struct TowLine {
    TowOutcome outcome = TowOutcome::cannot_tell;
    std::string says;    // the whole answer, in a sentence or two
    std::string reason;  // the first reason, with its point and place; of what is to be watched where nothing is wrong
    std::size_t looked_at = 0, of = 0;  // points
    std::size_t essential_open = 0;     // without a good answer
    bool trip_check_due = false;        // 'cannot tell', and nothing but the check before the trip has run out
    Instant as_of;
    std::optional<Instant> runs_out;  // from then on it no longer counts
};

// The place of an outcome among all, the gravest first.
[[nodiscard]] constexpr int worst_first(TowOutcome outcome) {
    constexpr int kPlaces[]{0, 1, 2, 4, 3};  // what was only looked at from outside says less
    return kPlaces[static_cast<int>(outcome)];
}

// A job in one line: as its packet in view has it.
struct JobLine {
    std::string job;      // UUID
    std::string trailer;  // key
    int revision = 1;
    Instant opened;
    Instant handed_over;
    std::string unit, plate, vin;
    std::string place, customer, technician, company;
    std::size_t findings = 0;
    std::size_t open_findings = 0;
    std::optional<Grade> worst;  // of the open ones
    bool flagged = false;        // its packet in view is
    bool conflict = false;       // some packets of it contradict each other
};

// Which jobs are meant. Empty fields ask for nothing. Texts are compared folded.
struct JobFilter {
    std::string technician;           // whole name
    std::string customer;             // whole name
    std::string trailer;              // key
    std::optional<Date> from, until;  // day of opening at the place, both included
    std::optional<Grade> at_least;    // the worst open finding is at least this
    bool open_findings = false;
    bool doubtful = false;  // flagged or in conflict
};

// What jobs found are sorted by; equal ones by time, the newest first.
enum class JobOrder { opened, unit, customer, technician, worst, open_findings };

struct SearchAsk {
    std::string words;  // as typed: each word may be the beginning of one in the job. Empty: all jobs
    JobFilter filter;
    std::size_t limit = 50;  // 1…1000
    std::size_t offset = 0;
    JobOrder order = JobOrder::opened;
    bool rising = false;  // the least first
};

// A job found, in the order asked for, and why: the field that holds the last word typed.
struct Hit {
    JobLine job;
    std::optional<TowLine> tow;  // of its trailer, from all visits; nothing: it is not made yet (see Ledger)
    std::string field;  // "unit", "plate", "VIN", "place", "customer", "technician", "finding", "part", "note", …
    std::string text;   // what stands there, cut to about 120 characters around the word
};

struct TrailerLine {
    std::string key;
    std::string unit, plate, vin, kind, maker;
    std::vector<std::string> axle_models;  // front to rear, empty where the tag was not read
    std::size_t visits = 0;
    Instant first, last;                      // opened
    std::string customer, place, technician;  // of the last visit
    std::size_t open_findings = 0;
    std::optional<Grade> worst;
    std::optional<TowLine> tow;  // nothing: it is not made yet (see Ledger)
};

// What trailers are sorted by; equal ones by the last visit, the newest first.
enum class FleetOrder { outcome, unit, last };

// Which trailers are meant.
struct FleetAsk {
    std::string words;                 // part of unit, plate, VIN or customer. Empty: all
    std::vector<TowOutcome> outcomes;  // empty: all, also those whose answer is not made yet
    bool trip_check_due = false;
    FleetOrder order = FleetOrder::outcome;  // the gravest first
    bool falling = false;                    // the other way round
    std::size_t limit = 100;                 // 1…1000
    std::size_t offset = 0;
};

// How many trailers have which answer.
struct FleetCounts {
    std::array<std::int64_t, 5> of{};  // by TowOutcome
    std::int64_t trip_check_due = 0;   // among 'cannot tell'
    std::int64_t waiting = 0;          // for their answer to be made
    std::optional<Instant> next_end;   // when the next of the answers runs out
    [[nodiscard]] std::int64_t all() const {
        std::int64_t sum = waiting;
        for (const std::int64_t n : of) sum += n;
        return sum;
    }
};

// A finding with the visit that it was seen at.
struct FindingLine {
    std::string job;
    Instant visit;
    Finding finding;
    bool open = false;       // not repaired, neither at its own visit nor later, and not found again since
    std::string settled_by;  // the later job that repaired it or found it again; empty: its own, or still open
};

// One tightening; a re-torque names the one that it checked.
struct TorqueLine {
    std::string job;
    Instant visit;
    Torque torque;
    bool retorque =
        false;  // the same joint at the same place was tightened at an earlier visit, or earlier at this one
    std::string first_job;  // the visit of the tightening before it; empty when there is none
    bool complete = false;  // all nuts at the target in the last pass, by a source
};

struct YearCost {
    int year = 0;
    Money cost;  // accepted lines with their taxes, deposits apart; the high end where a line has two
    std::size_t visits = 0;
};

struct Costs {
    std::vector<YearCost> years;        // oldest first; one row a year and currency
    std::vector<Money> total;           // one a currency
    std::optional<double> miles;        // run between first and last visit, by counter or by what was noted
    std::string miles_from;             // "hub counter, 12,000 to 31,500 mi" or why it cannot be told
    std::vector<Money> per_1000_miles;  // empty when the miles are not known; rounded to whole minor units
};

// What a later revision of a visit's records says otherwise than the one before it on file; for the first one on file,
// than what was signed, as its amendments tell that.
struct RevisionChange {
    std::string job;
    int revision = 1;  // that says it
    RecordKind kind = RecordKind::finding;
    std::optional<Place> place;  // where the record has one
    std::string what;            // "wheel studs, broken", "pad thickness, before", "torque, wheel nuts"
    std::string before, now;     // "do not tow", "wrench calibrated: 2026-02-16"; empty: no such record
    std::optional<Grade> grade_before, grade_now;  // of a finding
    std::optional<Instant> at;                     // of the amendment; none: it does not say
    std::string by, reason;                        // the same
    // A finding graded less grave than before, or taken out. Nobody at the office may miss that.
    [[nodiscard]] bool eased() const {
        return grade_before && *grade_before > Grade::serviceable && (!grade_now || *grade_now < *grade_before);
    }
};

// What stands in a receipt's `why` before a grade that was eased.
inline constexpr std::string_view kEasedWords = "less severe than before: ";

// Photos of the same slot before and after the work, by their SHA-256 in the vault.
struct PhotoPair {
    std::string job;
    Instant visit;
    Place place;
    Slot slot = Slot::other;
    std::string before, after;
};

// All of a trailer's life.
struct TrailerPage {
    TrailerLine trailer;
    std::vector<JobLine> visits;          // the timeline, newest first
    std::vector<Forecast> wear;           // of each corner over the visits, with limit and source; sorted by place
    std::vector<TorqueLine> torques;      // newest first
    std::vector<FindingLine> findings;    // open ones first, the gravest first; then closed ones, newest first
    std::vector<RevisionChange> changes;  // newest visit first, in it the last revision; grades that were eased first
    Costs costs;
    std::vector<PhotoPair> pairs;     // newest first
    std::vector<PacketLine> packets;  // every packet of every visit, newest hand-over first
};

enum class DueKind { retorque, oil, inspection, wear, other };
constexpr auto names(DueKind) {
    return name_list("re-torque", "oil", "inspection", "wear", "other");
}

// One thing that is due for a trailer.
struct DueRow {
    std::string trailer;  // key
    std::string unit, customer, place;
    std::string job;  // that called for it
    DueKind kind = DueKind::other;
    std::string rule;         // stable: "nuts-first", "inspection", "wear-axle1-left-pad thickness"
    std::string title;        // "Check lug nut torque again …"
    std::string where;        // "axle1-left, axle1-right"; empty for all of the trailer
    std::optional<Date> due;  // none: by distance alone
    Date day;                 // due, or the day after the hand-over: what the list is sorted by
    std::string words;        // "by 2026-08-13 or after 3000 miles, and before each trip"
    std::string source;       // whose figure
    bool law = false;
    bool each_trip = false;  // to be looked at before each trip, and not due otherwise
    int revision = 1;        // of the packet: calendar entries replace those of an earlier one
};

struct DueAsk {
    std::optional<Date> from, until;  // by DueRow::day, both included
    std::vector<DueKind> kinds;       // empty: all
    std::string trailer;              // key; empty: all
    bool each_trip = false;           // also what is only to be looked at before each trip
    std::size_t limit = 0;            // rows, the earliest; 0: all
};

// What is to be ordered of one pack for the accepted lines of the quotes not done yet.
struct OrderRow {
    std::string supplier;
    std::string part_number, title;
    std::int64_t packs = 0;
    std::int64_t price = 0;          // of one pack, as offered last
    Money cost;                      // packs × price of each offer
    std::vector<std::string> units;  // for which trailers
    std::vector<std::string> jobs;
};

// Two visits to a trailer side by side.
struct Comparison {
    JobLine before, now;
    std::vector<ReadingChange> readings;
    std::vector<FindingLine> appeared, gone, stayed;  // open findings by place, component and defect
};

// What fails on one axle model.
struct AxleFailure {
    std::string axle_model;
    std::string component, defect;
    std::size_t findings = 0;  // graded 'repair' or worse, at its corners
    std::size_t trailers = 0;
    std::size_t trailers_with_model = 0;  // of all on file
    std::optional<Grade> worst;
};

// What happened to one file that was handed in.
enum class Arrival { taken, revision, older, held, conflict, there_already, refused, failed };
constexpr auto names(Arrival) {
    return name_list("taken in", "taken in as newer revision", "filed as history", "held", "filed as conflict",
                     "there already", "refused", "failed");
}
// `failed` is our side's trouble (disk full, ledger in use): the packet may be good, try again.
struct Receipt {
    std::int64_t number = 0;  // 1, 2, … in the log
    Instant at;
    std::string path;
    Arrival arrival = Arrival::refused;
    std::string why;          // one line; names the entry of the archive for refusals
    std::string fingerprint;  // when it was read so far
    std::string job;
    int revision = 0;
    std::uint64_t bytes = 0;  // of the file
};

}  // namespace cotter::ledger
