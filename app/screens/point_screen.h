// The pages of what is looked at: the list, and one point. See app/views/point_view.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/command.h"
#include "app/screens/reading_sheets.h"
#include "app/ui/ui.h"
#include "app/views/point_view.h"

namespace cotter {

struct PointsState {
    bool show_good = false;
    bool show_wanted = false;
    bool show_mechanic = false;
    bool show_open = false;
};

struct PointState {
    std::optional<Stage> stage;      // chosen; none: as found
    bool wrong_open = false;         // 'Something is wrong' was tapped: its list is shown
    std::vector<std::string> wrong;  // entries chosen so far
    ReadingState reading;
};

// The rows of readings; a tap opens the keypad.
void draw_point_readings(UiContext& ui, const std::vector<PointReading>& readings, const Drafts& drafts, Commands& out);
void draw_points(UiContext& ui, const PointsView& view, PointsState& state, Commands& out);
void draw_point(UiContext& ui, const PointView& view, PointState& state, Commands& out);

}  // namespace cotter
