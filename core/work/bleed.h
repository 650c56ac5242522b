// The order in which corners are bled, from the pipes as they really run, and the count of what was drawn.
// For the bleed screen and the report. Pure; any thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/survey/job.h"
#include "core/survey/work_records.h"

namespace cotter {

// One corner in the order of bleeding.
struct BleedStop {
    Place place;
    double path = 0;    // m of pipe from the actuator
    double volume = 0;  // m³ in that pipe; 0 when a bore on the way is not known
    std::string words;  // "axle2-right: 9.4 m from the actuator, first because it is farthest"
};

// Longest path first; of equals the rear one first, then the right one. The maker's order goes before it. Refused, with
// the leg named: no leg, a length that is none, a leg that leads back, a piece with two feeds, a corner that the
// trailer does not have or that has no pipe, ends that are no corner.
[[nodiscard]] Result<std::vector<BleedStop>> bleed_order(const PipeRoute& route, const Trailer& trailer);

// What all pipes hold together, m³; nullopt when there is none or a bore is not known.
[[nodiscard]] std::optional<double> pipe_volume(const PipeRoute& route);

// What was drawn at one corner in all rounds.
struct BleedTally {
    Place place;
    int rounds = 0;
    double drawn = 0;    // m³
    bool clean = false;  // the last round ran clear and without bubbles
};
[[nodiscard]] std::vector<BleedTally> bleed_tallies(const Job& job);  // in the order the corners were first bled

// What speaks against the bleeding being done: corners left out, not clean, another order than `order`. The order is
// listed, never refused: the maker's may be another.
struct BleedRemark {
    bool blocks = true;
    std::string words;
};
[[nodiscard]] std::vector<BleedRemark> check_bleeding(const Job& job, const std::vector<BleedStop>& order);

}  // namespace cotter
