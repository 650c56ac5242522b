// The sheet of one finding of a place: what became of it, the photo it is marked on. For the corner page.
// What goes out: its outcome, its removal, the photo to open,
// the draft that changes it.
#pragma once

#include <string>

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/corner_view.h"

namespace cotter {

// `finding`: the id of the one that is open; emptied when its sheet is closed.
void draw_finding(UiContext& ui, const CornerView& view, std::string& finding, Commands& out);

}  // namespace cotter
