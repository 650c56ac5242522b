// One place of the trailer: photos, findings, readings, torques, levels. What goes out: pages to open, readings and
// outcomes of findings.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/screens/finding_entry_sheet.h"
#include "app/screens/reading_sheets.h"
#include "app/ui/ui.h"
#include "app/views/corner_view.h"

namespace cotter {

struct CornerState {
    std::optional<Stage> stage;  // what is shown; nothing chosen: before, until there is a photo from after
    bool all_readings = false;   // those that only help too
    std::string finding;         // id of the one whose sheet is open
    FindingSheetState change;
    ReadingState reading;
};

void draw_corner(UiContext& ui, const CornerView& view, CornerState& state, Commands& out);

}  // namespace cotter
