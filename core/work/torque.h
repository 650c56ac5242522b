// Tightening a circle of fasteners: the order across it and the stages. For the torque screen, the report and the
// checks. Pure; any thread. A wheel nut's torque is never derived from the stud: the target is always the maker's
// figure with its source.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/survey/records.h"

namespace cotter {

inline constexpr std::string_view kWheelNuts = "wheel nuts";  // the joint's name in records

// The order across the circle for 1…6, 8 or 10 fasteners; 1 is the top one, clockwise. Any order that crosses the
// circle does the same; the maker's chart goes before it. Refused for other counts: those need the maker's chart.
[[nodiscard]] Result<std::vector<int>> cross_order(int fasteners);

// Degrees around the circle (0…180) between each fastener of `order`, which names all of them, and the next.
[[nodiscard]] std::vector<int> angles_between(const std::vector<int>& order);

// One stage of a plan.
struct TorqueStage {
    Amount at_nut;       // in the target's unit
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

// Does a round cross the circle, as any maker's chart does? Not when two steps in a row go to a nut less than 100° on,
// which is along the circle, as 1-2-3-4. Three fasteners and fewer have nothing to cross.
[[nodiscard]] bool crosses_circle(const std::vector<int>& order, int fasteners);

// `torque` in another unit of torque, to `decimals`. Refused when either unit is none.
[[nodiscard]] Result<Amount> torque_in(const Amount& torque, std::string_view ucum, int decimals);

// Clamp force in N of a torque: T / (K·d). Refused: units of something else, K or d not above zero.
[[nodiscard]] Result<double> clamp_force(const Amount& torque, double friction, const Amount& diameter);

}  // namespace cotter
