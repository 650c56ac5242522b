// The tightening of one joint: the circle, the pass, the next nut, the maker's figure, the wrench, and what differs
// from the plan. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"
#include "core/work/torque_progress.h"

namespace cotter {

// A stage of the plan, to be begun by a tap.
struct StageChoice {
    Amount at_nut;
    std::string label;  // "60 lb-ft", "check 120 lb-ft"; at the nut
    bool done = false;  // all have clicked
    bool now = false;   // the running pass
};

struct WrenchChoice {
    std::string id;
    std::string label;  // "T-3, calibrated 2026-01-10"
    std::optional<Date> calibrated;
    bool chosen = false;
};

// A figure of a like wheel, to be taken over by one tap.
struct LentFigure {
    Torque torque;       // as it is when it is taken over
    std::string title;   // "Taken from axle 1, left: right?"
    std::string words;   // "120 lb-ft for 8 nuts, axle maker's manual, page 41. With wrench T-3."
    std::string accept;  // "Right: 120 lb-ft"
};

struct TorqueView {
    Chrome chrome;
    Place place;
    Torque torque;                    // as it is, or as it would begin; a nil id: not in the job yet
    bool ready = false;               // fasteners, figure and wrench are known: tightening may begin
    std::string to_do;                // the first thing that is missing before tightening; empty: nothing
    std::optional<LentFigure> offer;  // instead of the maker's figure, which is missing
    std::vector<StageChoice> stages;
    std::optional<std::size_t> next_stage;  // to begin when the running pass is full
    std::vector<int> clicked;               // in the last pass
    int next = 0;                           // nut; 0: the pass is full, or there is no order for this circle
    bool running = false;                   // there is a pass in which not all have clicked
    bool no_order = false;                  // no order of ours for so many nuts: the maker's chart leads
    std::optional<Amount> set_to;           // what the wrench is set to, in this pass or the one to begin
    std::string pass;                       // "Pass 2 of 4"; empty: none is running or left
    std::string corrected;                  // what the setting is at the nut; empty: no adapter
    bool done = false;                      // all clicked at the target and again in the check pass
    std::vector<std::string> against;       // why it is not proved, worst first
    std::vector<std::string> remarks;       // what else differs from the plan
    std::vector<WrenchChoice> wrenches;
    std::string wrench_warning;        // calibration over or not known
    std::string source;                // of the figure, and the wheel that it was taken over from
    std::vector<std::string> sources;  // that figures of this job came from
    std::optional<Amount> like;        // the figure of the like joint elsewhere on this trailer
    std::optional<Place> next_place;   // the corner after this one
    std::string next_label;
    Drafts drafts;
    Settings settings;
};

// By the route: its place and the torque's id, or the joint's name; without one the place's wheel nuts, or a new torque
// with the trailer's count of studs and the wrench used last.
[[nodiscard]] TorqueView torque_view(const Session& session);

}  // namespace cotter
