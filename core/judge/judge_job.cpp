// All judges on one job, and the answer.
#include "core/judge/judge_job.h"

#include <algorithm>
#include <fmt/format.h>

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

std::string where_of(const Ground& r) {
    return r.axle > 0 ? fmt::format("axle {}", r.axle) : words::place(r.place);
}

std::string told(const Ground& r) {
    const bool named = r.says.starts_with(r.subject);
    return fmt::format("{}, {}{} ({})", where_of(r), named ? "" : r.subject + ": ", r.says, r.source);
}

std::string more(std::size_t n, std::string_view one, std::string_view many) {
    return n == 0 ? std::string() : fmt::format(" And {} more {}.", n, n == 1 ? one : many);
}

void answer_unknown(Summary& s) {
    const auto essential = static_cast<std::size_t>(
        std::count_if(s.unknowns.begin(), s.unknowns.end(), [](const Unknown& u) { return u.essential; }));
    if (essential == 0) {
        s.towing = Towing::nothing_against;
        s.answer = s.first.empty() ? "Nothing that was measured speaks against it."
                                   : fmt::format("Nothing that was measured forbids it. Watch: {}.", told(s.first[0]));
        if (!s.unknowns.empty()) s.answer += fmt::format(" Not known: {}.", s.unknowns.size());
        return;
    }
    const Unknown& u = s.unknowns.front();
    s.towing = Towing::cannot_tell;
    s.answer = fmt::format("Cannot tell, because of {}, {}: {}.{}", words::place(u.place), u.subject, u.because,
                           more(essential - 1, "thing not known", "things not known"));
}

void answer(Summary& s) {
    s.caveat = words::kNoCertificate;
    const Grade worst = s.now.grade.value_or(Grade::serviceable);
    if (worst > Grade::serviceable)
        walk(s.now, [&](const Judgement& node) {
            for (const Ground& r : node.reasons)
                if (r.grade == worst) s.first.push_back(r);
        });
    if (worst < Grade::repair) return answer_unknown(s);
    const bool never = worst == Grade::do_not_tow;
    s.towing = never ? Towing::no : Towing::after_repair;
    s.answer = fmt::format("{}: {}.{}", never ? "No" : "Not before the repair", told(s.first[0]),
                           more(s.first.size() - 1, "reason", "reasons"));
}

}  // namespace

Summary judge_job(const Job& job, std::span<const Limit> limits, const JudgeInputs& inputs) {
    Summary s;
    const Bench found = judged(job, State::found, limits, inputs.now);
    const Bench now = judged(job, State::now, limits, inputs.now);
    s.found = grow_tree(job, found.reasons, found.unknowns);
    s.now = grow_tree(job, now.reasons, now.unknowns);
    s.unknowns = now.unknowns;
    std::stable_sort(s.unknowns.begin(), s.unknowns.end(),
                     [](const Unknown& a, const Unknown& b) { return a.essential > b.essential; });
    s.forecasts = forecasts_of(job, inputs.earlier, now.limits);
    answer(s);
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
