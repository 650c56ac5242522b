// The drafts of every job, apart from each other. For the session; one thread.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "app/draft.h"
#include "core/survey/job.h"

namespace cotter {

class DraftsKept {
public:
    // `job`: the open one's id, empty when none is; `page`: the shown one.
    void switch_to(const std::string& job, const Route& page);
    [[nodiscard]] const Drafts& open() const { return by_job_.at(open_); }
    [[nodiscard]] Drafts& open() { return by_job_.at(open_); }
    [[nodiscard]] const Drafts& of_no_job() const { return by_job_.at({}); }
    void keep(Drafts drafts);                       // with the job that they name, whichever is open
    [[nodiscard]] std::vector<Drafts> all() const;  // of each job that has any

private:
    std::map<std::string, Drafts> by_job_{{std::string{}, Drafts{}}};  // holds the open job's and those of no job
    std::string open_;
};

// Drafts without a job, as programs kept them when there was one set for all jobs.
struct OldDrafts {
    Drafts fitting;    // they name a record that `job` has
    std::string left;  // what was typed in the others, "'1X9D', '7.1'"; empty: nothing
};
[[nodiscard]] OldDrafts sort_old_drafts(const Drafts& old, const Job& job);

}  // namespace cotter
