// The plate page: what the trailer is, who uses it and what tows it. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"
#include "app/views/plate_fields.h"

namespace cotter {

struct PlateGroup {
    std::string title;
    std::vector<FormRow> rows;
    std::size_t axle = 0;  // counted from 1; 0: of no axle
};

struct PlateView {
    Chrome chrome;
    PlateData data;
    std::vector<PlateGroup> groups;
    std::string tally;       // "12 of 31 entered, 2 not known"
    std::string plate_shot;  // the data plate's photo: its SHA-256; empty: none
    std::string plate_shot_id;
    std::size_t first = 0;   // the group that the route asks for
    std::size_t events = 0;  // entered of what happened to it
    Drafts drafts;
};

// By the route: its record names a field ("gawr 2"); empty: from the top.
[[nodiscard]] PlateView plate_view(const Session& session);

}  // namespace cotter
