// The week and year of making in a tyre identification number (49 CFR 574.5).
#pragma once

#include <string_view>

#include "core/base/time.h"

namespace cotter {

struct TyreWeek {
    Date first;  // Sunday
    Date last;   // Saturday
};

// The week that a TIN's last four digits WWYY name, for years 2000…2099. Week 01 is the year's first full
// Sunday-to-Saturday week. Accepts the four digits or a whole TIN. Refused: week 00, over 53, a week 53 that the
// year does not have, and three-digit dates (before 2000: say 'over 25 years old' instead).
[[nodiscard]] Result<TyreWeek> tyre_week(std::string_view tin);

// Age in years (365.25 days) on `day`, counted from the week's first day. Negative when made later.
[[nodiscard]] double tyre_age_years(const TyreWeek& week, const Date& day);

}  // namespace cotter
