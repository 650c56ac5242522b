// The keypad for measured values: big keys of our own, drawn in a sheet over the screen. For screens.
#pragma once

#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"

namespace cotter {

enum class KeypadAnswer { none, done, removed, closed };

// Draws the keypad over the screen and lets it change `model`. `done` only when model.complete(); what was keyed is
// in the model then. `removed`: what is kept is to go. `closed`: the user went away from it.
KeypadAnswer keypad_sheet(UiContext& ui, std::string_view key, KeypadModel& model);

}  // namespace cotter
