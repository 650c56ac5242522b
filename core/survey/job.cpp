// The copies and moves of a job, compiled once. See job.h.
#include "core/survey/job.h"

namespace cotter {

Job::Job() = default;
Job::Job(const Job&) = default;
Job::Job(Job&&) noexcept = default;
Job& Job::operator=(const Job&) = default;
Job& Job::operator=(Job&&) noexcept = default;
Job::~Job() = default;
bool Job::operator==(const Job&) const = default;

}  // namespace cotter
