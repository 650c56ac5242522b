// Place codes.
#include "core/trailer/place.h"

#include <fmt/format.h>

namespace cotter {

std::string Place::text() const {
    if (!is_corner()) return std::string(name_of(station));
    const std::string corner = fmt::format("axle{}-{}", axle, name_of(side));
    return wheel == Wheel::only ? corner : fmt::format("{}-{}", corner, name_of(wheel));
}

Result<Place> Place::parse(std::string_view code) {
    for (int axle = 1; axle <= 4; ++axle)
        for (const Side side : {Side::left, Side::right})
            for (const Wheel wheel : {Wheel::only, Wheel::inner, Wheel::outer})
                if (const Place p = corner(axle, side, wheel); p.text() == code) return p;
    if (const auto station = from_name<Station>(code)) return at(*station);
    return fail(Errc::refused, "not a place on a trailer", fmt::format("'{}'", code),
                "write it like axle1-left, axle2-right-inner, drawbar, actuator, frame, lights or trailer");
}

}  // namespace cotter
