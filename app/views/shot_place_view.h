// Where a shot belongs: the corners and stations, the slots of the chosen one, before or after. For the photo and
// intake pages. Plain values; no ImGui.
#pragma once

#include "app/views/chrome.h"

namespace cotter {

struct PlaceChoice {
    Place place;
    std::string label;
    bool chosen = false;
};

struct SlotChoice {
    Slot slot = Slot::other;
    std::string label;  // "Rotor face", "Rotor face (2)" when it has photos at this stage
    bool chosen = false;
};

struct ShotPlaceView {
    std::vector<PlaceChoice> corners, stations;
    std::vector<SlotChoice> slots;  // of the chosen place; empty when none is
    Stage stage = Stage::before;
};

// `place`: the one chosen so far; `slot`: the one that the shot is in already.
[[nodiscard]] ShotPlaceView shot_place_view(const Session& session, const std::optional<Place>& place,
                                            const std::optional<Slot>& slot, Stage stage);

}  // namespace cotter
