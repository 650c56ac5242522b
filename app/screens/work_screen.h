// One procedure, step by step: the next possible step with its cautions and proofs, then all steps. What goes out:
// marks of steps, pages where proof is recorded, readings.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/screens/reading_sheets.h"
#include "app/ui/ui.h"
#include "app/views/work_view.h"

namespace cotter {

struct WorkState {
    std::string step;                 // whose sheet is open
    std::string stop;                 // the step whose answer was 'something is wrong' a moment ago
    std::optional<std::string> name;  // of who skips a hold point, as typed; none: the technician
    ReadingState reading;
};

void draw_work(UiContext& ui, const ProcedureView& view, WorkState& state, Commands& out);
// Which procedures there are, place by place, and the owner's look.
void draw_work_list(UiContext& ui, const WorkListView& view, Commands& out);

}  // namespace cotter
