// What happened to the trailer. See app/views/event_view.h.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/event_view.h"

namespace cotter {

struct EventState {
    std::optional<EventKind> kind;  // being entered
    std::size_t place = 0;          // of the view's places
    std::string note;
    std::optional<Id<Event>> open;  // its row was tapped
};

void draw_events(UiContext& ui, const EventsView& view, EventState& state, Commands& out);

}  // namespace cotter
