// See slots_wanted.h.
#include "app/views/slots_wanted.h"

namespace cotter {

namespace {

using enum Slot;

void add_brake(std::vector<Slot>& out, BrakeKind brake) {
    switch (brake) {
        case BrakeKind::hydraulic_disc:
            out.insert(out.end(), {caliper, lining, rotor_face, rotor_edge, guide_pin, hose_line});
            break;
        case BrakeKind::hydraulic_drum:
            out.insert(out.end(), {Slot::brake, lining, hose_line});
            break;
        case BrakeKind::electric_drum:
            out.insert(out.end(), {Slot::brake, lining, wiring});
            break;
        case BrakeKind::none:
            break;
        default:
            out.push_back(Slot::brake);
            break;
    }
}

std::vector<Slot> corner_slots(const Trailer* trailer, const Place& place, Stage stage) {
    std::vector<Slot> out{wheel_on, nuts, cap};
    if (stage == Stage::after) return out;
    out.insert(out.end(), {tread, sidewall});
    if (trailer != nullptr && trailer->has(place))
        add_brake(out, trailer->axles[static_cast<std::size_t>(place.axle - 1)].brake);
    out.insert(out.end(), {bearing, spindle, seal_side});
    return out;
}

}  // namespace

std::vector<Slot> slots_wanted(const Trailer* trailer, const Place& place, Stage stage) {
    if (place.is_corner()) return corner_slots(trailer, place, stage);
    switch (place.station) {
        case Station::drawbar:
            return {coupler, chains, wiring};
        case Station::actuator:
            return {whole, reservoir, hose_line, wiring};
        case Station::frame:
            return {springs, whole};
        case Station::lights:
            return {wiring, whole};
        case Station::trailer:
            break;
    }
    return {whole, data_plate};
}

}  // namespace cotter
