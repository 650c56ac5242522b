// Reading floating-point numbers from text, the same on every platform and in every locale.
#pragma once

#include <optional>
#include <string_view>

namespace cotter {

// The double nearest to a decimal number with a point ("0.5", "-3", "1e-3"); nothing when `text` is anything else, has
// something before or behind the number, or is out of a double's range. No leading '+'.
[[nodiscard]] std::optional<double> read_double(std::string_view text);

}  // namespace cotter
