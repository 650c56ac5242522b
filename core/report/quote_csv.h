// quote.csv: every quote of a job, line by line with its answers, for spreadsheets and scripts. Pure; any thread.
// Form as in csv.h.
#pragma once

#include <string>

#include "core/survey/job.h"

namespace cotter {

// One row a line, then one a tax (kind "tax") and one for the total (kind "total") of each quote, in the job's order.
// Amounts "69.50" beside the currency; `answer` is the last one given to the line, or empty.
[[nodiscard]] std::string quote_csv(const Job& job);

}  // namespace cotter
