// The report's words.
#include "core/report/say.h"

#include <cstdlib>

#include <fmt/format.h>

namespace cotter {

namespace {

std::string station_name(Station station) {
    switch (station) {
        case Station::drawbar:
            return "Drawbar";
        case Station::actuator:
            return "Actuator";
        case Station::frame:
            return "Frame and springs";
        case Station::lights:
            return "Lights and wiring";
        case Station::trailer:
            break;
    }
    return "Whole trailer";
}

}  // namespace

std::string place_name(const Place& place) {
    if (!place.is_corner()) return station_name(place.station);
    const std::string corner = fmt::format("Axle {} {}", place.axle, name_of(place.side));
    return place.wheel == Wheel::only ? corner : fmt::format("{}, {} wheel", corner, name_of(place.wheel));
}

std::string without_codes(std::string text) {
    for (const Wheel wheel : {Wheel::inner, Wheel::outer, Wheel::only})  // the longer codes first
        for (int axle = 1; axle <= 4; ++axle)
            for (const Side side : {Side::left, Side::right}) {
                const Place place = Place::corner(axle, side, wheel);
                const std::string code = place.text();
                std::string words = place_name(place);
                words[0] = 'a';
                for (auto at = text.find(code); at != std::string::npos; at = text.find(code, at + words.size()))
                    text.replace(at, code.size(), words);
            }
    return text;
}

Place without_wheel(Place place) {
    place.wheel = Wheel::only;
    return place;
}

std::string local_time_text(Instant at) {
    const auto wall = at.wall();
    return fmt::format("{} {:02}:{:02}", wall.date.text(), wall.hour, wall.minute);
}

std::string offset_text(int offset_min) {
    const int away = std::abs(offset_min);
    return fmt::format("{}{:02}:{:02}", offset_min < 0 ? "−" : "+", away / 60, away % 60);
}

std::string time_text(Instant at) {
    return local_time_text(at) + " " + offset_text(at.offset_min);
}

std::string grade_text(Grade grade) {
    return capital(name_of(grade));
}

std::string capital(std::string_view text) {
    std::string out(text);
    if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') out[0] = static_cast<char>(out[0] - 'a' + 'A');
    return out;
}

std::string amount_text(const std::optional<Amount>& amount) {
    return amount ? amount->text() : std::string();
}

std::string unit_label(const std::string& ucum) {
    const Unit* unit = find_unit(ucum);
    return unit == nullptr ? ucum : std::string(unit->label);
}

std::string count_text(std::size_t count, std::string_view one) {
    if (count == 0) return fmt::format("no {}", one);
    return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

std::string joined(std::initializer_list<std::string_view> parts, std::string_view between) {
    std::string out;
    for (const auto part : parts) {
        if (part.empty()) continue;
        if (!out.empty()) out += between;
        out += part;
    }
    return out;
}

}  // namespace cotter
