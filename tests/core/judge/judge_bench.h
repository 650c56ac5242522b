// A job to judge, made in few words, and the register that ships with the program. For tests.
#pragma once

#include <doctest/doctest.h>

#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "core/judge/inspection.h"
#include "core/judge/judge_job.h"

namespace cotter::test {

[[nodiscard]] std::string asset(const std::string& name);  // the text of assets/limits/<name>
[[nodiscard]] const std::vector<Limit>& shipped_limits();

using Points = std::initializer_list<std::pair<const char*, const char*>>;  // where, value

class JudgeBench {
public:
    explicit JudgeBench(BrakeKind brake = BrakeKind::hydraulic_disc, const char* day = "2026-05-14", int job = 1);
    Job job;
    std::vector<Job> earlier;

    Trailer& trailer();
    Reading& read(const char* place, std::string_view what, const char* unit, Points points);
    Finding& find(const char* place, const char* component, const char* defect, Grade grade);
    MakerLimit& maker(std::string_view what, Bound bound, const char* value, const char* unit);
    void complete();  // every essential reading at every corner, good ones

    [[nodiscard]] Summary judge(std::span<const Limit> limits = shipped_limits()) const;

private:
    int next_ = 100;
    int base_;
    [[nodiscard]] Uuid id();
};

// The reasons on a subject in a tree, and its unknowns.
[[nodiscard]] std::vector<Ground> reasons_on(const Judgement& tree, std::string_view subject);
[[nodiscard]] std::vector<Unknown> unknowns_on(const Judgement& tree, std::string_view subject);
[[nodiscard]] Grade worst_on(const Judgement& tree, std::string_view subject);  // fails the test when there is none

}  // namespace cotter::test
