// Which trailer is it: names, numbers, and the layout of its axles. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"

namespace cotter {

struct IdentifyView {
    Chrome chrome;
    Trailer trailer;           // as recorded; a nil id while nothing is
    Visit visit;               // as recorded
    bool axles_fixed = false;  // records lie on its corners: the number of axles stays
    bool same_axles = true;    // all axles are alike: they are chosen together
    std::string vin;           // as typed, or as recorded
    std::string vin_note;      // what is wrong with it; empty: nothing, or there is none
    std::string plate_shot;    // SHA-256 of the data plate's photo; empty: none
    std::string plate_shot_id;
};

[[nodiscard]] IdentifyView identify_view(const Session& session);

// The trailer with `count` axles: new ones like the last one there.
[[nodiscard]] Trailer with_axles(Trailer trailer, std::size_t count);

}  // namespace cotter
