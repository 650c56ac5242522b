// The rules of led work's records, one function a kind.
#include "core/survey/work_rules.h"

#include <fmt/format.h>

#include "core/base/text.h"

namespace cotter {

namespace {

void need_kind(const std::optional<Amount>& amount, Quantity wanted, const char* name, const RuleSink& need) {
    if (!amount) return;
    const Unit* unit = find_unit(amount->unit);
    need(unit != nullptr && unit->quantity == wanted, fmt::format("the {} is in a unit of something else", name),
         "choose the unit that was meant");
    need(unit == nullptr || amount->number.value() >= 0, fmt::format("the {} is below zero", name), "");
}

template <class R>
void need_all(const Job& job, const std::vector<Id<R>>& ids, const char* name, const RuleSink& need) {
    for (const Id<R>& id : ids)
        need(job.find(id) != nullptr, fmt::format("the step's {} is not in the job", name), "link one that is");
}

}  // namespace

void need_place(const Job& job, const Place& place, const RuleSink& need) {
    const Trailer* trailer = job.only<Trailer>();
    need(!place.is_corner() || trailer != nullptr, "the trailer's axles are not known yet", "put the trailer first");
    need(trailer == nullptr || trailer->has(place), fmt::format("the trailer has no place {}", place.text()), "");
}

void check_rules(const Job& job, const StepMark& r, const RuleSink& need) {
    need_place(job, r.place, need);
    need(!r.procedure.empty() && !r.step.empty(), "the mark does not say which step of which procedure", "");
    need(!r.by.empty(), "the mark does not say who made it", "enter the name");
    const bool needs_reason = r.word == StepWord::overridden || r.word == StepWord::not_needed;
    need(!needs_reason || !r.reason.empty(), fmt::format("'{}' needs a reason", name_of(r.word)), "say why");
    need((r.word == StepWord::caution_read) == !r.caution.empty(),
         r.caution.empty() ? "the mark does not say which caution was read" : "only 'caution read' names a caution",
         "");
    need_all(job, r.shots, "shot", need);
    need_all(job, r.readings, "reading", need);
    need(!r.finding || job.find(*r.finding) != nullptr, "the step's finding is not in the job", "link one that is");
    need(!r.finding || r.answer == StepAnswer::something_wrong, "only the answer 'something is wrong' makes a finding",
         "");
    need(!r.answer || r.word == StepWord::done, fmt::format("'{}' answers no question", name_of(r.word)), "");
    need_all(job, r.torques, "torque", need);
    need_all(job, r.levels, "level", need);
}

void check_rules(const Job& job, const BearingSetting& r, const RuleSink& need) {
    need_place(job, r.place, need);
    need(r.place.is_corner(), "a bearing is set at a corner", "");
    need_kind(r.seated, Quantity::torque, "seating torque", need);
    need_kind(r.locked, Quantity::torque, "locking torque", need);
    need_kind(r.play_min, Quantity::length, "least end play", need);
    need_kind(r.play_max, Quantity::length, "most end play", need);
    need(!r.play_min || !r.play_max || r.play_min->si() <= r.play_max->si(), "the least end play is above the most",
         "read the maker's range again");
    need(!r.threads_per_inch || (r.threads_per_inch->value() >= 4 && r.threads_per_inch->value() <= 40),
         "a spindle has 4 to 40 threads per inch", "count them along one inch");
    need(r.lock_positions >= 0 && r.lock_positions <= 72, "a lock engages at most 72 times in a turn", "");
    need(!r.back_off || (r.back_off->value() >= 0 && r.back_off->value() <= 2), "a nut is backed off by 0 to 2 turns",
         "");
    for (const BearingTry& one : r.tries)
        need(!one.dial || job.find(*one.dial) != nullptr, "the dial reading of a try is not in the job", "");
    need(!r.lock_shot || job.find(*r.lock_shot) != nullptr, "the lock's shot is not in the job", "");
}

void check_rules(const Job&, const PipeRoute& r, const RuleSink& need) {
    for (const PipeLeg& leg : r.legs) {
        need(!leg.from.empty() && !leg.to.empty(), "a pipe has two ends", "name both: actuator, a tee or a corner");
        need_kind(leg.length, Quantity::length, "pipe's length", need);
        need_kind(leg.bore, Quantity::length, "pipe's bore", need);
        need(leg.length.si() > 0,
             fmt::format("the pipe from {} to {} has no length", one_line(leg.from, 40), one_line(leg.to, 40)),
             "measure it along its way");
    }
}

void check_rules(const Job& job, const BleedCount& r, const RuleSink& need) {
    need_place(job, r.place, need);
    need(r.place.is_corner(), "fluid is drawn at a corner", "");
    need_kind(r.drawn, Quantity::volume, "fluid drawn", need);
}

}  // namespace cotter
