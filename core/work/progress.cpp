// The state of steps, derived from marks and evidence.
#include "core/work/progress.h"

#include <algorithm>
#include <fmt/format.h>

namespace cotter {

namespace {

const Axle* axle_at(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr || !place.is_corner() || !trailer->has(place)) return nullptr;
    return &trailer->axles[static_cast<std::size_t>(place.axle) - 1];
}

std::vector<Place> corners_of(const Job& job) {
    const Trailer* trailer = job.only<Trailer>();
    return trailer == nullptr ? std::vector<Place>() : trailer->corners();
}

bool closes(StepWord word) {
    return word != StepWord::caution_read;
}

// The newest mark that closes the step there.
const StepMark* closing_mark(const Job& job, const Step& step, const Place& place) {
    const StepMark* newest = nullptr;
    for (const StepMark& mark : job.all<StepMark>())
        if (mark.step == step.id && mark.place == place && closes(mark.word) &&
            (newest == nullptr || newest->at <= mark.at))
            newest = &mark;
    return newest;
}

bool caution_is_read(const Job& job, const Step& step, const Place& place, const std::string& caution) {
    const auto& all = job.all<StepMark>();
    return std::any_of(all.begin(), all.end(), [&](const StepMark& m) {
        return m.word == StepWord::caution_read && m.step == step.id && m.place == place && m.caution == caution;
    });
}

StepState state_of_mark(const StepMark& mark) {
    switch (mark.word) {
        case StepWord::not_needed:
            return StepState::not_needed;
        case StepWord::overridden:
            return StepState::overridden;
        default:
            return StepState::done;
    }
}

const Finding* like_ask(const Job& job, const Ask& ask, const Place& place) {
    for (const Finding& f : job.all<Finding>())
        if (f.place == place && f.component == ask.component && f.defect == ask.defect) return &f;
    return nullptr;
}

// Marks of programs before do not say what was answered: the finding of the question tells.
void fill_answer(const Job& job, StepView& view) {
    if (view.mark == nullptr || view.mark->word != StepWord::done || !view.step->ask) return;
    view.answer = view.mark->answer;
    if (view.mark->finding) view.finding = job.find(*view.mark->finding);
    if (view.answer) return;
    view.finding = like_ask(job, *view.step->ask, view.place);
    view.answer = view.finding == nullptr ? StepAnswer::looks_good : StepAnswer::something_wrong;
}

// What forbids towing now, in words; empty: nothing that was found does.
std::string against_towing(const Job& job) {
    for (const Finding& f : job.all<Finding>())
        if (f.grade == Grade::do_not_tow && f.outcome != Outcome::repaired)
            return fmt::format("do not tow: {}: {}, {}", f.place.text(), f.component, f.defect);
    return {};
}

bool for_this_hub(const Job& job, const Step& step, const Place& place) {
    const Axle* axle = axle_at(job, place);
    return step.hubs.empty() || axle == nullptr ||
           std::find(step.hubs.begin(), step.hubs.end(), axle->hub) != step.hubs.end();
}

bool is_one_of(const std::vector<BrakeKind>& kinds, BrakeKind brake) {
    return std::find(kinds.begin(), kinds.end(), brake) != kinds.end();
}

// A step of the whole trailer is for it when one of the axles has such a brake, or when no axle is entered yet.
bool for_this_brake(const Job& job, const Step& step, const Place& place) {
    if (step.brakes.empty()) return true;
    if (place.is_corner()) {
        const Axle* axle = axle_at(job, place);
        return axle == nullptr || is_one_of(step.brakes, axle->brake);
    }
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr || trailer->axles.empty()) return true;
    return std::any_of(trailer->axles.begin(), trailer->axles.end(),
                       [&](const Axle& axle) { return is_one_of(step.brakes, axle.brake); });
}

bool for_this_place(const Job& job, const Step& step, const Place& place) {
    return for_this_hub(job, step, place) && for_this_brake(job, step, place);
}

// Looks at one place's steps; knows the whole book because needs cross procedures.
class Leader {
public:
    Leader(const WorkBook& book, const Job& job) : book_(book), job_(job) {}

    StepView view(const Procedure& procedure, const Step& step, const Place& at) const {
        const Place place = place_for(procedure, at);
        StepView out;
        out.step = &step;
        out.place = place;
        out.mark = closing_mark(job_, step, place);
        if (!for_this_place(job_, step, place)) {
            out.state = StepState::other_hub;
            return out;
        }
        fill_answer(job_, out);
        for (const StepNeed& need : step.needs) add_open(need, place, out.blocked_by);
        if (std::string stop = step.moves ? against_towing(job_) : std::string(); !stop.empty())
            out.blocked_by.push_back({nullptr, nullptr, place, std::move(stop)});
        for (const Proof& proof : step.proofs)
            if (!holds_proof(job_, proof, place, out.mark)) out.missing_proof.push_back(proof.words);
        out.state = state_of(step, out);
        if (!out.closed()) add_cautions(step, place, out.cautions);
        return out;
    }

    // Only the proofs that records outside the mark can give; a note is written with the mark itself.
    static bool is_held(const Step& step, const StepView& view) {
        if (step.hold.empty()) return false;
        return std::any_of(view.missing_proof.begin(), view.missing_proof.end(), [&](const std::string& words) {
            return std::any_of(step.proofs.begin(), step.proofs.end(),
                               [&](const Proof& p) { return p.words == words && p.kind != ProofKind::note; });
        });
    }

private:
    static StepState state_of(const Step& step, const StepView& view) {
        if (view.mark != nullptr) return state_of_mark(*view.mark);
        if (!view.blocked_by.empty()) return StepState::blocked;
        return is_held(step, view) ? StepState::held : StepState::possible;
    }

    void add_cautions(const Step& step, const Place& place, std::vector<const Caution*>& out) const {
        for (const std::string& id : step.cautions)
            if (const Caution* caution = book_.caution(id); caution && !caution_is_read(job_, step, place, id))
                out.push_back(caution);
    }

    void add_open(const StepNeed& need, const Place& place, std::vector<StepBlock>& out) const {
        const auto [procedure, step] = book_.step(need.step);
        if (step == nullptr) return;
        for (const Place& at : places_for(need, *procedure, place))
            if (!closed(need, *procedure, *step, at)) {
                const std::string where = at == place || !at.is_corner() ? "" : fmt::format(", at {}", at.text());
                out.push_back({procedure, step, at, fmt::format("first{}: {}", where, step->title)});
            }
    }

    std::vector<Place> places_for(const StepNeed& need, const Procedure& procedure, const Place& place) const {
        if (procedure.scope == Scope::trailer) return {Place::at(Station::trailer)};
        if (need.reach == StepReach::here) return {place};
        std::vector<Place> out = corners_of(job_);
        if (need.reach == StepReach::axle)
            out.erase(std::remove_if(out.begin(), out.end(), [&](const Place& p) { return p.axle != place.axle; }),
                      out.end());
        return out;
    }

    bool closed(const StepNeed& need, const Procedure& procedure, const Step& step, const Place& at) const {
        if (!applies(procedure, job_, at) || !for_this_place(job_, step, at)) return true;
        if (need.begun && !begun(procedure, job_, at)) return true;
        const Axle* axle = axle_at(job_, at);
        if (axle != nullptr && ((need.brake && axle->brake != *need.brake) || (need.hub && axle->hub != *need.hub)))
            return true;
        if (step.moves && !against_towing(job_).empty()) return true;  // nobody shall do it now
        return closing_mark(job_, step, at) != nullptr;
    }

    const WorkBook& book_;
    const Job& job_;
};

void object_to_done(const WorkBook& book, const StepView& view, const StepMark& mark, const Job& job,
                    std::vector<std::string>& out) {
    for (const StepBlock& block : view.blocked_by) out.push_back(block.words);
    for (const std::string& id : view.step->cautions)
        if (const Caution* c = book.caution(id); c != nullptr && !caution_is_read(job, *view.step, view.place, id))
            out.push_back("read the caution first: " + c->title);
    if (view.step->hold.empty()) return;
    bool first = true;
    for (const Proof& proof : view.step->proofs) {
        if (holds_proof(job, proof, view.place, &mark)) continue;
        if (first) out.push_back(view.step->hold);
        first = false;
        out.push_back("missing: " + proof.words);
    }
}

}  // namespace

Place place_for(const Procedure& procedure, const Place& place) {
    return procedure.scope == Scope::trailer || !place.is_corner() ? Place::at(Station::trailer)
                                                                   : Place::corner(place.axle, place.side);
}

bool applies(const Procedure& procedure, const Job& job, const Place& place) {
    if (procedure.scope == Scope::trailer) {
        if (procedure.brakes.empty()) return true;
        const auto corners = corners_of(job);
        return std::any_of(corners.begin(), corners.end(), [&](const Place& corner) {
            return is_one_of(procedure.brakes, axle_at(job, corner)->brake);
        });
    }
    const Axle* axle = axle_at(job, place);
    if (axle == nullptr) return false;
    if (is_one_of(procedure.not_brakes, axle->brake)) return false;
    return procedure.brakes.empty() || is_one_of(procedure.brakes, axle->brake);
}

std::vector<Place> places_of(const Procedure& procedure, const Job& job) {
    std::vector<Place> out;
    if (procedure.scope == Scope::trailer) {
        if (applies(procedure, job, Place::at(Station::trailer))) out.push_back(Place::at(Station::trailer));
        return out;
    }
    for (const Place& corner : corners_of(job))
        if (applies(procedure, job, corner)) out.push_back(corner);
    return out;
}

bool begun(const Procedure& procedure, const Job& job, const Place& place) {
    const auto& all = job.all<StepMark>();
    const Place at = place_for(procedure, place);
    return std::any_of(all.begin(), all.end(), [&](const StepMark& m) {
        return m.procedure == procedure.id && m.place == at && closes(m.word);
    });
}

std::vector<StepView> procedure_state(const WorkBook& book, const Procedure& procedure, const Job& job,
                                      const Place& place, Mode mode) {
    std::vector<StepView> out;
    if (!applies(procedure, job, place) || (mode == Mode::owner && !procedure.owner)) return out;
    const Leader leader(book, job);
    for (const Step& step : procedure.steps)
        if (mode == Mode::mechanic || step.owner) out.push_back(leader.view(procedure, step, place));
    return out;
}

StepView step_state(const WorkBook& book, std::string_view step, const Job& job, const Place& place) {
    const auto found = book.step(step);
    if (found.step == nullptr) return {};
    return Leader(book, job).view(*found.procedure, *found.step, place);
}

const StepView* next_step(const std::vector<StepView>& steps) {
    for (const StepState wanted : {StepState::possible, StepState::held})
        for (const StepView& view : steps)
            if (view.state == wanted) return &view;
    return nullptr;
}

StepMark new_mark(const WorkBook& book, std::string_view step, const Place& place, StepWord word,
                  const MarkStamp& stamp, std::string_view caution) {
    const auto found = book.step(step);
    StepMark mark;
    mark.id = stamp.id;
    mark.procedure = found.procedure == nullptr ? "" : found.procedure->id;
    mark.step = step;
    mark.place = found.procedure == nullptr ? place : place_for(*found.procedure, place);
    mark.word = word;
    mark.caution = caution;
    const Caution* shown = book.caution(caution);
    mark.title = shown != nullptr ? shown->title : found.step != nullptr ? found.step->title : "";
    mark.at = stamp.at;
    mark.by = stamp.by;
    return mark;
}

std::vector<std::string> objections(const WorkBook& book, const Job& job, const StepMark& mark) {
    const auto found = book.step(mark.step);
    if (found.step == nullptr || found.procedure->id != mark.procedure)
        return {fmt::format("the work '{}' has no such step", mark.procedure)};
    std::vector<std::string> out;
    if (mark.by.empty()) out.push_back("a mark needs the name of who makes it");
    if (!applies(*found.procedure, job, place_for(*found.procedure, mark.place)))
        return {fmt::format("'{}' is not done at {} of this trailer", found.procedure->title, mark.place.text())};
    if (place_for(*found.procedure, mark.place) != mark.place)
        out.push_back("the mark names a wheel or station; name the corner, or the trailer");
    const StepView view = step_state(book, mark.step, job, mark.place);
    const auto& cautions = found.step->cautions;
    if (mark.word == StepWord::done) object_to_done(book, view, mark, job, out);
    if (mark.word == StepWord::overridden && mark.reason.empty()) out.push_back("an override needs a reason");
    if (mark.word == StepWord::not_needed && found.step->optional.empty())
        out.push_back("this step is always needed; do it, or override it with a reason");
    if (mark.word == StepWord::not_needed && mark.reason.empty()) out.push_back("say why it is not needed");
    if (mark.word == StepWord::caution_read &&
        std::find(cautions.begin(), cautions.end(), mark.caution) == cautions.end())
        out.push_back(fmt::format("the step has no caution '{}'", mark.caution));
    return out;
}

}  // namespace cotter
