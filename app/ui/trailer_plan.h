// The trailer from above, drawbar up, as one field of targets: corners on their axles, stations where they are.
// For the plan screen.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "app/ui/draw.h"
#include "app/ui/ui.h"
#include "core/survey/words.h"

namespace cotter {

struct PlanTile {
    Name name;
    std::string state;    // "3 photos, 2 findings"
    std::string missing;  // "no torque"; empty: nothing is
    std::optional<Grade> grade;
    Icon icon = Icon::none;
};

struct TrailerPlanSpec {
    std::span<const PlanTile> front;    // on the drawbar, from the coupler back
    std::span<const PlanTile> corners;  // axle by axle, left before right
    std::span<const PlanTile> rear;     // on and behind the deck
    std::vector<bool> duals;            // by axle
};

// Gives the tapped one, counted over front, corners and rear in that order.
std::optional<std::size_t> trailer_plan(UiContext& ui, std::string_view key, const TrailerPlanSpec& spec);

}  // namespace cotter
