// Job documents as JSON values, between the two files that read them. For core/packet only.
#pragma once

#include "core/packet/job_document.h"
#include "core/survey/json_visitors.h"

namespace cotter {

[[nodiscard]] Json job_schema();

// Takes out what only a later minor version knows. True: the document is of one. Fails for other JSON and majors.
[[nodiscard]] Result<bool> forget_unknown(Json& json, const Json& schema);

// A document that forget_unknown() has seen.
[[nodiscard]] Result<JobDocument> job_document_from_json_value(Json json, bool newer);

}  // namespace cotter
