// Exact arithmetic on numbers as written, so that a spread of 3/32 and 5/32 reads 2/32 and not 0.0625. Pure.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace cotter {

// top / bottom; bottom > 0. Decimals have a power of ten below, fractions what was written.
struct Exact {
    std::int64_t top = 0;
    std::int64_t bottom = 1;
    bool fraction = false;  // written with '/'
};

// What Number::parse accepts; nullopt when it does not, or when it does not fit 18 digits.
[[nodiscard]] std::optional<Exact> to_exact(std::string_view text);

[[nodiscard]] bool less(const Exact& a, const Exact& b);
// a − b over the common bottom; nullopt when it does not fit.
[[nodiscard]] std::optional<Exact> difference(const Exact& a, const Exact& b);
// "7.05", "3/32", "1 3/32"; keeps the bottom. A fraction minus a decimal comes as decimals where it can.
[[nodiscard]] std::string written(const Exact& value);

}  // namespace cotter
