// Second looks at torques: was the unit meant, is the wrench in date, did the tightening follow its plan. Nothing here
// refuses: differences are listed for a person. Pure; any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/survey/records.h"
#include "core/survey/work_records.h"

namespace cotter {

// A question to ask again before an entered torque is taken: lb-ft typed for lb-in is twelve times too much.
struct UnitDoubt {
    std::string words;
    std::optional<Amount> suggestion;  // the same number in the unit that was probably meant; nothing: none is likely
};

// For the torque that seats a wheel bearing: over about 60 lb-ft with a single nut is probably meant in lb-in (common
// practice, confirm with the maker). Double nuts of large axles are seated higher and are asked only above 400 lb-ft.
[[nodiscard]] std::optional<UnitDoubt> doubt_seating(NutStyle style, const Amount& entered);
// For any torque with a figure for the like beside it: asked when the two are twelve-fold apart (within a tenth).
[[nodiscard]] std::optional<UnitDoubt> doubt_unit(const Amount& entered, const Amount& figure);
// For the target of a joint. Wheel nuts get 50 to 500 lb-ft by the makers' documents seen; beyond 45 or 550 it is
// asked, as no such figure in pound-inches lies between those. `like`: the figure of a like joint of the job.
[[nodiscard]] std::optional<UnitDoubt> doubt_target(std::string_view joint, const Amount& target,
                                                    const std::optional<Amount>& like = {});

// Is the wrench's calibration good on a day?
enum class WrenchState { in_date, overdue, unknown, in_future };
struct WrenchCheck {
    WrenchState state = WrenchState::unknown;
    std::optional<Date> due;
    std::string words;
};
inline constexpr int kCalibrationDays = 365;  // common for hand torque tools (ISO 6789); the maker's own goes before it
[[nodiscard]] WrenchCheck check_wrench(const std::optional<Date>& calibrated, const Date& day,
                                       int interval_days = kCalibrationDays);

// One way in which a tightening differs from its plan.
enum class TorqueDifference {
    not_tightened,  // there is no pass
    no_target,      // without the maker's figure nothing can be proved
    no_source,
    unit_doubt,      // the target is unusual for such a joint, and nobody has said that it is meant
    unknown_circle,  // no cross order for this number of fasteners
    missing_nut,     // has no click in a pass
    unknown_nut,     // a number that the circle does not have
    twice,           // clicked twice in a pass
    other_order,     // crosses the circle in another order than ours
    not_across,      // goes along the circle; a last pass that checks the one before may
    fewer_passes,    // than the stages of the plan, the last check included
    other_setting,   // a stage more than a tenth of the target away from the plan's
    falling,         // a pass below the one before
    off_target,      // the last pass is not at the target
    other_at_nut,    // the torque at the nut is not what the setting gives through the adapter
    wrench_not_in_date
};
struct TorqueRemark {
    TorqueDifference difference = TorqueDifference::not_tightened;
    int pass = 0;  // from 1; 0: of the whole
    std::string words;
};

// All differences, the gravest of the whole first, then pass by pass. Empty: tightened as planned.
[[nodiscard]] std::vector<TorqueRemark> check_torque(const Torque& torque, int interval_days = kCalibrationDays);
// Are all nuts at the target in the last pass, by a source, across the circle and with a full check pass? Any order
// that crosses the circle serves.
[[nodiscard]] bool proves_torque(const std::vector<TorqueRemark>& remarks);

}  // namespace cotter
