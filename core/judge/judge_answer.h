// The answer engine's answers as grounds and unknowns of the judgement tree, so that the pages of reasons say the same
// as the answer. For core/judge. Pure; any thread.
#pragma once

#include <vector>

#include "core/judge/answer.h"
#include "core/judge/fact_english.h"
#include "core/judge/judgement.h"

namespace cotter {

[[nodiscard]] Ground ground_of(const PointAnswer& answer, const LawSetting& setting);
[[nodiscard]] Unknown unknown_of(const PointAnswer& answer);

// Makes what the single judges said agree with the answer: a ground, other than a finding, is no graver than what the
// answer makes of its record, what the answer knows beside it is added, and what is not known is what the answer does
// not know.
void agree_with(const Job& job, const TowAnswer& tow, std::vector<Ground>& reasons, std::vector<Unknown>& unknowns);

}  // namespace cotter
