// Putting the work log together.
#include "core/work/work_log.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/work/amounts.h"
#include "core/work/bearing.h"
#include "core/work/bleed.h"
#include "core/work/fluid.h"
#include "core/work/torque_check.h"

namespace cotter {

namespace {

void add_to(std::string& list, const std::string& text, const char* between) {
    if (!text.empty()) list += (list.empty() ? "" : between) + text;
}

void add_once(std::string& list, const std::string& name) {
    if (list.find(name) == std::string::npos) add_to(list, name, ", ");
}

std::string step_text(const StepMark& mark) {
    return mark.title.empty() ? "a step whose title is not recorded" : mark.title;
}

// In the order they were made; of the same moment, as the job has them.
std::vector<const StepMark*> in_time(const Job& job) {
    std::vector<const StepMark*> out;
    for (const StepMark& mark : job.all<StepMark>()) out.push_back(&mark);
    std::stable_sort(out.begin(), out.end(), [](const auto* a, const auto* b) { return a->at < b->at; });
    return out;
}

class Logging {
public:
    explicit Logging(const Job& job) : job_(job) {}

    WorkLog run() {
        for (const StepMark* mark : in_time(job_)) add_mark(*mark);
        for (const Torque& torque : job_.all<Torque>()) add_torque(torque);
        for (const BearingSetting& setting : job_.all<BearingSetting>()) add_bearing(setting);
        for (const Level& level : job_.all<Level>()) add_level(level);
        add_bleeding();
        return std::move(log_);
    }

private:
    void add_mark(const StepMark& mark) {
        if (mark.word == StepWord::caution_read) return add_caution(mark);
        if (mark.word == StepWord::overridden)
            log_.overrides.push_back({mark.place, step_text(mark), mark.reason, mark.at, mark.by});
        LoggedRun& run = run_of(mark);
        run.last = mark.at;
        add_once(run.by, mark.by);
        if (mark.word == StepWord::not_needed)
            add_to(run.skipped, fmt::format("{} ({})", step_text(mark), mark.reason), " · ");
        if (mark.word != StepWord::done) return;
        ++run.done;
        add_to(run.steps, mark.note.empty() ? step_text(mark) : fmt::format("{} ({})", step_text(mark), mark.note),
               " · ");
    }

    LoggedRun& run_of(const StepMark& mark) {
        for (LoggedRun& run : log_.runs)
            if (run.procedure == mark.procedure && run.place == mark.place) return run;
        log_.runs.push_back({mark.procedure, mark.place, {}, {}, 0, mark.at, mark.at, {}});
        return log_.runs.back();
    }

    void add_caution(const StepMark& mark) {
        const std::string& title = mark.title.empty() ? mark.caution : mark.title;
        auto it = std::find_if(log_.cautions.begin(), log_.cautions.end(),
                               [&](const LoggedCaution& c) { return c.title == title; });
        if (it == log_.cautions.end()) it = log_.cautions.insert(it, LoggedCaution{title, {}, 0, mark.at, {}});
        ++it->times;
        const std::string step = title_of_step(mark);
        add_to(it->where, step.empty() ? mark.place.text() : fmt::format("{}, {}", step, mark.place.text()), " · ");
        add_once(it->by, mark.by);
    }

    // The mark of a read caution has the caution's title; that of its step stands in the mark that closed it, if any.
    [[nodiscard]] std::string title_of_step(const StepMark& caution) const {
        for (const StepMark& mark : job_.all<StepMark>())
            if (mark.word != StepWord::caution_read && mark.procedure == caution.procedure && mark.step == caution.step)
                return mark.title;
        return {};
    }

    void add_check(const Place& place, std::string what, bool proved, const std::string& remarks) {
        log_.checks.push_back({place, std::move(what), proved, remarks.empty() ? "as planned" : remarks});
    }

    void add_torque(const Torque& torque) {
        if (torque.taken != Taken::measured) return;
        const auto remarks = check_torque(torque);
        std::string words;
        for (const TorqueRemark& remark : remarks) add_to(words, remark.words, "; ");
        add_check(torque.place, torque.target ? torque.joint + ", " + torque.target->text() : torque.joint,
                  proves_torque(remarks), words);
    }

    void add_bearing(const BearingSetting& setting) {
        const auto remarks = check_bearing(job_, setting);
        std::string words;
        for (const BearingRemark& remark : remarks) add_to(words, remark.words, "; ");
        const auto play = proved_play(job_, setting);
        std::string what = fmt::format("bearing, {}", name_of(setting.style));
        if (play) what += ", end play " + play->text();
        add_check(setting.place, std::move(what), proves_bearing(remarks), words);
    }

    void add_level(const Level& level) {
        if (level.taken != Taken::measured) return;
        const auto remarks = check_level(level);
        std::string words;
        for (const LevelRemark& remark : remarks) add_to(words, remark.words, "; ");
        if (const auto mate = differs_from_mate(job_, level)) add_to(words, *mate, "; ");
        add_check(level.place, level.fluid, proves_level(remarks), words);
    }

    void add_bleeding() {
        const auto tallies = bleed_tallies(job_);
        if (tallies.empty()) return;
        std::string words;
        for (const BleedTally& tally : tallies)
            add_to(words, fmt::format("{} {} mL", tally.place.text(), rounded_text(tally.drawn * 1e6, 0)), ", ");
        const PipeRoute* route = job_.only<PipeRoute>();
        const Trailer* trailer = job_.only<Trailer>();
        bool proved = false;
        if (route != nullptr && trailer != nullptr) {
            const auto order = bleed_order(*route, *trailer);
            if (!order) add_to(words, order.error().line(), "; ");
            const auto remarks = order ? check_bleeding(job_, *order) : std::vector<BleedRemark>();
            proved = order.has_value();
            for (const BleedRemark& remark : remarks) {
                add_to(words, remark.words, "; ");
                proved = proved && !remark.blocks;
            }
        } else {
            add_to(words, "the pipe route is not entered", "; ");
        }
        add_check(Place::at(Station::trailer), "bleeding, in the order it was done", proved, words);
    }

    const Job& job_;
    WorkLog log_;
};

}  // namespace

WorkLog work_log(const Job& job) {
    return Logging(job).run();
}

}  // namespace cotter
