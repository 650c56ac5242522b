// Setting a wheel bearing: where the lock can engage, what one position more or less changes, and what proves it.
// For the bearing screen and the report. Pure; any thread.
// Back-off is not end play: preload relaxes first, and thread clearance, washers and a jam nut eat into it. These sums
// only say how the play changes from one position to the next; the dial reading is the only proof.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/survey/job.h"
#include "core/survey/work_records.h"

namespace cotter {

// Axial travel in m of a nut turned by `turns` on a thread of `threads_per_inch`. Refused: a pitch not above zero.
[[nodiscard]] Result<double> nut_travel(double threads_per_inch, double turns);
// How far the nut must turn, in degrees, for an axial change of `travel`. Refused: no length, a pitch not above zero.
[[nodiscard]] Result<double> nut_angle(double threads_per_inch, const Amount& travel);

// The angles of the nut (degrees, from 0, below 360, ascending) at which one of its `slots` meets an end of a cotter
// hole, for cross holes through the spindle at `holes` degrees. Six slots: one hole gives every 60°, two holes square
// to each other every 30°. Refused: fewer than 3 or more than 24 slots, no hole.
[[nodiscard]] Result<std::vector<double>> lock_angles(int slots, const std::vector<double>& holes);

// One lock position near the present one.
struct LockOption {
    int steps = 0;                    // above 0: looser
    double degrees = 0;               // of the nut, loosening positive
    double change = 0;                // of the end play, m
    std::optional<double> predicted;  // end play there, m; nothing without a dial reading to start from
    bool in_range = false;            // predicted, and within the maker's range
    bool allowed = true;              // by the nut's style
    std::string words;                // "1 position looser: play grows by about 0.0119 in, to about 0.0129 in"
};

// The positions from `tighter` below to `looser` above the present one; the present one among them. `measured`: the
// last dial reading. Refused: a preset bearing (it has one torque and no positions), no threads per inch, no lock
// positions, a range that contradicts itself.
[[nodiscard]] Result<std::vector<LockOption>> lock_options(const BearingSetting& setting,
                                                           const std::optional<Amount>& measured, int tighter = 2,
                                                           int looser = 3);

// What still speaks against calling the setting proved, or for a second look. Empty: proved.
struct BearingRemark {
    bool blocks = true;  // false: a second look, no hindrance
    std::string words;
};
[[nodiscard]] std::vector<BearingRemark> check_bearing(const Job& job, const BearingSetting& setting);
[[nodiscard]] bool proves_bearing(const std::vector<BearingRemark>& remarks);

// The end play of a setting's last try, the largest of its points; nothing when it has no dial reading with a value.
[[nodiscard]] std::optional<Amount> proved_play(const Job& job, const BearingSetting& setting);

}  // namespace cotter
