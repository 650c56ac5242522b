// Tightening nut by nut: the circle, the next nut, the passes. What goes out: clicks, passes, what is known of figure
// and wrench.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/screens/torque_sheets.h"
#include "app/ui/ui.h"
#include "app/views/torque_view.h"

namespace cotter {

struct TorqueState {
    int asked_nut = 0;                       // tapped out of order
    std::optional<std::size_t> asked_stage;  // wanted while the pass is not full
    TorqueSheet sheet;
};

void draw_torque(UiContext& ui, const TorqueView& view, TorqueState& state, Commands& out);

}  // namespace cotter
