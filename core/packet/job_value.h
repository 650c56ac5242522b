// Job documents as JSON values, between the two files that read them. For core/packet only.
#pragma once

#include "core/packet/job_document.h"
#include "core/survey/json_visitors.h"

namespace cotter {

[[nodiscard]] Json job_schema();

// Is the document of a later minor version? Fails for other JSON and majors.
[[nodiscard]] Result<bool> is_newer(const Json& json);
// Takes out what only that version knows.
void forget_unknown(Json& json, const Json& schema);

// A document of this version, or one that forget_unknown() has seen.
[[nodiscard]] Result<JobDocument> job_document_from_json_value(Json json, bool newer);

}  // namespace cotter
