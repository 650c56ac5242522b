// Whether a product may go into a hub or reservoir, in words ready to show. For the level and bleed pages. Plain
// values.
#pragma once

#include <string>
#include <vector>

#include "app/session/session.h"
#include "core/work/fluid_doubt.h"

namespace cotter {

struct FluidDoubtLine {
    bool must_not = false;  // else it is only not known: ask
    std::string words;      // "DOT 5 and DOT 4 must not mix: …"
    std::string source;
};

// Everything that a level at `place` knows: the axle's hub, this job and the visit before. `but`: the level being
// entered. Empty: nothing known speaks against it.
[[nodiscard]] std::vector<FluidDoubtLine> fluid_doubt_lines(const Session& session, const Place& place,
                                                            std::string_view fluid, std::string_view product,
                                                            const Id<Level>& but);

}  // namespace cotter
