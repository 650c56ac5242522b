// Where on a trailer something is: a corner (one wheel end), a station, or the trailer as a whole.
#pragma once

#include <compare>
#include <string>
#include <string_view>

#include "core/base/error.h"
#include "core/base/fields.h"

namespace cotter {

enum class Side { left, right };  // seen in the direction of travel
constexpr auto names(Side) {
    return name_list("left", "right");
}

enum class Wheel { only, inner, outer };  // `only`: the corner, or its single wheel
constexpr auto names(Wheel) {
    return name_list("only", "inner", "outer");
}

enum class Station { trailer, drawbar, actuator, frame, lights };  // `trailer`: all of it
constexpr auto names(Station) {
    return name_list("trailer", "drawbar", "actuator", "frame", "lights");
}

struct Place {
    int axle = 0;  // 1…4 counted from the front; 0: not a corner, see `station`
    Side side = Side::left;
    Wheel wheel = Wheel::only;
    Station station = Station::trailer;

    auto operator<=>(const Place&) const = default;
    [[nodiscard]] bool is_corner() const { return axle > 0; }
    // Its code in data and file names: "axle1-left", "axle2-right-inner", "actuator".
    [[nodiscard]] std::string text() const;
    [[nodiscard]] static Result<Place> parse(std::string_view code);
    [[nodiscard]] static Place corner(int axle, Side side, Wheel wheel = Wheel::only) {
        return {axle, side, wheel, {}};
    }
    [[nodiscard]] static Place at(Station station) { return {0, {}, {}, station}; }
};

}  // namespace cotter
