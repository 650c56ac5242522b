// See job_judge.h.
#include "app/session/job_judge.h"

#include <algorithm>

namespace cotter {

namespace {

constexpr std::size_t kMostJobs = 40;  // read for what they remember: a tap must not wait for a thousand

std::pair<std::string, std::string> named(const Job& job) {
    const Trailer* trailer = job.only<Trailer>();
    return trailer == nullptr ? std::pair<std::string, std::string>{} : std::pair{trailer->unit, trailer->vin};
}

bool ran_out(const std::optional<Instant>& until, const Instant& now) {
    return until && !(now < *until);
}

bool holds(const Job& job, const MakerLimit& figure) {
    const auto& all = job.all<MakerLimit>();
    return std::any_of(all.begin(), all.end(), [&](const MakerLimit& m) {
        return m.what == figure.what && m.axle_model == figure.axle_model &&
               is_lower(m.bound) == is_lower(figure.bound);
    });
}

}  // namespace

JobJudge::JobJudge(Files& files, std::string share, Book& book)
    : files_(files), share_(std::move(share)), book_(book) {}

const JudgeRegister& JobJudge::reg() {
    if (register_) return *register_;
    auto loaded = load_register(files_, share_);
    if (!loaded) trouble_ = loaded.error().line();
    return register_.emplace(loaded ? std::move(*loaded) : JudgeRegister{});
}

const std::string& JobJudge::trouble() {
    (void)reg();
    return trouble_;
}

void JobJudge::job_left() {
    job_changed();
    earlier_.reset();
    others_.reset();
    visits_.reset();
}

// Jobs that cannot be read are left out: the open one is judged all the same.
std::vector<Job> JobJudge::load_earlier(const Job& job) {
    std::vector<Job> out;
    const auto before = book_.jobs_before(job);
    if (!before) return out;
    for (const JobId& id : *before) {
        if (out.size() == kMostJobs) break;
        auto visit = book_.load(id);
        if (visit && same_trailer(job, *visit)) out.push_back(std::move(*visit));
    }
    return out;
}

std::vector<Job> JobJudge::load_others(const Job& job) {
    std::vector<Job> out;
    const auto all = book_.jobs();
    if (!all || job.id().nil()) return out;
    for (const JobSummary& other : *all) {
        if (out.size() == kMostJobs) break;
        if (other.id == job.id()) continue;
        if (auto visit = book_.load(other.id)) out.push_back(std::move(*visit));
    }
    return out;
}

const std::vector<Job>& JobJudge::earlier(const Job& job) {
    if (!earlier_ || trailer_ != named(job)) {
        trailer_ = named(job);
        earlier_ = load_earlier(job);
        visits_.reset();
    }
    return *earlier_;
}

const std::vector<Job>& JobJudge::others(const Job& job) {
    if (!others_) others_ = load_others(job);
    return *others_;
}

const Towing* JobJudge::answer(const JobId& job, const Instant& now) const {
    const auto at = answers_.find(job);
    if (at == answers_.end() || ran_out(at->second.runs_out, now)) return nullptr;
    return &at->second.towing;
}

void JobJudge::make_answer(const JobId& id, const Instant& now) {
    Listed& listed = answers_[id] = {};
    const auto job = book_.load(id);
    if (!job) return;
    const std::vector<Job> before = load_earlier(*job);
    std::vector<EarlierVisit> visits;  // all made in this book, so all accepted
    visits.reserve(before.size());
    for (const Job& visit : before) visits.push_back({&visit, true});
    const TowAnswer tow = answer_towing({*job, visits, reg().limits, now});
    listed = {towing_of(tow.outcome), tow.runs_out};
}

void JobJudge::forget_answers(std::span<const JobId> jobs) {
    for (const JobId& job : jobs) answers_.erase(job);
}

const Summary& JobJudge::summary(const Job& job, const Instant& now) {
    if (summary_ && ran_out(summary_->tow.runs_out, now)) summary_.reset();
    if (!summary_) summary_ = judge_job(job, reg().limits, {earlier(job), now});
    return *summary_;
}

const std::vector<VisitLeft>& JobJudge::visits(const Job& job, const Instant& now) {
    const std::vector<Job>& all = earlier(job);
    if (visits_) return *visits_;
    visits_.emplace();
    for (const Job& visit : all) {
        const Summary s = judge_job(visit, reg().limits, {{}, now});
        visits_->push_back({visit.id(), visit.only<Visit>()->opened.local_date(), s.towing, s.answer});
    }
    return *visits_;
}

const Job* JobJudge::last_visit(const Job& job) {
    const std::vector<Job>& all = earlier(job);
    const auto newest = std::max_element(all.begin(), all.end(), [](const Job& a, const Job& b) {
        return a.only<Visit>()->opened < b.only<Visit>()->opened;
    });
    return newest == all.end() ? nullptr : &*newest;
}

std::vector<MakerLimit> JobJudge::remembered(const Job& job, const std::string& axle_model) {
    if (axle_model.empty()) return {};
    std::vector<MakerLimit> out = remembered_limits(axle_model, others(job));
    std::erase_if(out, [&](const MakerLimit& figure) { return holds(job, figure); });
    return out;
}

std::optional<Inspection> JobJudge::last_inspection(const Job& job, const std::string& inspector) {
    for (const Job& other : others(job))
        if (const Inspection* head = other.only<Inspection>())
            if (!inspector.empty() && head->inspector == inspector) return *head;
    return std::nullopt;
}

}  // namespace cotter
