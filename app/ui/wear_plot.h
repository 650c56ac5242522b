// Wear over the way run: what was measured, the limit, and where the line may go. For the summary page.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "app/ui/ui.h"

namespace cotter {

struct WearPoint {
    double way = 0, thickness = 0;
};

struct WearPlotSpec {
    std::span<const WearPoint> points;  // oldest first, two or more
    double limit = 0;
    double end = 0, end_early = 0, end_late = 0;  // the way at which the limit is met, with its uncertainty
    std::string top, bottom;                      // words for the greatest thickness and for the limit
    std::string first, last, ends;                // words for the ways of the first and last point and of the end
};

// Nothing to tap; fewer than two points: nothing is drawn.
void wear_plot(UiContext& ui, const WearPlotSpec& spec);

}  // namespace cotter
