// Jobs as JSON values, for those who have parsed the text already.
#pragma once

#include "core/survey/job.h"
#include "core/survey/json_visitors.h"

namespace cotter {

// As job_json(), before it is text.
[[nodiscard]] Json job_value(const Job& job);

// As job_from_json(): it keeps to job_records_schema() (json_schema.h), and refuses fields that no record has.
[[nodiscard]] Result<Job> job_from_json_value(const Json& json);

// Kinds that came later are absent from packets made before, which must still pass.
[[nodiscard]] bool is_kind_of_first_packets(RecordKind kind);

}  // namespace cotter
