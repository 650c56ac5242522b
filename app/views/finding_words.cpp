// See finding_words.h.
#include "app/views/finding_words.h"

#include <algorithm>

#include "app/views/finding_table.h"
#include "core/trade/asked.h"
#include "core/trade/components.h"

namespace cotter {

namespace {

constexpr std::size_t kMostUsual = 10;

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

std::vector<FindingWords> usual_findings(Slot slot, const Layout& layout, const Place& place) {
    std::vector<FindingWords> out;
    for (const SlotRow& row : kSlotTable) {
        if (row.slot != shown_slot(slot, place)) continue;
        for (const std::string_view pair : split(row.usual)) {
            const std::size_t colon = pair.find(':');
            const std::size_t equals = pair.rfind('=');
            const FindingWords words{pair.substr(0, colon), pair.substr(colon + 1, equals - colon - 1),
                                     grade_of(pair.back())};
            if (out.size() < kMostUsual && can_be_found(words.component, words.defect, layout, place))
                out.push_back(words);
        }
    }
    return out;
}

std::vector<std::string_view> components_for(Slot slot, const Layout& layout, const Place& place) {
    std::vector<std::string_view> out;
    const auto add = [&](std::string_view component) {
        if (std::find(out.begin(), out.end(), component) == out.end()) out.push_back(component);
    };
    for (const FindingWords& words : usual_findings(slot, layout, place)) add(words.component);
    for (const ComponentRow& row : kComponentTable)
        if (can_be_found(row.component, {}, layout, place)) add(row.component);
    return out;
}

std::vector<std::string_view> defects_of(std::string_view component, const Layout& layout, const Place& place) {
    const ComponentRow* row = row_of(component);
    std::vector<std::string_view> out = split(row != nullptr ? row->defects : kAnyDefects);
    std::erase_if(out, [&](std::string_view defect) { return !can_be_found(component, defect, layout, place); });
    return out;
}

std::vector<std::string_view> remedies_for(std::string_view component) {
    const ComponentRow* row = row_of(component);
    return row != nullptr ? split(row->remedies) : std::vector<std::string_view>{};
}

std::vector<Slot> slots_of(const Layout& layout, const Place& place) {
    std::vector<Slot> out;
    for (const WantedSlot& wanted : slots_wanted(layout, place, Stage::before)) out.push_back(wanted.slot);
    out.insert(out.end(), {Slot::gauge, Slot::other});
    return out;
}

}  // namespace cotter
