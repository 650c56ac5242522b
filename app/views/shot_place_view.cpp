// See shot_place_view.h.
#include "app/views/shot_place_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/finding_words.h"
#include "app/views/plan_view.h"

namespace cotter {

namespace {

SlotChoice slot_choice(const Job& job, const Place& place, Slot slot, Stage stage) {
    const auto& shots = job.all<Shot>();
    const auto count = std::count_if(shots.begin(), shots.end(), [&](const Shot& s) {
        return at_place(s.place, place) && s.slot == slot && s.stage == stage;
    });
    SlotChoice out;
    out.slot = slot;
    out.label = upper_first(name_of(slot));
    if (count > 0) out.label += fmt::format(" ({})", count);
    return out;
}

}  // namespace

ShotPlaceView shot_place_view(const Session& session, const std::optional<Place>& place,
                              const std::optional<Slot>& slot, Stage stage) {
    const Job& job = session.job();
    const SideWords words = session.settings().sides;
    ShotPlaceView view;
    view.stage = stage;
    const auto add = [&](std::vector<PlaceChoice>& out, const Place& p) {
        out.push_back({p, place_words(p, words), place && at_place(*place, p)});
    };
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners())
            if (corner.wheel != Wheel::inner) add(view.corners, Place::corner(corner.axle, corner.side));
    for (const Station s : {Station::drawbar, Station::actuator, Station::frame, Station::lights, Station::trailer})
        add(view.stations, Place::at(s));
    if (!place) return view;
    for (const Slot s : slots_of(layout_of(job), *place)) {
        view.slots.push_back(slot_choice(job, *place, s, stage));
        view.slots.back().chosen = slot == s;
    }
    return view;
}

}  // namespace cotter
