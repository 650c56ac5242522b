// The answer engine: what everything that is recorded of a trailer, at this visit and at earlier ones, says about
// towing it. Every place that says anything about towing asks here, so that all of them say the same: screens, the
// command line, the report, the ledger. Pure: the same inputs give the same answer; any thread.
//
// Use: const TowAnswer a = answer_towing({job, earlier, register.limits, as_of});
//      a.outcome        one of five; never better than what was answered
//      a.first          its first reason; a.worst all reasons of the worst grade
//      a.open           essential points without a good answer, the most dangerous first
//      english(a)       the sentence (core/judge/answer_english.h)
//
// Method: each point of the table (core/trade/point.h) is answered at each of its places by what the visits hold:
// looks, readings, levels, torques, tests, plate data. Each such reply has its verdict, who gave it, how far they could
// see and when. The newest reply counts; a bad one stands until somebody who could see as far answers it well; a good
// one keeps for a time and ends by work, use or damage at its place (core/judge/answer_keep.cpp). One place never
// answers another. Never a yes from silence: what has no good answer is open, and an essential open point makes the
// answer 'cannot tell'. A packet whose signer is not accepted may forbid, never permit.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/judge/fact.h"
#include "core/judge/limit.h"
#include "core/judge/state.h"

namespace cotter {

enum class TowOutcome { do_not_tow, not_before_repair, cannot_tell, nothing_against, nothing_from_outside };
constexpr auto names(TowOutcome) {
    return name_list("do not tow", "not before repair", "cannot tell", "nothing found against it",
                     "nothing found from outside");
}

// What a verdict rests on. `build`: a rule for makers (49 CFR 565, 567, 571, 574); `state_inspection`: 49 CFR 570,
// which binds nobody by itself; `own`: a gross band of this program; `record`: what was recorded, or was not.
enum class RestsOn {
    record,
    person,
    law,
    build,
    state_inspection,
    state_law,
    stamped,
    maker,
    shop,
    practice,
    physics,
    own
};

struct AnswerSource {
    RestsOn rests_on = RestsOn::record;
    std::string text;  // "49 CFR 393.47(d)(2)", a document's title and page, a name; empty for `record` and `own`
    Evidence evidence = Evidence::read;
};

// What is known of one point at one place; or a person's finding on something that the table does not know.
struct PointAnswer {
    std::optional<PointId> point;  // none: a finding or an inspection's item outside the table
    Place place;
    Grade grade = Grade::serviceable;  // when known
    bool known = false;
    bool essential = false;
    Fact fact;                // what it is, or why it is not known
    std::vector<Fact> steps;  // the arithmetic
    std::vector<Fact> also;   // more that is to be watched or known there: a cause, a second figure
    AnswerSource source;
    Instant at;  // of the record behind it; not meaningful when there is none
    std::string by;
    Reach reach = Reach::outside;
    bool accepted = true;
    std::optional<Instant> until;  // the first instant at which this answer no longer counts
    Uuid record;                   // nil when it follows from several
    JobId visit;
    bool ran_out = false;    // not known because a good answer has run out by time or use
    bool each_trip = false;  // … of the kind that keeps for a day or a visit
};

struct TowAnswer {
    TowOutcome outcome = TowOutcome::cannot_tell;
    std::size_t looked_at = 0, of = 0;  // points at their places, essential and wanted
    std::size_t essential_open = 0;
    std::vector<PointAnswer> points;  // all of them, in the table's order, then findings outside it
    // Indexes into `points`:
    std::vector<std::size_t> worst;   // everything of the worst grade, when that is repair or do not tow
    std::vector<std::size_t> open;    // essential and without a good answer, the most dangerous first
    std::vector<std::size_t> wanted;  // not essential and not known
    std::vector<std::size_t> watch;
    std::optional<Fact> first;  // said instead of the first of `worst` or `open`: "trip check due", "from outside"
    bool trip_check_due = false;
    bool from_outside = false;   // an owner's look, which nothing better came of
    std::optional<Date> opened;  // when brakes and bearings were last opened: the corner where that is longest ago
    Instant as_of;
    std::optional<Instant> runs_out;  // the first instant after `as_of` at which an answer it rests on runs out

    [[nodiscard]] const PointAnswer* reason() const;  // the first of `worst`, else of `open`; nullptr: none
};

struct EarlierVisit {
    const Job* job = nullptr;
    bool accepted = true;  // this book or ledger accepts who signed it
};

struct TowQuestion {
    const Job& job;                         // its trailer record is the layout
    std::span<const EarlierVisit> earlier;  // other visits to the same trailer, in any order, later ones too
    std::span<const Limit> limits;          // the register
    Instant as_of;                          // records dated a day or more later are not believed
    State state = State::now;
    bool accepted = true;  // false: `job` came in a packet whose signer is not accepted
};

// Never fails: what cannot be told is in the answer.
[[nodiscard]] TowAnswer answer_towing(const TowQuestion& question);
[[nodiscard]] TowAnswer answer_towing(const Job& job, std::span<const EarlierVisit> earlier,
                                      std::span<const Limit> limits, const Instant& as_of, State state);

}  // namespace cotter
