// The plan: the trailer from above, every corner and station with what is there and what is missing.
// Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"

namespace cotter {

// How far the record of a place has come.
enum class PlanState { untouched, begun, complete };

struct PlanSpot {
    Place place;
    std::string label;    // "Axle 1, left"
    std::string state;    // "nothing yet", "3 photos, 2 findings", …
    std::string missing;  // "no torque" or empty
    PlanState progress = PlanState::untouched;
    std::optional<Grade> worst;  // that the answer about towing knows there; of plan_view() only
};

struct PlanView {
    Chrome chrome;
    int axles = 0;
    std::vector<bool> duals;              // by axle
    std::vector<PlanSpot> corners;        // axle by axle, left before right
    std::vector<PlanSpot> stations;       // drawbar, actuator, frame, lights, the whole
    std::string drawbar_up;               // the words at the drawbar's end
    std::string towing;                   // "May it be towed? No"
    Towing answer = Towing::cannot_tell;  // of that question
    std::string summary;                  // one line about all of it
    std::string points;                   // "31 of 84 looked at"
};

[[nodiscard]] PlanView plan_view(const Session& session);

// What is recorded at a place. For the plan and the hand-over.
[[nodiscard]] PlanSpot plan_spot(const Job& job, const Place& place, SideWords words);

// Records belong to a corner whichever of its wheels they name.
[[nodiscard]] bool at_place(const Place& record, const Place& place);

}  // namespace cotter
