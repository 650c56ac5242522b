// See work_view.h.
#include "app/views/work_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/judged_reading.h"
#include "app/views/photo_view.h"
#include "app/views/place_text.h"
#include "app/views/plan_view.h"
#include "app/views/step_evidence.h"
#include "app/views/step_notes.h"

namespace cotter {

namespace {

std::string word_of(const StepView& step) {
    const std::string at = step.mark == nullptr ? "" : " " + clock_words(step.mark->at);
    if (step.answer) return std::string(name_of(*step.answer)) + at;
    switch (step.state) {
        case StepState::done:
            return "done" + at;
        case StepState::not_needed:
            return "not needed";
        case StepState::overridden:
            return "SKIPPED, not verified" + at;
        case StepState::possible:
            return "possible now";
        case StepState::held:
            return "hold point";
        case StepState::blocked:
            return "waits";
        case StepState::other_hub:
            return "not for this hub";
    }
    return {};
}

std::vector<StepBefore> blocks_of(const Procedure& here, const StepView& step, SideWords sides) {
    std::vector<StepBefore> out;
    for (const StepBlock& block : step.blocked_by) {
        StepBefore before{upper_first(in_words(block.words, sides)), std::nullopt};
        if (block.procedure != nullptr && (block.procedure->id != here.id || block.place != step.place))
            before.lead = Route{Screen::work, block.place, block.procedure->id};
        out.push_back(std::move(before));
    }
    return out;
}

std::vector<std::string> notes_for(const Job& job, const StepView& step) {
    std::vector<std::string> out;
    for (const std::string_view words : usual_notes(step.step->id)) out.emplace_back(words);
    for (const StepMark& mark : job.all<StepMark>())
        if (mark.step == step.step->id && !mark.note.empty() && mark.note.size() < 80 && out.size() < 8 &&
            std::find(out.begin(), out.end(), mark.note) == out.end())
            out.push_back(mark.note);
    return out;
}

std::optional<FindingDraft> bad_of(const StepView& step) {
    const auto finding = finding_of(*step.step, step.place, {}, {}, {});
    if (!finding) return std::nullopt;
    FindingDraft draft;
    draft.place = finding->place;
    draft.component = finding->component;
    draft.defect = finding->defect;
    draft.grade = finding->grade;
    draft.todo = finding->todo;
    return draft;
}

StepMove move_of(const StepItem& item) {
    if (item.state != StepState::possible && item.state != StepState::held) return StepMove::nothing;
    if (!item.cautions.empty()) return StepMove::read;
    if (item.missing() != nullptr) return StepMove::prove;
    if (item.bad) return StepMove::answer;
    const bool note = std::any_of(item.evidence.begin(), item.evidence.end(),
                                  [](const StepProof& e) { return e.kind == ProofKind::note && !e.there; });
    return note ? StepMove::note : StepMove::done;
}

void fill_answer(StepItem& item, const StepView& step) {
    item.answer = step.answer;
    if (step.finding == nullptr) return;
    if (step.finding->outcome != Outcome::repaired) item.grade = step.finding->grade;
    item.found = finding_words(step.finding->component, step.finding->defect);
    item.now = step.finding->todo;
}

void fill_mark(StepItem& item, const StepMark& mark, const Job& job) {
    item.mark = mark.id;
    item.reason = mark.reason;
    item.note = mark.note;
    item.rests = rests_of(job, mark);
    item.closed_by = fmt::format("{}, {} {}", mark.by, day_words(mark.at), clock_words(mark.at));
}

StepItem item_of(const Session& session, const Procedure& procedure, const StepView& step) {
    const Job& job = session.job();
    StepItem item;
    item.id = step.step->id;
    item.title = step.step->title;
    item.plain = step.step->plain;
    item.why = step.step->why;
    item.state = step.state;
    item.word = word_of(step);
    item.hold = step.step->hold;
    item.optional = step.step->optional;
    item.blocks = blocks_of(procedure, step, session.settings().sides);
    for (const Caution* c : step.cautions) item.cautions.push_back({c->id, c->title, c->danger + " " + c->require});
    item.evidence = evidence_of(job, step);
    if (step.step->ask) item.question = step.step->ask->question;
    item.bad = bad_of(step);
    if (step.mark != nullptr) fill_mark(item, *step.mark, job);
    fill_answer(item, step);
    item.doubtful = step.doubtful();
    item.notes = notes_for(job, step);
    item.move = move_of(item);
    return item;
}

bool begun_for(const ReadingDraft& draft, const StepItem& item) {
    return std::any_of(item.evidence.begin(), item.evidence.end(), [&](const StepProof& e) {
        return e.reading && e.reading->what == draft.what && e.reading->place == draft.place &&
               e.reading->stage == draft.stage;
    });
}

void fill_steps(ProcedureView& view, const Session& session, const Procedure& procedure) {
    const Job& job = session.job();
    const WorkBook& book = session.work_book();
    const auto steps = procedure_state(book, procedure, job, view.place, view.owner ? Mode::owner : Mode::mechanic);
    const StepView* next = next_step(steps);
    std::size_t closed = 0;
    for (const StepView& step : steps) {
        if (step.state == StepState::other_hub) continue;
        if (&step == next) view.next = view.steps.size();
        if (step.closed()) ++closed;
        if (next == nullptr && !view.waits && !step.closed()) view.waits = view.steps.size();
        view.steps.push_back(item_of(session, procedure, step));
        if (view.drafts.reading && begun_for(*view.drafts.reading, view.steps.back()))
            view.entry = judged_entry(session, *view.drafts.reading);
    }
    view.found = !view.steps.empty();
    view.all_closed = view.found && closed == view.steps.size();
    view.progress = fmt::format("{} of {}", closed, count_words(view.steps.size(), "step", "steps"));
}

}  // namespace

const StepProof* StepItem::missing() const {
    for (const StepProof& e : evidence)
        if (!e.there && e.kind != ProofKind::note) return &e;
    return nullptr;
}

ProcedureView procedure_view(const Session& session) {
    const Route& route = session.route();
    const Procedure* procedure = session.work_book().procedure(route.record);
    ProcedureView view;
    view.place = procedure == nullptr ? route.place : place_for(*procedure, route.place);
    view.owner = session.settings().owner;
    view.technician = session.settings().technician;
    view.drafts = session.drafts();
    const std::string place = place_words(view.place, session.settings().sides);
    view.chrome = chrome_of(session, procedure == nullptr ? "Work" : procedure->title, place);
    if (procedure == nullptr) return view;
    view.procedure = procedure->id;
    view.plain = procedure->plain;
    view.source = procedure->source;
    fill_steps(view, session, *procedure);
    const bool ends_in_advice = procedure->owner && procedure->scope == Scope::trailer && procedure->id == "owner";
    if (ends_in_advice || (procedure->owner && view.owner)) view.advice = advice_view(session);
    // Before the last step the question comes first: only what forbids towing stands above it.
    const bool at_end = view.all_closed || !view.next || *view.next + 1 == view.steps.size();
    view.advice_only_stops = !ends_in_advice || !at_end;
    if (view.advice_only_stops && view.advice && view.advice->towing != Towing::no) view.advice.reset();
    return view;
}

StepMark mark_of(const ProcedureView& view, const StepItem& step, StepWord word) {
    StepMark mark;
    mark.procedure = view.procedure;
    mark.step = step.id;
    mark.place = view.place;
    mark.word = word;
    mark.title = step.title;
    return mark;
}

}  // namespace cotter
