// Money as integer minor units with its ISO 4217 code. Never a float.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/error.h"

namespace cotter {

struct Money {
    std::int64_t minor = 0;        // cents for USD
    std::string currency = "USD";  // three capital letters

    bool operator==(const Money&) const = default;
    [[nodiscard]] std::string text() const;  // "149.00 USD"; two decimals (every currency supported has two)
    // "149", "149.5" or "149.00" with the currency beside it; refused for more than two decimals or overflow.
    [[nodiscard]] static Result<Money> parse(std::string_view amount, std::string_view currency);
};

// The sum; refused when the currencies differ or the result does not fit.
[[nodiscard]] Result<Money> add(const Money& a, const Money& b);

}  // namespace cotter
