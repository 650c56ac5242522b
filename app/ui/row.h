// Rows of a list, plain facts, and tiles in a grid. For screens.
#pragma once

#include <optional>
#include <span>

#include "app/ui/draw.h"
#include "app/ui/ui.h"
#include "core/base/sign.h"
#include "core/survey/words.h"

namespace cotter {

struct RowSpec {
    std::string under;  // a second line
    std::string value;  // on the right, or below when there is no room
    std::optional<Grade> grade;
    Icon icon = Icon::none;  // on the left, where there is no sign
    bool leads_on = true;    // shows the arrow
    bool chosen = false;
    bool enabled = true;
    std::optional<Sign> answer = std::nullopt;  // about towing, in a grade's place
};

// True when it was tapped.
bool row(UiContext& ui, const Name& name, const RowSpec& spec = {});

// A label with what it is, nothing to tap: "Axles  2, 3,200 kg each".
void fact(UiContext& ui, std::string_view label, std::string_view value);

struct TileSpec {
    Name name;
    std::string under;
    std::string picture;  // its id; empty: none
    std::optional<Grade> grade;
    Icon icon = Icon::none;  // in the picture's place while there is none
    bool chosen = false;
    bool enabled = true;
};

// As many beside each other as are `least_width` dp wide or wider, all of a row equally high. Gives the tapped one.
std::optional<std::size_t> tiles(UiContext& ui, std::string_view key, std::span<const TileSpec> specs,
                                 float least_width = 150);

}  // namespace cotter
