// A fluid level: before, added, settling, after. What goes out: the level at each tap, the running timer as a draft.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/level_view.h"

namespace cotter {

struct LevelState {
    std::optional<KeypadModel> pad;  // the amount added
    bool ask_product = false;
    std::string product_before;  // when its sheet was opened
    bool ask_why = false;
};

void draw_level(UiContext& ui, const LevelView& view, LevelState& state, Commands& out);

}  // namespace cotter
