// The page that says which trailer it is. What goes out: the trailer's and the visit's record after each choice.
#pragma once

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/identify_view.h"

namespace cotter {

// A figure of the certification label or placard that is being keyed in.
enum class LabelFigure { pressure, gvwr };

struct IdentifyState {
    std::size_t axle = 0;    // the one being chosen for, when they differ
    bool each_axle = false;  // the user wants them apart
    LabelFigure figure = LabelFigure::pressure;
    std::optional<KeypadModel> pad;  // for `figure`
};

void draw_identify(UiContext& ui, const IdentifyView& view, const Drafts& drafts, IdentifyState& state, Commands& out);

}  // namespace cotter
