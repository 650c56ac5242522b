// Bleeding: the brake pipes as they run, the order that follows from them, and what was drawn at each corner.
// Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/views/chrome.h"
#include "app/views/fluid_doubt_lines.h"
#include "core/work/bleed.h"

namespace cotter {

// An end of a pipe: its code in the record, and how screens call it.
struct PipeEnd {
    std::string code;   // "actuator", "tee 1", "axle1-left"
    std::string label;  // "Axle 1, left"
};

struct LegRow {
    std::string label;  // "Actuator to tee 1"
    std::string value;  // "4.20 m"
    std::string bore;   // "0.190 in inside"; empty: not known
};

struct BleedRow {
    Place place;
    std::string label;  // "1 Axle 2, right"
    std::string value;  // "160 mL in 2 rounds", "not yet"
    std::string under;  // why it is here in the order, how it ran last
    bool clean = false;
};

// One round that was counted.
struct RoundRow {
    Id<BleedCount> id;
    std::string label;  // "Axle 2, right"
    std::string value;  // "160 mL"
    std::string under;  // "clear, still bubbles, DOT 4, 14:05"
};

struct BleedView {
    Chrome chrome;
    PipeRoute route;                // a nil id: not in the job yet
    std::vector<LegRow> legs;       // as in the route
    std::vector<PipeEnd> from, to;  // that a further pipe may have; no `to`: every corner is reached
    std::vector<BleedRow> order;    // empty: `no_order` says why
    std::string no_order;
    std::vector<RoundRow> rounds;  // as they were counted, the last one first
    std::vector<BleedRemark> remarks;
    bool done = false;                                // every corner has run clear, as the order wants
    std::optional<std::size_t> next;                  // in the order
    std::string holds;                                // what the pipes hold and a flush takes, or why it is not known
    std::string fluid;                                // of the last count
    std::vector<std::string> fluids;                  // named before in this job
    std::vector<std::vector<FluidDoubtLine>> doubts;  // about each of them
    Drafts drafts;
};

[[nodiscard]] BleedView bleed_view(const Session& session);

}  // namespace cotter
