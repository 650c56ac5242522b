// What every screen does alike: its header, the answers to it. For screens.
#pragma once

#include "app/command.h"
#include "app/ui/screen.h"
#include "app/views/chrome.h"

namespace cotter {

// The screen's frame from the view's words; `key` names the kind of screen and its record.
[[nodiscard]] ScreenSpec screen_of(const Chrome& chrome, std::string_view key, std::vector<ActionSpec> actions = {},
                                   bool back = true);

// Back, undo, help and the toast's answer as commands.
void answer_chrome(const ScreenAnswer& answer, Commands& out);

}  // namespace cotter
