// The rules that the records of led work must keep. What a procedure asks for is checked by core/work, not here: a
// packet must stay readable when procedures change. Pure; any thread.
#pragma once

#include "core/survey/quote_rules.h"

namespace cotter {

// A place that the trailer has.
void need_place(const Job& job, const Place& place, const RuleSink& need);
void check_rules(const Job& job, const StepMark& mark, const RuleSink& sink);
void check_rules(const Job& job, const BearingSetting& setting, const RuleSink& sink);
void check_rules(const Job& job, const PipeRoute& route, const RuleSink& sink);
void check_rules(const Job& job, const BleedCount& count, const RuleSink& sink);

}  // namespace cotter
