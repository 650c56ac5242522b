// The maker's figure, keyed in with its source. What goes out: the draft at each change, the figure in the end.
#pragma once

#include <optional>

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/figure_view.h"

namespace cotter {

struct FigureState {
    std::optional<KeypadModel> pad;
    bool asked = false;  // the keypad has opened by itself
};

void draw_figure(UiContext& ui, const FigureView& view, FigureState& state, Commands& out);

}  // namespace cotter
