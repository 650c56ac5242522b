// The window of a hub cap or a reservoir with its line: tapped where the fluid stands. For the level page.
#pragma once

#include <optional>
#include <string_view>

#include "app/ui/ui.h"
#include "core/survey/words.h"

namespace cotter {

struct LevelGlassSpec {
    std::string title;  // "Before"
    bool round = true;  // a cap's window; else a reservoir
    std::optional<LevelMark> mark;
};

// Four bands from above the line to empty, each a target labelled "Before: at the line". Gives the tapped one.
std::optional<LevelMark> level_glass(UiContext& ui, std::string_view key, const LevelGlassSpec& spec);

}  // namespace cotter
