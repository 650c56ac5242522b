// The window of the desktop, and its loop. The main thread.
#pragma once

#include <string>

#include "app/ui/ui_stage.h"

namespace cotter {

struct WindowSpec {
    std::string title = "Cotter";
    int width = 412, height = 915;  // dp, at first
    float zoom = 0;                 // window units to a dp; 0: as the display's density asks for
};

// Shows what `make` makes until the window is closed. Draws only when the stage's pacer says so.
// Fails `io` when there is no display.
[[nodiscard]] Result<> run_window(const WindowSpec& spec, FontFiles fonts, const MakeApp& make);

}  // namespace cotter
