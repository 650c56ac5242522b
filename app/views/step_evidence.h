// Where each piece of evidence that a step asks for is recorded: the page, or the reading to key in. For the work
// page; pure, any thread.
#pragma once

#include "app/views/work_view.h"

namespace cotter {

// The records that a mark names, at most eight rows; photos beyond that are counted in the last one.
[[nodiscard]] std::vector<StepRest> rests_of(const Job& job, const StepMark& mark);

// In the order of the step's proofs.
[[nodiscard]] std::vector<StepProof> evidence_of(const Job& job, const StepView& step);

}  // namespace cotter
