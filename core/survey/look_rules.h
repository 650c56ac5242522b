// The rules that plate data and the records of looking must keep. What a point asks for is judged elsewhere: a packet
// must stay readable when the points table changes. Pure; any thread.
#pragma once

#include "core/survey/quote_rules.h"

namespace cotter {

// Units and ranges of what the plate says. Contradictions (an axle's rating above the trailer's) are no faults here:
// they are kept as entered, and asked about (core/trade/doubts.h).
void check_plate(const Trailer& trailer, const RuleSink& sink);
void check_visit(const Visit& visit, const RuleSink& sink);

void check_rules(const Job& job, const Look& look, const RuleSink& sink);
void check_rules(const Job& job, const Sidewall& sidewall, const RuleSink& sink);
void check_rules(const Job& job, const Chamber& chamber, const RuleSink& sink);
void check_rules(const Job& job, const BreakawayTest& test, const RuleSink& sink);
void check_rules(const Job& job, const Event& event, const RuleSink& sink);

}  // namespace cotter
