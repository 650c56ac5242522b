// Tells the check, which knows only boxes, what a job document is. Handed to check() by whoever calls it.
#pragma once

#include "core/packet/check.h"
#include "core/packet/job_document.h"

namespace cotter {

// For CheckHooks::job: reads the document, then what it says of itself.
[[nodiscard]] Result<JobFacts> look_at_job(ByteView json);

// The last part of it, of a document that was read.
[[nodiscard]] JobFacts facts_of(const JobDocument& document);

}  // namespace cotter
