// See event_view.h.
#include "app/views/event_view.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace cotter {

namespace {

struct EventWords {
    std::string_view title;
    std::string_view means;
    bool place;
};
// In the order of EventKind.
constexpr std::array kWords{
    EventWords{"It was loaded", "The trip check is due again.", false},
    EventWords{"It was unloaded", "The trip check is due again.", false},
    EventWords{"It was coupled to another vehicle", "The trip check is due again.", false},
    EventWords{"It hit something", "A curb, a dock, a pothole. What was good at that place has to be looked at again.",
               true},
    EventWords{"It was overloaded", "What was good at that place has to be looked at again.", true},
    EventWords{"A brake or hub overheated", "What was good at that place has to be looked at again.", true},
    EventWords{"It was driven since the work", "Torque and leaks are looked at again after the first miles.", false},
};
static_assert(kWords.size() == names(EventKind{}).size());

const EventWords& words_of(EventKind kind) {
    return kWords[static_cast<std::size_t>(kind)];
}

EventRow row_of(const Event& event, SideWords words) {
    EventRow row{event.id, std::string(event_title(event.kind)), {}};
    if (has_place(event.kind)) row.under = place_words(event.place, words) + ". ";
    if (!event.note.empty()) row.under += event.note + ". ";
    row.under += fmt::format("{}, {} {}", event.by, day_words(event.at), clock_words(event.at));
    return row;
}

}  // namespace

std::string_view event_title(EventKind kind) {
    return words_of(kind).title;
}
std::string_view event_means(EventKind kind) {
    return words_of(kind).means;
}
bool has_place(EventKind kind) {
    return words_of(kind).place;
}

EventsView events_view(const Session& session) {
    const Job& job = session.job();
    const SideWords words = session.settings().sides;
    EventsView view;
    view.chrome = chrome_of(session, "What happened to it", trailer_words(job));
    for (const Event& event : job.all<Event>()) view.rows.push_back(row_of(event, words));
    std::reverse(view.rows.begin(), view.rows.end());
    view.places.push_back({Place::at(Station::trailer), "Whole trailer"});
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners())
            if (corner.wheel != Wheel::inner) {
                const Place place = Place::corner(corner.axle, corner.side);
                view.places.push_back({place, place_words(place, words)});
            }
    for (const Station s : {Station::drawbar, Station::frame})
        view.places.push_back({Place::at(s), place_words(Place::at(s), words)});
    return view;
}

}  // namespace cotter
