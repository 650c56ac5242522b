// All judges on one job, and the answer.
#include "core/judge/judge_job.h"

#include <algorithm>

#include "core/judge/fact_english.h"
#include "core/judge/judge_answer.h"
#include "core/judge/judge_words.h"
#include "core/judge/judging.h"

namespace cotter {

namespace {

Bench judged(const Job& job, State state, std::span<const Limit> limits, const Instant& now) {
    Bench bench{job, job.only<Trailer>(), state, now, values_of(job, state, now), {}, {}, {}};
    bench.limits.assign(limits.begin(), limits.end());
    for (const MakerLimit& figure : job.all<MakerLimit>()) bench.limits.push_back(limit_of(figure));
    judge_findings(bench);
    judge_inspection(bench);
    judge_plain_readings(bench);
    judge_linings(bench);
    judge_rotors(bench);
    judge_tyres(bench);
    judge_hubs(bench);
    judge_hydraulics(bench);
    judge_breakaway(bench);
    judge_weights(bench);
    judge_missing(bench);
    auto& all = bench.unknowns;
    all.insert(all.begin(), bench.values.unknowns.begin(), bench.values.unknowns.end());
    return bench;
}

// The visits to this trailer, all of this book: who signed them is accepted.
std::vector<EarlierVisit> visits_to_it(const Job& job, std::span<const Job> earlier) {
    std::vector<EarlierVisit> out;
    for (const Job& other : earlier)
        if (same_trailer(job, other)) out.push_back({&other, true});
    return out;
}

Judgement tree_of(const Job& job, Bench bench, const TowAnswer& tow) {
    agree_with(job, tow, bench.reasons, bench.unknowns);
    return grow_tree(job, bench.reasons, bench.unknowns);
}

}  // namespace

Towing towing_of(TowOutcome outcome) {
    switch (outcome) {
        case TowOutcome::do_not_tow:
            return Towing::no;
        case TowOutcome::not_before_repair:
            return Towing::after_repair;
        case TowOutcome::cannot_tell:
            break;
        case TowOutcome::nothing_against:
            return Towing::nothing_against;
        case TowOutcome::nothing_from_outside:
            return Towing::from_outside;
    }
    return Towing::cannot_tell;
}

Summary judge_job(const Job& job, std::span<const Limit> limits, const JudgeInputs& inputs) {
    Summary s;
    const std::vector<EarlierVisit> earlier = visits_to_it(job, inputs.earlier);
    s.tow = answer_towing(job, earlier, limits, inputs.now, State::now);
    s.tow_found = answer_towing(job, earlier, limits, inputs.now, State::found);
    const LawSetting setting = law_setting(job);
    const Bench now = judged(job, State::now, limits, inputs.now);
    s.found = tree_of(job, judged(job, State::found, limits, inputs.now), s.tow_found);
    s.now = tree_of(job, now, s.tow);
    s.forecasts = forecasts_of(job, inputs.earlier, now.limits);
    s.caveat = words::kNoCertificate;
    s.towing = towing_of(s.tow.outcome);
    s.answer = english(s.tow, setting);
    for (const std::size_t i : s.tow.worst.empty() ? s.tow.watch : s.tow.worst)
        s.first.push_back(ground_of(s.tow.points[i], setting));
    for (const std::size_t i : s.tow.open) s.unknowns.push_back(unknown_of(s.tow.points[i]));
    for (const std::size_t i : s.tow.wanted) s.unknowns.push_back(unknown_of(s.tow.points[i]));
    return s;
}

const Judgement* at_place(const Judgement& tree, const Place& place) {
    if (tree.place == place && tree.axle == 0) return &tree;
    for (const Judgement& part : tree.parts)
        if (part.axle != 0 || part.place == place)
            if (const Judgement* found = at_place(part, place)) return found;
    return nullptr;
}

}  // namespace cotter
