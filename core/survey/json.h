// Records, jobs and edits as JSON texts (RFC 8259). The same job always gives the same bytes.
#pragma once

#include <string>
#include <string_view>

#include "core/survey/edit.h"

namespace cotter {

// One record as a compact JSON object, fields in the order they are described, empty ones left out.
[[nodiscard]] std::string record_json(const Record& record);
// Refused: no JSON, a field missing, unknown, of the wrong type or out of its list; the line names the field.
[[nodiscard]] Result<Record> record_from_json(RecordKind kind, std::string_view json);

// One edit as one line without its line end:
// {"job":…,"at":…,"by":…,"do":[{"put":"reading","value":{…}},{"remove":"tag","id":…}]}
[[nodiscard]] std::string edit_json(const Edit& edit);
[[nodiscard]] Result<Edit> edit_from_json(std::string_view line);

// All records of a job, indented for people, as the `records` part of a packet's job.json:
// {"visit":[…],"trailer":[…],…,"amendments":[…]}
[[nodiscard]] std::string job_json(const Job& job);
// Reads what job_json() writes; kinds of record that no packet had at first may be absent, and kinds that are not known
// are passed over. Refused: anything else, with the place in the line.
[[nodiscard]] Result<Job> job_from_json(std::string_view json);

[[nodiscard]] std::string amendment_json(const Amendment& amendment);
[[nodiscard]] Result<Amendment> amendment_from_json(std::string_view json);

}  // namespace cotter
