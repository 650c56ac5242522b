// The keypad for measured values: big keys of our own, drawn in a sheet over the screen. For screens.
#pragma once

#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"

namespace cotter {

// `noted`: the note's own action was tapped.
enum class KeypadAnswer { none, done, removed, closed, noted };

// What stands below the value: how good it is, and its limit.
struct KeypadNote {
    std::optional<Grade> grade;
    std::string text;    // empty: nothing
    std::string action;  // empty: none
};

// Draws the keypad over the screen and lets it change `model`. `done` only when model.complete(); what was keyed is
// in the model then. `removed`: what is kept is to go. `closed`: the user went away from it.
KeypadAnswer keypad_sheet(UiContext& ui, std::string_view key, KeypadModel& model, const KeypadNote& note = {});

}  // namespace cotter
