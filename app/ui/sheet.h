// A sheet that lies over the screen from below: one question, a keypad, help. For screens.
#pragma once

#include "app/ui/screen.h"

namespace cotter {

struct SheetSpec {
    std::string key;
    std::string title;
    std::vector<ActionSpec> actions;  // the main one last
};

struct SheetAnswer {
    bool closed = false;                // by its button or the system's back key
    std::optional<std::size_t> action;  // which one was tapped
};

// Drawn after the screen, in each frame in which it is open. As high as its content, at most the screen; then it
// scrolls. What lies below takes no input. A tap beside the sheet does nothing: gloves slip.
SheetAnswer sheet(UiContext& ui, const SheetSpec& spec, const Body& body);

}  // namespace cotter
