// The components that findings name, and on which trailer each exists: nobody is offered a rotor on a drum brake.
// Constant data; any thread.
#pragma once

#include <string_view>

#include "core/trade/point.h"

namespace cotter {

struct Component {
    std::string_view name;  // as findings hold it: "rotor"
    AppliesRule where;      // it may exist where this is not `no`
};
// By name, either spelling; nullptr: a component of the user's own.
[[nodiscard]] const Component* find_component(std::string_view name);

// Whether this component can have this defect at this place. `place` is a corner, or a station that has all of its
// kind. Components and defects that are not in the tables may be anywhere.
[[nodiscard]] bool can_be_found(std::string_view component, std::string_view defect, const Layout& layout,
                                const Place& place);

}  // namespace cotter
