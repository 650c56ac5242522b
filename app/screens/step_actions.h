// What can be done about a step, as buttons, and what each of them asks for. For the work page and its sheets.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/command.h"
#include "app/ui/screen.h"
#include "app/views/work_view.h"

namespace cotter {

enum class StepAct { read, prove, note, done, good, bad, pass, leave_out, reopen };

struct StepAction {
    StepAct act = StepAct::done;
    std::string label;
    bool main = false;
};

// At most three, the main one last; empty for a step that waits.
[[nodiscard]] std::vector<StepAction> actions_of(const StepItem& step);
// Views into `actions`.
[[nodiscard]] std::vector<ActionSpec> action_specs(const std::vector<StepAction>& actions);

// Carries it out, or opens the sheet that asks for the rest by a draft of words.
void act_on(const ProcedureView& view, const StepItem& step, StepAct act, Commands& out);
void read_caution(const ProcedureView& view, const StepItem& step, const StepCaution& caution, Commands& out);
// Goes where the evidence is recorded, or opens the keypad.
void lead_to(const ProcedureView& view, const StepProof& evidence, Commands& out);

// The sheet that a draft of words holds open: note, reason to pass, reason to leave out. `name`: of who passes it, as
// typed. False when no draft is of a step of this page.
bool draw_step_words(UiContext& ui, const ProcedureView& view, std::optional<std::string>& name, Commands& out);

}  // namespace cotter
