// What speaks against putting a product into a hub or reservoir: it is for another kind, or it would meet something it
// must not mix with. For the level and bleed screens. Pure; any thread.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/work/fluid.h"

namespace cotter {

// A product known to be in there, and how it is known.
struct FluidMet {
    std::string product;
    std::string how;  // "put in while bleeding", "recorded at the last visit"
};

// What this job and the visit before say is in there, newest first, each product once. `fluid`: "hub oil" or "brake
// fluid". The level `but` is left out: it is the one being entered. `last`: nullptr when there was no visit.
[[nodiscard]] std::vector<FluidMet> fluids_met(const Job& job, const Job* last, const Place& place,
                                               std::string_view fluid, const Id<Level>& but);

struct FluidDoubt {
    Mixing mixing = Mixing::unknown;  // never `may`
    std::string words;
    std::string source;
};

// `hub`: which kind the product goes into; none: a brake reservoir. Empty: nothing known speaks against it. A product
// that nobody knows is a doubt of its own, told once.
[[nodiscard]] std::vector<FluidDoubt> doubts_about(const FluidTable& table, std::string_view product,
                                                   std::optional<HubKind> hub, std::span<const FluidMet> met);

}  // namespace cotter
