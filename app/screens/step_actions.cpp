// See step_actions.h.
#include "app/screens/step_actions.h"

#include <algorithm>

namespace cotter {

namespace {

bool has_note(const StepItem& step) {
    return std::any_of(step.evidence.begin(), step.evidence.end(),
                       [](const StepProof& e) { return e.kind == ProofKind::note && !e.there; });
}

// A step that is no hold point may be closed though a record is missing.
void add_unproved(const StepItem& step, std::vector<StepAction>& out) {
    if (!step.hold.empty())
        out.push_back({StepAct::pass, "Skip this hold point…", false});
    else
        out.push_back({has_note(step) ? StepAct::note : StepAct::done, "Done", false});
}

void open_words(const ProcedureView& view, std::string field, std::string text, Commands& out) {
    Drafts drafts = view.drafts;
    drafts.put_words(std::move(field), std::move(text));
    out.push_back(KeepDrafts{std::move(drafts)});
}

void answer(const ProcedureView& view, const StepItem& step, StepAnswer given, Commands& out) {
    StepMark mark = mark_of(view, step, StepWord::done);
    mark.answer = given;
    mark.note = step.question + " " + upper_first(name_of(given)) + ".";
    out.push_back(PutStepMark{std::move(mark), given == StepAnswer::something_wrong ? step.bad : std::nullopt});
}

std::vector<StepAction> answers() {
    return {{StepAct::something_wrong, "Something is wrong", false},
            {StepAct::cannot_tell, "I can't tell", false},
            {StepAct::looks_good, "Looks good", false}};
}

Icon icon_of(const StepAction& action) {
    switch (action.act) {
        case StepAct::something_wrong:
            return Icon::close;
        case StepAct::cannot_tell:
            return Icon::help;
        case StepAct::looks_good:
            return Icon::check;
        default:
            return !action.main ? Icon::none : action.label == "Take the photo" ? Icon::camera : Icon::check;
    }
}

}  // namespace

std::string_view verb_of(const StepProof& e) {
    switch (e.kind) {
        case ProofKind::shot:
            return "Take the photo";
        case ProofKind::reading:
            return "Measure";
        case ProofKind::torque:
            return "Torque";
        case ProofKind::level:
            return "Level";
        case ProofKind::bearing:
            return "Bearing";
        case ProofKind::route:
            return "Enter the pipes";
        case ProofKind::bleeding:
            return "Bleed";
        case ProofKind::look:
            return "Try each wheel";
        case ProofKind::breakaway:
            return "The test by the clock";
        case ProofKind::note:
            break;
    }
    return "Note";
}

std::vector<StepAction> actions_of(const StepItem& step) {
    std::vector<StepAction> out;
    if (step.move == StepMove::nothing) {
        if (!step.mark.nil()) out.push_back({StepAct::reopen, "Open again", false});
        return out;
    }
    if (step.asks()) return answers();
    if (!step.optional.empty()) out.push_back({StepAct::leave_out, "Not needed", false});
    switch (step.move) {
        case StepMove::read:
            out.push_back({StepAct::read, "I have read it", true});
            break;
        case StepMove::prove:
            add_unproved(step, out);
            out.push_back({StepAct::prove, std::string(verb_of(*step.missing())), true});
            break;
        case StepMove::note:
            if (!step.hold.empty()) out.push_back({StepAct::pass, "Skip this hold point…", false});
            out.push_back({StepAct::note, "Done", true});
            break;
        default:
            out.push_back({StepAct::done, "Done", true});
    }
    return out;
}

std::vector<ActionSpec> action_specs(const std::vector<StepAction>& actions) {
    std::vector<ActionSpec> out;
    for (const StepAction& a : actions)
        out.push_back({a.label, a.main ? Tone::strong : Tone::quiet, icon_of(a), true, a.main});
    return out;
}

void read_caution(const ProcedureView& view, const StepItem& step, const StepCaution& caution, Commands& out) {
    StepMark mark = mark_of(view, step, StepWord::caution_read);
    mark.caution = caution.id;
    mark.title = caution.title;
    out.push_back(PutStepMark{std::move(mark), std::nullopt});
}

void lead_to(const ProcedureView& view, const StepProof& evidence, Commands& out) {
    if (evidence.kind == ProofKind::note) return;
    if (!evidence.reading) return out.push_back(GoTo{evidence.lead});
    Drafts drafts = view.drafts;
    drafts.reading = evidence.reading;
    out.push_back(KeepDrafts{std::move(drafts)});
}

void act_on(const ProcedureView& view, const StepItem& step, StepAct act, Commands& out) {
    switch (act) {
        case StepAct::read:
            return read_caution(view, step, step.cautions.front(), out);
        case StepAct::prove:
            return lead_to(view, *step.missing(), out);
        case StepAct::note:
            return open_words(view, "note " + step.id, step.note, out);
        case StepAct::done:
            return out.push_back(PutStepMark{mark_of(view, step, StepWord::done), std::nullopt});
        case StepAct::looks_good:
            return answer(view, step, StepAnswer::looks_good, out);
        case StepAct::cannot_tell:
            return answer(view, step, StepAnswer::cannot_tell, out);
        case StepAct::something_wrong:
            return answer(view, step, StepAnswer::something_wrong, out);
        case StepAct::pass:
            return open_words(view, "pass " + step.id, {}, out);
        case StepAct::leave_out:
            return open_words(view, "leave " + step.id, step.optional, out);
        case StepAct::reopen:
            return out.push_back(RemoveStepMark{step.mark});
    }
}

}  // namespace cotter
