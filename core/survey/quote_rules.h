// The rules that the records of a price must keep, and the fingerprint that freezes an offered quote. Pure.
#pragma once

#include <functional>
#include <string>

#include "core/survey/job.h"

namespace cotter {

// Told of each rule: whether it is kept, what is wrong otherwise, what to do.
using RuleSink = std::function<void(bool good, std::string what, std::string todo)>;

void check_rules(const Job& job, const Need& need, const RuleSink& sink);
void check_rules(const Job& job, const Offer& offer, const RuleSink& sink);
void check_rules(const Job& job, const Quote& quote, const RuleSink& sink);
void check_rules(const Job& job, const Decision& decision, const RuleSink& sink);

// The largest amount of money a record may hold, in minor units: so that sums of all lines still fit.
inline constexpr std::int64_t kMostMoney = 1'000'000'000'000;

// SHA-256 (hex) of the quote's JSON without `state` and `fingerprint`: what stays the same once it is offered.
[[nodiscard]] std::string quote_fingerprint(Quote quote);

}  // namespace cotter
