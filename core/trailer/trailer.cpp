// The trailer's layout.
#include "core/trailer/trailer.h"

namespace cotter {

bool is_air(BrakeKind brake) {
    return brake == BrakeKind::air_untyped || brake == BrakeKind::air_cam || brake == BrakeKind::air_wedge ||
           brake == BrakeKind::air_disc;
}

bool is_hydraulic(BrakeKind brake) {
    return brake == BrakeKind::hydraulic_disc || brake == BrakeKind::hydraulic_drum;
}

bool is_braked(BrakeKind brake) {
    return brake != BrakeKind::none;
}

bool Trailer::has(const Place& place) const {
    if (!place.is_corner()) return true;
    if (place.axle > static_cast<int>(axles.size())) return false;
    return place.wheel == Wheel::only || axles[static_cast<std::size_t>(place.axle - 1)].wheels == Wheels::dual;
}

std::vector<Place> Trailer::corners() const {
    std::vector<Place> out;
    for (int axle = 1; axle <= static_cast<int>(axles.size()); ++axle)
        for (const Side side : {Side::left, Side::right}) out.push_back(Place::corner(axle, side));
    return out;
}

}  // namespace cotter
