// Byte buffers and views on them.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace cotter {

using Bytes = std::vector<std::uint8_t>;
using ByteView = std::span<const std::uint8_t>;

inline ByteView as_bytes(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

inline std::string_view as_text(ByteView bytes) {
    return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

inline Bytes to_bytes(std::string_view text) {
    return {text.begin(), text.end()};
}

// Lower-case hex, two digits a byte.
[[nodiscard]] std::string to_hex(ByteView bytes);

// The bytes of a hex text of either case; empty when the text is not hex or of odd length.
[[nodiscard]] Bytes from_hex(std::string_view hex);

}  // namespace cotter
