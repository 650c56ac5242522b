// The engine that leads through a procedure: for each step, is it closed, possible, held or blocked, in words, and
// which cautions must be read now. Derived anew from the job's records each time; nothing is kept. For the procedure
// screen, the session (which turns taps into StepMarks) and the report. Pure; any thread.
#pragma once

#include <string>
#include <vector>

#include "core/work/procedure.h"

namespace cotter {

enum class Mode { mechanic, owner };  // the owner sees only what the data marks for owners

enum class StepState {
    done,
    not_needed,
    overridden,  // skipped without its proof, by a named person with a reason
    possible,    // may be done now
    held,        // a hold point: everything before it is closed, its proof is missing
    blocked,     // something before it is open
    other_hub    // not for this kind of hub, or of brake
};
constexpr auto names(StepState) {
    return name_list("done", "not needed", "overridden", "possible", "held", "blocked", "other hub");
}

// What must be closed before a step.
struct StepBlock {
    const Procedure* procedure = nullptr;  // nullptr, as the step: a finding forbids it
    const Step* step = nullptr;
    Place place;
    std::string words;  // "first: Crack the nuts", "first, at axle1-right: Pads in"; never the step's id
};

struct StepView {
    const Step* step = nullptr;
    Place place;
    StepState state = StepState::blocked;
    std::vector<StepBlock> blocked_by;
    std::vector<std::string> missing_proof;  // the words of each proof that the job does not hold
    std::vector<const Caution*> cautions;    // to show now: attached, and not yet read for this step and place
    const StepMark* mark = nullptr;          // the one that closed it
    std::optional<StepAnswer> answer;        // of a closed step that asks
    const Finding* finding = nullptr;        // that the answer made, while the job has it

    [[nodiscard]] bool closed() const {
        return state == StepState::done || state == StepState::not_needed || state == StepState::overridden ||
               state == StepState::other_hub;
    }
    // A done step whose proof has gone since, or that was marked while something before it was open.
    [[nodiscard]] bool doubtful() const {
        return state == StepState::done && (!blocked_by.empty() || (!step->hold.empty() && !missing_proof.empty()));
    }
};

// Does the procedure apply there: a corner of the trailer with such a brake, or the trailer itself?
[[nodiscard]] bool applies(const Procedure& procedure, const Job& job, const Place& place);
// Where it may be done on this trailer: corners front to rear, left before right; or the trailer.
[[nodiscard]] std::vector<Place> places_of(const Procedure& procedure, const Job& job);
// Has any of its steps been marked there (a caution read is no beginning)?
[[nodiscard]] bool begun(const Procedure& procedure, const Job& job, const Place& place);
// The place that its steps' marks name: a corner without its wheel, or the trailer.
[[nodiscard]] Place place_for(const Procedure& procedure, const Place& place);

// Every step in the data's order; the order of doing is any that the needs allow. Empty where it does not apply.
// The pointers live as long as `book` and `job` unchanged.
[[nodiscard]] std::vector<StepView> procedure_state(const WorkBook& book, const Procedure& procedure, const Job& job,
                                                    const Place& place, Mode mode = Mode::mechanic);
// One step; `step` nullptr when there is no such step.
[[nodiscard]] StepView step_state(const WorkBook& book, std::string_view step, const Job& job, const Place& place);

// The first step that may be done now, else the first that is held; nullptr when all are closed or blocked.
[[nodiscard]] const StepView* next_step(const std::vector<StepView>& steps);

// A mark for a step at a place, filled but for reason, note and evidence: procedure, title and place as they should be.
// `caution`: the caution's id, for caution_read. The step must be in the book.
struct MarkStamp {
    Id<StepMark> id;
    Instant at;
    std::string by;
};
[[nodiscard]] StepMark new_mark(const WorkBook& book, std::string_view step, const Place& place, StepWord word,
                                const MarkStamp& stamp, std::string_view caution = {});

// What speaks against a mark, in words for the person who is about to make it. Empty: make it. A done mark is refused
// while something before it is open, a caution is not read or a hold point's proof is missing; an override needs a name
// and a reason; 'not needed' needs a step that may be left out, and a reason.
[[nodiscard]] std::vector<std::string> objections(const WorkBook& book, const Job& job, const StepMark& mark);

// Links the records that the step's proofs rest on into a mark of a step that is done: shots, readings, torques,
// levels; of a bearing its dial readings and the lock's shot. What is not proved is left out. Other marks stay as they
// are.
void attach_evidence(const WorkBook& book, const Job& job, StepMark& mark);

// Is this piece of evidence in the job, at the step's place?
[[nodiscard]] bool holds_proof(const Job& job, const Proof& proof, const Place& place, const StepMark* mark);

}  // namespace cotter
