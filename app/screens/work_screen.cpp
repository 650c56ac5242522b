// See work_screen.h.
#include "app/screens/work_screen.h"

#include <algorithm>

#include "app/screens/common.h"
#include "app/screens/step_actions.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_cautions(UiContext& ui, const ProcedureView& view, const StepItem& step, Commands& out) {
    for (std::size_t i = 0; i < step.cautions.size(); ++i) {
        const StepCaution& c = step.cautions[i];
        caution(ui, c.title, c.text);
        // The first one's button is the page's main action.
        if (i > 0 && step.move == StepMove::read && wide_button(ui, {"Read: " + c.title, "read " + c.id}))
            read_caution(view, step, c, out);
    }
}

void draw_blocks(UiContext& ui, const StepItem& step, Commands& out) {
    if (step.blocks.empty() || (step.state != StepState::blocked && !step.doubtful)) return;
    heading(ui, "It waits for");
    for (std::size_t i = 0; i < step.blocks.size(); ++i) {
        const StepBefore& b = step.blocks[i];
        if (!b.lead)
            paragraph(ui, b.words);
        else if (row(ui, {b.words, "block " + std::to_string(i)}))
            out.push_back(GoTo{*b.lead});
    }
}

void draw_evidence(UiContext& ui, const ProcedureView& view, const StepItem& step, Commands& out) {
    if (step.evidence.empty()) return;
    heading(ui, "Proof");
    for (std::size_t i = 0; i < step.evidence.size(); ++i) {
        const StepProof& e = step.evidence[i];
        RowSpec spec;
        spec.value = e.there ? "there" : "missing";
        spec.icon = e.there ? Icon::pin : Icon::open_pin;
        spec.leads_on = e.kind != ProofKind::note;
        if (e.kind == ProofKind::note)
            fact(ui, upper_first(e.words), e.there ? step.note : std::string("a note, at 'Done'"));
        else if (row(ui, {upper_first(e.words), "proof " + std::to_string(i)}, spec))
            lead_to(view, e, out);
    }
}

// Below a question that is open: its photo or reading, and that it may be left out. The answers are the page's actions.
void draw_question(UiContext& ui, const ProcedureView& view, const StepItem& step, Commands& out) {
    remark(ui, "Do you see a problem?", step.question);
    if (!step.asks()) return;
    if (const StepProof* proof = step.missing()) {
        const Icon icon = proof->kind == ProofKind::shot ? Icon::camera : Icon::none;
        if (wide_button(ui, {verb_of(*proof), "proof of the question"}, {Tone::quiet, icon, true, false, 0}))
            lead_to(view, *proof, out);
    }
    if (!step.optional.empty() && wide_button(ui, "Not needed")) act_on(view, step, StepAct::leave_out, out);
}

void draw_found(UiContext& ui, const StepItem& step) {
    if (step.grade) grade_plate(ui, *step.grade);
    if (!step.found.empty()) paragraph(ui, step.found + ".");
    if (!step.now.empty()) remark(ui, "What to do now", step.now);
}

void draw_mark(UiContext& ui, const StepItem& step, Commands& out) {
    draw_found(ui, step);
    if (!step.closed_by.empty()) fact(ui, upper_first(step.word), step.closed_by);
    if (!step.reason.empty()) fact(ui, "Why", step.reason);
    if (!step.note.empty()) fact(ui, "Note", step.note);
    if (step.doubtful) remark(ui, "Look again", "It is marked as done, but what proves it is not there any more.");
    if (!step.rests.empty()) heading(ui, "It rests on");
    for (std::size_t i = 0; i < step.rests.size(); ++i) {
        RowSpec spec;
        spec.value = step.rests[i].value;
        if (row(ui, {step.rests[i].label, "rest " + std::to_string(i)}, spec)) out.push_back(GoTo{step.rests[i].lead});
    }
}

void draw_step(UiContext& ui, const ProcedureView& view, const StepItem& step, Commands& out) {
    draw_mark(ui, step, out);
    if (!step.plain.empty()) paragraph(ui, step.plain);
    if (!step.why.empty()) paragraph(ui, "Why: " + step.why, true);
    draw_blocks(ui, step, out);
    draw_cautions(ui, view, step, out);
    if (step.open_hold() || step.move == StepMove::note) {
        if (!step.hold.empty()) remark(ui, "Hold point", step.hold);
    }
    if (!step.question.empty() && step.mark.nil()) draw_question(ui, view, step, out);
    draw_evidence(ui, view, step, out);
    if (!step.optional.empty() && step.mark.nil())
        paragraph(ui, "This step may be skipped " + step.optional + ".", true);
}

// Never a tick for an answer that was not 'looks good'.
Icon icon_of(const StepItem& step) {
    if (step.answer == StepAnswer::cannot_tell) return Icon::help;
    if (step.answer == StepAnswer::something_wrong) return Icon::none;
    switch (step.state) {
        case StepState::done:
        case StepState::not_needed:
            return Icon::check;
        case StepState::overridden:
            return Icon::open_pin;
        case StepState::possible:
        case StepState::held:
            return Icon::pin;
        default:
            return Icon::none;
    }
}

void draw_all(UiContext& ui, const ProcedureView& view, WorkState& state) {
    heading(ui, "All steps");
    for (const StepItem& step : view.steps) {
        RowSpec spec;
        spec.value = step.doubtful ? "look again" : std::string_view(step.word);
        if (step.state == StepState::blocked && !step.blocks.empty()) spec.under = step.blocks.front().words;
        if (step.state == StepState::overridden) spec.under = step.reason;
        if (step.answer == StepAnswer::something_wrong) spec.under = step.found;
        spec.grade = step.grade;
        spec.icon = icon_of(step);
        if (row(ui, {step.title, "step " + step.id}, spec)) state.step = step.id;
    }
}

void draw_advice(UiContext& ui, const AdviceView& advice, std::size_t most) {
    std::string text;
    for (std::size_t i = 0; i < advice.reasons.size() && i < most; ++i)
        text += advice.reasons[i] + (advice.reasons[i].ends_with("?") ? "\n" : ".\n");
    if (advice.reasons.size() > most) text += "And " + std::to_string(advice.reasons.size() - most) + " more.\n";
    text += "This is advice from what was looked at, never a certificate.";
    heading(ui, "May I tow this?");
    answer_box(ui, advice.sign, advice.title, text, advice.towing == Towing::no);
}

void draw_body(UiContext& ui, const ProcedureView& view, WorkState& state, Commands& out) {
    if (!view.found) return paragraph(ui, "This work does not belong to this place of the trailer.");
    paragraph(ui, view.progress + ". " + view.plain, true);
    if (view.advice) draw_advice(ui, *view.advice, view.advice_only_stops ? 2 : 6);
    if (view.next) {
        const StepItem& step = view.steps[*view.next];
        heading(ui, step.title);
        draw_step(ui, view, step, out);
    } else {
        paragraph(ui, view.all_closed ? "All steps are closed." : "Nothing can be done here yet.");
        if (view.waits) draw_blocks(ui, view.steps[*view.waits], out);
    }
    draw_all(ui, view, state);
    if (!view.source.empty()) paragraph(ui, "Order: " + view.source + ".", true);
}

// Carries it out; a bad answer stops here first.
void act(const ProcedureView& view, const StepItem& step, StepAct what, WorkState& state, Commands& out) {
    act_on(view, step, what, out);
    if (what == StepAct::something_wrong) state.stop = step.id;
}

// A read caution leaves the sheet open: the next thing to do about the step is on it.
bool leaves_sheet(const Commands& out, std::size_t from) {
    return std::any_of(out.begin() + static_cast<std::ptrdiff_t>(from), out.end(), [](const Command& c) {
        const PutStepMark* put = std::get_if<PutStepMark>(&c);
        return put == nullptr || put->mark.word != StepWord::caution_read;
    });
}

void draw_sheet(UiContext& ui, const ProcedureView& view, WorkState& state, Commands& out) {
    for (const StepItem& step : view.steps) {
        if (step.id != state.step) continue;
        const auto actions = actions_of(step);
        const SheetSpec spec{"step " + step.id, step.title, action_specs(actions)};
        const std::size_t before = out.size();
        const SheetAnswer answer = sheet(ui, spec, [&] { draw_step(ui, view, step, out); });
        if (answer.action) act(view, step, actions[*answer.action].act, state, out);
        if (answer.closed || leaves_sheet(out, before)) state.step.clear();
        return;
    }
    state.step.clear();
}

// A bad answer stops the walk until what it means was read.
void draw_stop(UiContext& ui, const ProcedureView& view, WorkState& state, Commands& out) {
    const auto step = std::find_if(view.steps.begin(), view.steps.end(),
                                   [&](const StepItem& s) { return s.id == state.stop && s.answer; });
    if (step == view.steps.end() || step->answer != StepAnswer::something_wrong || !step->grade) return;
    const SheetSpec spec{"stop",
                         *step->grade == Grade::do_not_tow ? "Do not tow" : "Not before it is repaired",
                         {{{"Answer again", "answer again"}, Tone::quiet, Icon::undo, true, false},
                          {{"Understood", "understood"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        draw_found(ui, *step);
        paragraph(ui, "It is recorded as a finding. Look at the rest all the same: it shows what else is needed.",
                  true);
    });
    if (answer.action == 0u) act_on(view, *step, StepAct::reopen, out);
    if (answer.closed || answer.action) state.stop.clear();
}

}  // namespace

void draw_work(UiContext& ui, const ProcedureView& view, WorkState& state, Commands& out) {
    const std::vector<StepAction> actions = view.next ? actions_of(view.steps[*view.next]) : std::vector<StepAction>{};
    // Another next step: the page begins at its top again.
    const std::string next = view.next ? view.steps[*view.next].id : std::string();
    const std::string key = "work " + view.procedure + view.place.text() + " " + next;
    const ScreenAnswer answer =
        screen(ui, screen_of(view.chrome, key, action_specs(actions)), [&] { draw_body(ui, view, state, out); });
    answer_chrome(answer, out);
    if (answer.tap == ScreenTap::action) act(view, view.steps[*view.next], actions[answer.action].act, state, out);
    if (!state.stop.empty()) draw_stop(ui, view, state, out);
    if (view.entry)
        draw_reading(ui, *view.entry, view.drafts, state.reading, out);
    else if (!draw_step_words(ui, view, state.name, out) && !state.step.empty())
        draw_sheet(ui, view, state, out);
}

void draw_work_list(UiContext& ui, const WorkListView& view, Commands& out) {
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "work list"), [&] {
        if (toggle(ui, {"Owner's look", "owner"}, view.owner,
                   "Plain words, no hub is opened, and an answer in the end")) {
            Settings settings = view.settings;
            settings.owner = !view.owner;
            out.push_back(PutSettings{std::move(settings)});
            if (view.visit) {
                Visit visit = *view.visit;
                visit.role = view.owner ? VisitRole::not_said : VisitRole::owner;
                out.push_back(PutVisit{std::move(visit)});
            }
        }
        if (view.advice) draw_advice(ui, *view.advice, 3);
        if (view.groups.empty()) paragraph(ui, "No procedures apply here. Enter the trailer's axles first.");
        for (const WorkGroup& group : view.groups) {
            heading(ui, group.title);
            for (const WorkRow& r : group.rows) {
                RowSpec spec;
                spec.value = r.value;
                spec.under = r.under;
                spec.icon = r.done ? Icon::pin : Icon::none;
                spec.grade = r.worst;
                if (row(ui, {r.label, r.id + group.place.text()}, spec))
                    out.push_back(GoTo{{Screen::work, group.place, r.id}});
            }
        }
        if (!view.standing.empty()) paragraph(ui, view.standing, true);
    });
    answer_chrome(answer, out);
}

}  // namespace cotter
