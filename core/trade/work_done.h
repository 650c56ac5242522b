// What was taken apart or renewed in a job, as its records show, and which points that opens again: a good answer from
// before the work says nothing about what was put back. Pure; any thread.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/trade/point.h"

namespace cotter {

enum class Work : std::uint8_t {
    wheel_off,
    hub_opened,
    hydraulics_opened,  // one opening concerns the whole system
    linings_renewed,
    brake_opened,  // taken apart, put right or adjusted
    electrics,     // of the brakes
    tire_changed,
    u_bolts,  // undone
    cap       // hub cap or its gasket, without opening the hub
};
constexpr auto names(Work) {
    return name_list("wheel off", "hub opened", "hydraulics opened", "linings renewed", "brake opened", "electrics",
                     "tire changed", "U-bolts undone", "cap renewed");
}

// When it was last done at this corner (u_bolts: at either end of its axle; hydraulics_opened: anywhere), by the
// records of this job; nullopt: they do not show that it was. A finding counts from when it was made: records do not
// say when it was repaired.
[[nodiscard]] std::optional<Instant> work_done(const Job& job, Work work, const Place& place);
[[nodiscard]] bool work_done_anywhere(const Job& job, Work work);

// The work that putting this finding right is, by its component.
[[nodiscard]] std::vector<Work> works_shown_by(const Finding& finding);

// Does this work ask for a new answer to this point, at the place it was done?
[[nodiscard]] bool opens_again(Work work, PointId point);

}  // namespace cotter
