// Which sign stands for a grade, on every screen and on paper.
#pragma once

#include "core/base/sign.h"
#include "core/survey/words.h"

namespace cotter {

[[nodiscard]] constexpr Sign sign_of(Grade grade) {
    constexpr Sign kSigns[]{Sign::washer, Sign::worn_block, Sign::broken_nut, Sign::apart};
    return kSigns[static_cast<int>(grade)];
}

}  // namespace cotter
