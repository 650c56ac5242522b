// Tightening a circle of fasteners: the order across it, the stages, the next nut, and what a wrench setting does at
// the nut. For the torque screen, the report and the checks. Pure; any thread. A wheel nut's torque is never derived
// from the stud: the target is always the maker's figure with its source.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/survey/records.h"

namespace cotter {

// The order across the circle for 1…6, 8 or 10 fasteners; 1 is the top one, clockwise. Any order that crosses the
// circle does the same; the maker's chart goes before it. Refused for other counts: those need the maker's chart.
[[nodiscard]] Result<std::vector<int>> cross_order(int fasteners);

// Degrees around the circle (0…180) between each fastener of `order` and the next.
[[nodiscard]] std::vector<int> angles_between(const std::vector<int>& order);

// One stage of a plan.
struct TorqueStage {
    Amount setting;      // in the target's unit
    double share = 1;    // of the target
    bool check = false;  // once more at the target: no nut may move
    std::string words;   // "pass 1 of 4: about a fifth, to seat all evenly"
};

struct TorquePlan {
    std::vector<int> order;
    std::vector<TorqueStage> stages;  // about 20 %, about 50 %, the target, the target again
};

// The plan for `fasteners` at the maker's `target`. Refused: no cross order, a target that is no torque or not above
// zero, no source.
[[nodiscard]] Result<TorquePlan> plan_torque(int fasteners, const Amount& target, const std::string& source);

// What to tighten next.
struct NextNut {
    std::size_t pass = 0;  // index into the plan's stages
    Amount setting;
    int nut = 0;
    int done = 0;  // nuts of this pass that have clicked
    int of = 0;    // nuts in the pass
};

// The first nut in the plan's order that has not clicked in the first unfinished pass; nothing when all is done.
[[nodiscard]] std::optional<NextNut> next_nut(const TorquePlan& plan, const std::vector<Pass>& passes);

// A tool between wrench and nut (crowfoot or extension in the plane of the wrench). A straight socket extension is
// none.
struct Adapter {
    Amount handle;     // middle of the grip to the wrench's drive
    Amount extension;  // drive to nut, along the adapter
    Number angle;      // degrees between adapter and wrench: 0 straight ahead, 90 square, 180 folded back
};

// What to set on the wrench for `wanted` at the nut: wanted × L / (L + E·cos angle), in wanted's unit, to one decimal.
// Refused: units that are no torque or no length, a handle not above zero, an extension below zero, an angle outside
// 0…180°, an adapter folded back as far as the grip.
[[nodiscard]] Result<Amount> wrench_setting(const Amount& wanted, const Adapter& adapter);
// What a setting does at the nut when it is not corrected.
[[nodiscard]] Result<Amount> torque_at_nut(const Amount& setting, const Adapter& adapter);

// `torque` in another unit of torque, to `decimals`. Refused when either unit is none.
[[nodiscard]] Result<Amount> torque_in(const Amount& torque, std::string_view ucum, int decimals);

// Clamp force in N of a torque: T / (K·d). Refused: units of something else, K or d not above zero.
[[nodiscard]] Result<double> clamp_force(const Amount& torque, double friction, const Amount& diameter);

}  // namespace cotter
