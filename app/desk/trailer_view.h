// A trailer's life as its page shows it, and two of its visits beside each other. Plain values; no ImGui.
#pragma once

#include <set>

#include "app/desk/desk_command.h"
#include "app/desk/list.h"

namespace cotter::desk {

// One point of wear over the visits, ready to be plotted.
struct Wear {
    std::string title;   // "Axle 1, left: pad thickness, inner"
    std::string says;    // the forecast, or why it cannot be told
    std::string source;  // the limit and who says so
    struct Point {
        double way = 0, thickness = 0;
    };
    std::vector<Point> points;  // oldest first
    double limit = 0;
    double end = 0, end_early = 0, end_late = 0;  // the way at which the limit is met
    bool told = false;                            // there is a forecast to plot
    std::string top, bottom, first, last, ends;   // the drawing's words
};

struct PhotoPair {
    std::string key;
    std::string title;          // "Axle 1, left: wheel on, 2026-05-14"
    std::string before, after;  // photos in the vault
};

struct Trailer {
    std::string title, under;           // "NUR-07", what kind it is and who made it
    std::vector<std::string> facts;     // a line each
    std::optional<TowOutcome> outcome;  // about towing it now
    std::string towing;                 // all of that, in words
    Part part = Part::visits;
    List visits, torques, findings, changes, costs, packets;
    std::string eased;  // the gravest grade that a later revision made less severe, in a sentence; empty: none
    std::vector<Wear> wear;
    std::vector<PhotoPair> pairs;
    std::vector<std::string> cost_lines;           // totals, and by the distance
    std::vector<ledger::PacketLine> packet_lines;  // what may be decided about

    std::set<std::string> flagged_jobs;  // whose packet in view is signed by a doubtful key

    [[nodiscard]] const ledger::PacketLine* packet(const std::string& fingerprint) const;
    // A flagged packet that nobody has accepted yet.
    [[nodiscard]] bool doubtful(const ledger::PacketLine& packet) const;
};
[[nodiscard]] Trailer trailer_view(const ledger::TrailerPage& page);

struct Compared {
    std::string title, under;
    List readings, findings;
};
[[nodiscard]] Compared compared_view(const ledger::Comparison& comparison);

}  // namespace cotter::desk
