// Random but repeatable edits that a job accepts, for tests of everything that stores them. One thread.
#pragma once

#include <random>

#include "core/survey/edit.h"

namespace cotter::test {

// The same seed gives the same edits for the same jobs. All edits are for one job, whose id is made from the seed.
class EditMaker {
public:
    explicit EditMaker(std::uint64_t seed);
    EditMaker(std::uint64_t seed, const JobId& job);  // for that job

    [[nodiscard]] JobId job() const { return job_; }
    [[nodiscard]] Edit opening();             // visit and trailer
    [[nodiscard]] Edit next(const Job& now);  // for a job that is opened; any kind of change, one or several at once
    [[nodiscard]] Edit sign_off();
    [[nodiscard]] Edit big(std::size_t bytes);       // a finding with a note of that length
    [[nodiscard]] Instant moment();                  // a minute later at each call
    [[nodiscard]] std::size_t below(std::size_t n);  // 0…n−1

private:
    Uuid new_id();
    std::string words();
    Place place();
    Edit edit_of(std::vector<Change> changes, std::string reason = "put right");
    Shot shot();
    Finding finding();
    Reading reading(const Job& now);
    Torque torque();
    Level level();
    std::vector<Change> tagged_finding(const Job& now);
    std::vector<Change> change_one(const Job& now);
    std::vector<Change> remove_one(const Job& now);
    std::optional<std::size_t> somewhere(std::size_t size);

    std::mt19937_64 random_;
    std::int64_t minute_ = 0;
    JobId job_;
};

}  // namespace cotter::test
