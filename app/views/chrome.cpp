// See chrome.h.
#include "app/views/chrome.h"

#include <fmt/format.h>

namespace cotter {

Chrome chrome_of(const Session& session, std::string title, std::string under) {
    Chrome out;
    out.title = std::move(title);
    out.under = std::move(under);
    out.has_job = session.has_job();
    out.undo_enabled = session.can_undo();
    out.can_redo = session.has_job() && session.can_redo();
    const std::string& trouble = session.not_saved().empty() ? session.keeping_trouble() : session.not_saved();
    if (!trouble.empty()) {
        out.saved = "not saved: " + trouble;
        out.saved_ok = false;
    } else if (!session.at_rest()) {
        out.saved = "being saved";
        out.saved_ok = false;
    } else if (session.saved_at()) {
        out.saved = "saved " + clock_words(*session.saved_at());
    }
    if (session.notice()) {
        out.toast = upper_first(session.notice()->text);
        out.toast_undo = session.notice()->can_undo;
    }
    return out;
}

std::string side_words(Side side, SideWords words) {
    const bool left = side == Side::left;
    switch (words) {
        case SideWords::roadside_curbside:
            return left ? "roadside" : "curbside";
        case SideWords::nearside_offside:  // traffic keeps left where these words are used
            return left ? "nearside" : "offside";
        case SideWords::left_right:
            break;
    }
    return left ? "left" : "right";
}

std::string place_words(const Place& place, SideWords words) {
    if (!place.is_corner()) {
        constexpr std::array kStations{"Whole trailer", "Drawbar", "Actuator", "Frame and springs",
                                       "Lights and wiring"};
        return kStations[static_cast<std::size_t>(place.station)];
    }
    std::string out = fmt::format("Axle {}, {}", place.axle, side_words(place.side, words));
    if (place.wheel == Wheel::inner) out += ", inner wheel";
    if (place.wheel == Wheel::outer) out += ", outer wheel";
    return out;
}

std::string trailer_words(const Job& job) {
    const Trailer* t = job.only<Trailer>();
    if (t == nullptr) return "New trailer";
    for (const std::string* name : {&t->unit, &t->plate, &t->vin, &t->kind})
        if (!name->empty()) return *name;
    return "New trailer";
}

std::string clock_words(const Instant& at) {
    const auto wall = at.wall();
    return fmt::format("{:02}:{:02}", wall.hour, wall.minute);
}
std::string day_words(const Instant& at) {
    return at.local_date().text();
}

std::string upper_first(std::string_view text) {
    std::string out(text);
    if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') out[0] = static_cast<char>(out[0] - 'a' + 'A');
    return out;
}

std::string count_words(std::size_t n, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", n, n == 1 ? one : many);
}

}  // namespace cotter
