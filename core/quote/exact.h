// Arithmetic on money that never loses a cent: integers, decimal factors as entered, half-up once. Pure.
#pragma once

#include <cstdint>

#include "core/base/amount.h"
#include "core/base/error.h"

namespace cotter {

// The largest amount taken in, either way, in minor units; sums of a quote stay far within 64 bits.
inline constexpr std::int64_t kLargestAmount = 1'000'000'000'000;

// minor × factor, rounded half-up to a whole minor unit (halves away from zero). The factor as it was written, as a
// decimal or a fraction: no binary rounding. `refused`: a factor with more than 9 digits on either side of the point,
// or a result beyond kLargestAmount.
[[nodiscard]] Result<std::int64_t> times(std::int64_t minor, const Number& factor);

// minor × percent / 100, likewise.
[[nodiscard]] Result<std::int64_t> percent_of(std::int64_t minor, const Number& percent);

// The sum, `refused` beyond kLargestAmount.
[[nodiscard]] Result<std::int64_t> plus(std::int64_t a, std::int64_t b);

// "1234.50", "-3.00": without the currency, which a quote says once.
[[nodiscard]] std::string money_text(std::int64_t minor);

}  // namespace cotter
