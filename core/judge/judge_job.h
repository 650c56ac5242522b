// A whole job judged: 'may it be towed?' with the reason first, the tree of judgements, and what is to come. For
// screens, the report and the command line. Pure: the same inputs give the same answer; any thread.
//
// Use: auto register = load_register(files, share_folder);            // once, or parse_limits(text)
//      const Summary s = judge_job(job, register->limits, {earlier visits, clock.now()});
//      s.answer                  the one line for the top of a screen; s.towing for its shape and colour
//      s.first                   the reasons behind it, the gravest first
//      at_place(s.now, place)    the node of a corner or station; its parts are components with their reasons
//      s.forecasts               remaining life with points for a plot
//      remembered_limits(…)      makers' figures from earlier jobs to offer to the user (core/judge/limit.h)
//      inspection_gaps(…)        what a periodic inspection still lacks (core/judge/inspection.h)
#pragma once

#include <span>

#include "core/judge/answer.h"
#include "core/judge/forecast.h"
#include "core/judge/judgement.h"

namespace cotter {

enum class Towing {
    no,               // something is graded 'do not tow'
    after_repair,     // something is graded 'repair' and is still open
    cannot_tell,      // nothing speaks against it, but something essential was not measured
    nothing_against,  // everything essential was answered and nothing speaks against it: no certificate
    from_outside      // an owner's look found nothing; what takes a mechanic was answered before and is in date
};
constexpr auto names(Towing) {
    return name_list("no", "after repair", "cannot tell", "nothing against it", "nothing found from outside");
}

[[nodiscard]] Towing towing_of(TowOutcome outcome);

// Whoever hands over a trailer with this answer says that they read it.
[[nodiscard]] constexpr bool wants_acknowledgement(Towing towing) {
    return towing == Towing::no || towing == Towing::after_repair || towing == Towing::cannot_tell;
}

struct Summary {
    TowAnswer tow;        // of the state now: what everything below is derived from
    TowAnswer tow_found;  // as the trailer was found
    Towing towing = Towing::cannot_tell;
    std::string answer;             // "No: axle 1 right, wheel nuts: one missing (seen and graded by R. Alder)."
    std::string caveat;             // goes with every answer
    std::vector<Ground> first;      // the reasons of the worst grade over 'serviceable', of the state now
    std::vector<Unknown> unknowns;  // points that are not known now, essential ones first, the most dangerous first
    Judgement found;                // as the trailer was found
    Judgement now;                  // as it is now: repaired findings apart, readings after the work
    std::vector<Forecast> forecasts;
};

struct JudgeInputs {
    std::span<const Job> earlier;  // visits to the same trailer, in any order
    Instant now;                   // readings dated later are not believed; tyres age to this day
};

// Never fails: what cannot be told is in the answer. Visits to other trailers among `earlier` are left out.
[[nodiscard]] Summary judge_job(const Job& job, std::span<const Limit> limits, const JudgeInputs& inputs);

// The node of a corner or station in a tree; nullptr when nothing is said about it.
[[nodiscard]] const Judgement* at_place(const Judgement& tree, const Place& place);

}  // namespace cotter
