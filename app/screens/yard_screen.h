// The yard book: the first page. What goes out: which job to open, a new one, the settings.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/yard_view.h"

namespace cotter {

void draw_yard(UiContext& ui, const YardView& view, Commands& out);

}  // namespace cotter
