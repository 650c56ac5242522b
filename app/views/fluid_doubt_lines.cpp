// See fluid_doubt_lines.h.
#include "app/views/fluid_doubt_lines.h"

#include "app/views/chrome.h"

namespace cotter {

namespace {

std::optional<HubKind> hub_at(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr || !place.is_corner() || !trailer->has(place)) return std::nullopt;
    return trailer->axles[static_cast<std::size_t>(place.axle) - 1].hub;
}

}  // namespace

std::vector<FluidDoubtLine> fluid_doubt_lines(const Session& session, const Place& place, std::string_view fluid,
                                              std::string_view product, const Id<Level>& but) {
    const Job& job = session.job();
    const auto hub = hub_at(job, place);
    if (place.is_corner() && !hub) return {};  // a hub whose kind nobody entered
    const auto met = fluids_met(job, session.last_visit(), place, fluid, but);
    std::vector<FluidDoubtLine> out;
    for (FluidDoubt& d : doubts_about(session.fluids(), product, hub, met))
        out.push_back({d.mixing == Mixing::must_not, upper_first(d.words) + ".", upper_first(d.source) + "."});
    return out;
}

}  // namespace cotter
