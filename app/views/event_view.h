// What happened to the trailer: what ends answers that were good. Plain values; no ImGui.
#pragma once

#include <string>
#include <vector>

#include "app/views/chrome.h"

namespace cotter {

struct EventRow {
    Id<Event> id;
    std::string title;  // "It hit something"
    std::string under;  // where, what was said of it, when
};

struct EventPlace {
    Place place;
    std::string label;
};

struct EventsView {
    Chrome chrome;
    std::vector<EventRow> rows;  // newest first
    std::vector<EventPlace> places;
};

[[nodiscard]] EventsView events_view(const Session& session);

[[nodiscard]] std::string_view event_title(EventKind kind);
// What it ends, in one line.
[[nodiscard]] std::string_view event_means(EventKind kind);
// Does it concern one place rather than all of the trailer?
[[nodiscard]] bool has_place(EventKind kind);

}  // namespace cotter
