// Asks where a photo belongs: big targets for the corners, chips for stations and slots. For the photo and intake
// pages.
#pragma once

#include <optional>

#include "app/ui/ui.h"
#include "app/views/shot_place_view.h"

namespace cotter {

struct ShotPlaceAnswer {
    std::optional<Place> place;
    std::optional<Slot> slot;
    std::optional<Stage> stage;
};

// The corners and stations alone. Gives the tapped one.
std::optional<Place> draw_places(UiContext& ui, const ShotPlaceView& view);

ShotPlaceAnswer draw_shot_place(UiContext& ui, const ShotPlaceView& view);

}  // namespace cotter
