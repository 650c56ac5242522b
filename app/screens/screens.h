// All pages of the app, and which is drawn when. For the app and for tests of screens.
#pragma once

#include "app/command.h"
#include "app/session/session.h"
#include "app/ui/ui.h"

namespace cotter {

// What screens remember from frame to frame; may vanish at any moment without loss.
struct ScreenStates {
    bool help_open = false;
    std::string reason;  // being written for a change after sign-off
    Route shown;         // states of a page end when another is shown
};

void draw_screens(UiContext& ui, const Session& session, ScreenStates& states, Commands& out);

}  // namespace cotter
