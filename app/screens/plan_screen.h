// The plan of the trailer: where to go next. What goes out: pages to open.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/plan_view.h"

namespace cotter {

void draw_plan(UiContext& ui, const PlanView& view, Commands& out);

}  // namespace cotter
