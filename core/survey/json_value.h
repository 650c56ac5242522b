// Jobs as JSON values, for those who have parsed the text already.
#pragma once

#include "core/survey/job.h"
#include "core/survey/json_visitors.h"

namespace cotter {

// As job_from_json().
[[nodiscard]] Result<Job> job_from_json_value(const Json& json);

}  // namespace cotter
