// The breakaway test by the clock. See app/views/breakaway_view.h.
#pragma once

#include "app/command.h"
#include "app/screens/reading_sheets.h"
#include "app/ui/ui.h"
#include "app/views/breakaway_view.h"

namespace cotter {

void draw_breakaway(UiContext& ui, const BreakawayView& view, const Instant& now, ReadingState& state, Commands& out);

}  // namespace cotter
