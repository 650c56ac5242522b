// The hand-over page. What goes out: places to mend something, the sign-off, the packet.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/hand_over_view.h"

namespace cotter {

struct HandOverState {
    enum class Ask { none, name_to_sign, name_to_pack };
    Ask ask = Ask::none;  // whose work it is, before what was tapped
    bool signing = false;
    std::string acknowledged;  // the answer that the switch was thrown for
    std::string name;
};

void draw_hand_over(UiContext& ui, const HandOverView& view, HandOverState& state, Commands& out);

}  // namespace cotter
