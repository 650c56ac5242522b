// What is wrong with a job's records, as a list for the person who can mend it.
#pragma once

#include <string>
#include <vector>

#include "core/survey/job.h"

namespace cotter {

struct Problem {
    RecordKind kind = RecordKind::visit;
    std::string id;    // of the record
    std::string what;  // "a box needs two points"
    std::string todo;  // what to do; may be empty
};

// Problems of one record in the light of the others in `job` (which may hold it already). Empty: all is well.
[[nodiscard]] std::vector<Problem> problems_of(const Job& job, const Record& record);

// All problems of a job, dangling references included.
[[nodiscard]] std::vector<Problem> problems_of(const Job& job);

}  // namespace cotter
