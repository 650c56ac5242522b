// Which sign stands for a grade, on every screen, in photos and on paper.
#pragma once

#include "core/base/sign.h"
#include "core/survey/words.h"

namespace cotter {

[[nodiscard]] constexpr Sign sign_of(Grade grade) {
    constexpr Sign kSigns[]{Sign::whole, Sign::chipped, Sign::sheared, Sign::shattered};
    return kSigns[static_cast<int>(grade)];
}

}  // namespace cotter
