// Which sign stands for the answer about towing, on every screen and on paper.
#pragma once

#include "core/base/sign.h"
#include "core/judge/judge_job.h"

namespace cotter {

[[nodiscard]] constexpr Sign sign_of(Towing towing) {
    constexpr Sign kSigns[]{Sign::shattered_on_road, Sign::sheared_on_road, Sign::fading_on_road, Sign::whole_on_road,
                            Sign::shaded_on_road};
    return kSigns[static_cast<int>(towing)];
}

}  // namespace cotter
