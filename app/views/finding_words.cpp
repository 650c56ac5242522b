// See finding_words.h.
#include "app/views/finding_words.h"

#include <algorithm>

#include "app/views/finding_table.h"

namespace cotter {

namespace {

std::vector<std::string_view> split(std::string_view list) {
    std::vector<std::string_view> out;
    while (!list.empty()) {
        const std::size_t end = list.find('|');
        out.push_back(list.substr(0, end));
        list = end == std::string_view::npos ? std::string_view{} : list.substr(end + 1);
    }
    return out;
}

// A photo of nothing in particular shows what its place has.
Slot shown_slot(Slot slot, const Place& place) {
    if (slot != Slot::other && slot != Slot::gauge) return slot;
    if (place.is_corner()) return Slot::wheel_on;
    switch (place.station) {
        case Station::drawbar:
            return Slot::coupler;
        case Station::actuator:
            return Slot::reservoir;
        case Station::frame:
            return Slot::springs;
        case Station::lights:
            return Slot::wiring;
        case Station::trailer:
            break;
    }
    return Slot::whole;
}

const ComponentRow* row_of(std::string_view component) {
    for (const ComponentRow& row : kComponentTable)
        if (row.component == component) return &row;
    return nullptr;
}

Grade grade_of(char letter) {
    switch (letter) {
        case 's':
            return Grade::serviceable;
        case 'r':
            return Grade::repair;
        case 'd':
            return Grade::do_not_tow;
        default:
            return Grade::watch;
    }
}

}  // namespace

std::vector<FindingWords> usual_findings(Slot slot, const Place& place) {
    std::vector<FindingWords> out;
    for (const SlotRow& row : kSlotTable) {
        if (row.slot != shown_slot(slot, place)) continue;
        for (const std::string_view pair : split(row.usual)) {
            const std::size_t colon = pair.find(':');
            const std::size_t equals = pair.rfind('=');
            out.push_back({pair.substr(0, colon), pair.substr(colon + 1, equals - colon - 1), grade_of(pair.back())});
        }
    }
    return out;
}

std::vector<std::string_view> components_for(Slot slot, const Place& place) {
    std::vector<std::string_view> out;
    const auto add = [&](std::string_view component) {
        if (std::find(out.begin(), out.end(), component) == out.end()) out.push_back(component);
    };
    for (const FindingWords& words : usual_findings(slot, place)) add(words.component);
    for (const ComponentRow& row : kComponentTable) add(row.component);
    return out;
}

std::vector<std::string_view> defects_of(std::string_view component) {
    const ComponentRow* row = row_of(component);
    return split(row != nullptr ? row->defects : kAnyDefects);
}

std::vector<std::string_view> remedies_for(std::string_view component) {
    const ComponentRow* row = row_of(component);
    return row != nullptr ? split(row->remedies) : std::vector<std::string_view>{};
}

std::vector<Slot> slots_of(const Place& place) {
    if (place.is_corner())
        return {Slot::wheel_on,  Slot::cap,      Slot::brake,     Slot::rotor_face, Slot::rotor_edge, Slot::lining,
                Slot::guide_pin, Slot::caliper,  Slot::bearing,   Slot::spindle,    Slot::seal_side,  Slot::nuts,
                Slot::tread,     Slot::sidewall, Slot::hose_line, Slot::gauge,      Slot::other};
    switch (place.station) {
        case Station::drawbar:
            return {Slot::coupler, Slot::chains, Slot::wiring, Slot::gauge, Slot::other};
        case Station::actuator:
            return {Slot::reservoir, Slot::hose_line, Slot::wiring, Slot::gauge, Slot::other};
        case Station::frame:
            return {Slot::springs, Slot::hose_line, Slot::gauge, Slot::other};
        case Station::lights:
            return {Slot::wiring, Slot::other};
        case Station::trailer:
            break;
    }
    return {Slot::whole, Slot::data_plate, Slot::other};
}

}  // namespace cotter
