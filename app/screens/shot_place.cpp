// See shot_place.h.
#include "app/screens/shot_place.h"

#include "app/ui/widgets.h"

namespace cotter {

namespace {

std::optional<Place> corner_tiles(UiContext& ui, const std::vector<PlaceChoice>& corners) {
    std::vector<std::string> keys;
    for (const PlaceChoice& c : corners) keys.push_back(c.place.text());
    std::vector<TileSpec> tiles_of;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        TileSpec tile;
        tile.name = {corners[i].label, keys[i]};
        tile.chosen = corners[i].chosen;
        tiles_of.push_back(tile);
    }
    const auto tapped = tiles(ui, "corners", tiles_of);
    return tapped ? std::optional(corners[*tapped].place) : std::nullopt;
}

std::optional<Place> station_chips(UiContext& ui, const std::vector<PlaceChoice>& stations) {
    std::vector<std::string> keys;
    for (const PlaceChoice& c : stations) keys.push_back(c.place.text());
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < stations.size(); ++i)
        specs.push_back({{stations[i].label, keys[i]}, stations[i].chosen, true, {}});
    const auto tapped = chips(ui, "stations", specs);
    return tapped ? std::optional(stations[*tapped].place) : std::nullopt;
}

}  // namespace

std::optional<Place> draw_places(UiContext& ui, const ShotPlaceView& view) {
    std::optional<Place> tapped;
    if (!view.corners.empty()) tapped = corner_tiles(ui, view.corners);
    if (const auto station = station_chips(ui, view.stations)) tapped = station;
    return tapped;
}

ShotPlaceAnswer draw_shot_place(UiContext& ui, const ShotPlaceView& view) {
    ShotPlaceAnswer answer;
    const std::array stages{ChipSpec{{"Before the work", "before"}, view.stage == Stage::before, true, {}},
                            ChipSpec{{"After the work", "after"}, view.stage == Stage::after, true, {}}};
    if (const auto tapped = one_of(ui, "stage", stages)) answer.stage = *tapped == 0 ? Stage::before : Stage::after;
    answer.place = draw_places(ui, view);
    if (view.slots.empty()) return answer;
    heading(ui, "What does it show?");
    std::vector<ChipSpec> slots;
    for (const SlotChoice& s : view.slots) slots.push_back({{s.label, name_of(s.slot)}, s.chosen, true, {}});
    if (const auto tapped = chips(ui, "slots", slots)) answer.slot = view.slots[*tapped].slot;
    return answer;
}

}  // namespace cotter
