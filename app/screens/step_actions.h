// What can be done about a step, as buttons, and what each of them asks for. For the work page and its sheets.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/command.h"
#include "app/ui/screen.h"
#include "app/views/work_view.h"

namespace cotter {

enum class StepAct { read, prove, note, done, looks_good, cannot_tell, something_wrong, pass, leave_out, reopen };

struct StepAction {
    StepAct act = StepAct::done;
    std::string label;
    bool main = false;
};

// At most three, the main one last; empty for a step that waits. The three answers to a question weigh the same: none
// of them is the main one, and what else may be done about such a step is offered below its question.
[[nodiscard]] std::vector<StepAction> actions_of(const StepItem& step);
// Views into `actions`.
[[nodiscard]] std::vector<ActionSpec> action_specs(const std::vector<StepAction>& actions);

// Carries it out, or opens the sheet that asks for the rest by a draft of words.
void act_on(const ProcedureView& view, const StepItem& step, StepAct act, Commands& out);
void read_caution(const ProcedureView& view, const StepItem& step, const StepCaution& caution, Commands& out);
// "Take the photo", "Measure"
[[nodiscard]] std::string_view verb_of(const StepProof& evidence);
// Goes where the evidence is recorded, or opens the keypad.
void lead_to(const ProcedureView& view, const StepProof& evidence, Commands& out);

// The sheet that a draft of words holds open: note, reason to pass, reason to leave out. `name`: of who passes it, as
// typed. False when no draft is of a step of this page.
bool draw_step_words(UiContext& ui, const ProcedureView& view, std::optional<std::string>& name, Commands& out);

}  // namespace cotter
