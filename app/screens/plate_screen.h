// The plate page. See app/views/plate_view.h.
#pragma once

#include "app/screens/form.h"
#include "app/views/plate_view.h"

namespace cotter {

struct PlateState {
    std::optional<std::size_t> group;  // the one that is open; none: as the route says
    FormState form;
};

void draw_plate(UiContext& ui, const PlateView& view, PlateState& state, Commands& out);

}  // namespace cotter
