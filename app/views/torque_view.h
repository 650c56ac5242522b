// The tightening of one joint: the circle, the pass, the next nut, the maker's figure, the wrench, and what differs
// from the plan. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"
#include "core/work/torque.h"

namespace cotter {

// A stage of the plan, to be begun by a tap.
struct StageChoice {
    Amount setting;     // at the nut
    std::string label;  // "60 lb-ft", "check 120 lb-ft"
    bool done = false;  // all have clicked
    bool now = false;   // the running pass
};

struct WrenchChoice {
    std::string id;
    std::string label;  // "T-3, calibrated 2026-01-10"
    std::optional<Date> calibrated;
    bool chosen = false;
};

struct TorqueView {
    Chrome chrome;
    Place place;
    Torque torque;       // as it is, or as it would begin; a nil id: not in the job yet
    bool ready = false;  // fasteners and wrench are known: tightening may begin
    std::string to_do;   // the first thing that is missing before tightening; empty: nothing
    std::vector<StageChoice> stages;
    std::optional<std::size_t> next_stage;  // to begin when the running pass is full
    std::vector<int> clicked;               // in the running pass
    int next = 0;                           // nut; 0: the pass is full, or there is no order for this circle
    bool no_order = false;                  // no order of ours for so many nuts: the maker's chart leads
    std::string set_to;                     // what the wrench is set to, with an adapter's correction
    std::string corrected;                  // the adapter's arithmetic in words; empty: no adapter
    bool done = false;                      // all clicked at the target and again in the check pass
    std::vector<std::string> remarks;       // what differs from the plan, worst first
    std::vector<WrenchChoice> wrenches;
    std::string wrench_warning;        // calibration over or not known
    std::vector<std::string> sources;  // that figures of this job came from
    std::optional<Place> next_place;   // the corner after this one
    std::string next_label;
    Drafts drafts;
    Settings settings;
};

// By the route: its place and the torque's id, or the joint's name; without one the place's wheel nuts, or a new torque
// that takes count, figure, source and wrench over from the last one of the job at the like joint.
[[nodiscard]] TorqueView torque_view(const Session& session);

// The torque with the pass begun, and `nut` clicked in it unless it is 0.
[[nodiscard]] Torque with_pass(Torque torque, const Amount& setting, int nut);

// A wrench with an adapter on it, as one text of the record, and back: "T-3, adapter 2 in beyond 16 in at 0°".
[[nodiscard]] std::string wrench_text(const std::string& id, const std::optional<Adapter>& adapter);
[[nodiscard]] std::string wrench_id(const std::string& text);
[[nodiscard]] std::optional<Adapter> wrench_adapter(const std::string& text);

}  // namespace cotter
