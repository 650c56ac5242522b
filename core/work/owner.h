// The owner's mode: the finding that a bad answer makes. What may be said about towing is the answer engine's
// (core/judge/answer.h). For the owner's screens. Pure; any thread.
#pragma once

#include <string>

#include "core/work/progress.h"

namespace cotter {

// The finding that the bad answer to an owner's question makes. Refused: a step without a question.
[[nodiscard]] Result<Finding> finding_of(const Step& step, const Place& place, const Id<Finding>& id, Instant at,
                                         const std::string& by);

}  // namespace cotter
