// The hand-over page. What goes out: places to mend something, the sign-off, the packet.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/hand_over_view.h"

namespace cotter {

struct HandOverState {
    bool signing = false;
    std::string name;
};

void draw_hand_over(UiContext& ui, const HandOverView& view, HandOverState& state, Commands& out);

}  // namespace cotter
