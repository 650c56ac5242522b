// Amounts that core/work computes, and the check that an entered one is of the right kind. Pure; any thread.
#pragma once

#include <string>
#include <string_view>

#include "core/base/amount.h"

namespace cotter {

// `value` in a unit of all_units(), rounded half away from zero to `decimals` (0…6).
[[nodiscard]] Amount amount_of(double value, std::string_view ucum, int decimals);

// Refused, naming `what`, when the amount's unit is unknown or measures something else.
[[nodiscard]] Result<> need_quantity(const Amount& amount, Quantity quantity, std::string_view what);

// `value` with `decimals`, rounded half away from zero; for the words of reasons.
[[nodiscard]] std::string rounded_text(double value, int decimals);

}  // namespace cotter
