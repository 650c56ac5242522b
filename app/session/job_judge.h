// The open job judged: the register, earlier visits to the same trailer, the summary, which is made anew only when the
// job has changed; and what other jobs remember of makers' figures and inspectors. For the session; one thread.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/base/ports.h"
#include "core/book/book.h"
#include "core/judge/judge_job.h"
#include "core/judge/register.h"

namespace cotter {

// An earlier visit as it was left, the newest first.
struct VisitLeft {
    JobId id;
    Date date;
    Towing towing = Towing::cannot_tell;
    std::string answer;
};

class JobJudge {
public:
    // `files` and `book` outlive it. The register is read when it is first asked for, so that the first frame does not
    // wait for it. Without one nothing is judged by limits; trouble() says why.
    JobJudge(Files& files, std::string share, Book& book);

    void job_changed() { summary_.reset(); }
    void job_left();  // another one is opened: what other jobs hold is read again

    // All of them made at the first call after a change, as of `now`.
    [[nodiscard]] const Summary& summary(const Job& job, const Instant& now);
    [[nodiscard]] const std::vector<VisitLeft>& visits(const Job& job, const Instant& now);
    // The newest earlier visit to this trailer; nullptr: none.
    [[nodiscard]] const Job* last_visit(const Job& job);
    // Visits to the same trailer before this one, whole.
    [[nodiscard]] const std::vector<Job>& earlier(const Job& job);
    // Makers' figures for axles of this model that other jobs hold, and this one does not.
    [[nodiscard]] std::vector<MakerLimit> remembered(const Job& job, const std::string& axle_model);
    // The newest head of another job's inspection by this person; nullopt: none.
    [[nodiscard]] std::optional<Inspection> last_inspection(const Job& job, const std::string& inspector);

    // The answers of jobs in a list, each made once and kept until it runs out or its trailer's visits change. nullptr:
    // not made yet.
    [[nodiscard]] const Towing* answer(const JobId& job, const Instant& now) const;
    void make_answer(const JobId& id, const Instant& now);  // one that cannot be read reads 'cannot tell'
    void forget_answers(std::span<const JobId> jobs);

    [[nodiscard]] const JudgeRegister& reg();
    [[nodiscard]] const std::string& trouble();

private:
    [[nodiscard]] const std::vector<Job>& others(const Job& job);
    [[nodiscard]] std::vector<Job> load_earlier(const Job& job);
    [[nodiscard]] std::vector<Job> load_others(const Job& job);

    Files& files_;
    std::string share_;
    Book& book_;
    std::optional<JudgeRegister> register_;  // nullopt: not read yet
    std::string trouble_;
    std::pair<std::string, std::string> trailer_;  // unit and VIN that `earlier_` is of
    std::optional<std::vector<Job>> earlier_;
    std::optional<std::vector<Job>> others_;
    std::optional<Summary> summary_;
    std::optional<std::vector<VisitLeft>> visits_;
    struct Listed {
        Towing towing = Towing::cannot_tell;
        std::optional<Instant> runs_out;
    };
    std::map<JobId, Listed> answers_;
};

}  // namespace cotter
