// The only file that includes fast_float: the standard library of the web's compiler has no from_chars for doubles.
#include "core/base/decimal.h"

#include <fast_float/fast_float.h>

namespace cotter {

std::optional<double> read_double(std::string_view text) {
    double value = 0;
    const auto [end, error] = fast_float::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || value - value != 0) return std::nullopt;
    return value;
}

}  // namespace cotter
