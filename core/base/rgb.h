// One color, for signs, screens and marks in photos. Pure; any thread.
#pragma once

#include <cstdint>

namespace cotter {

struct Rgb {  // sRGB, 8 bits a channel
    std::uint8_t r = 0, g = 0, b = 0;
    bool operator==(const Rgb&) const = default;
};

// 0xRRGGBB as it stands in a design.
[[nodiscard]] constexpr Rgb rgb(std::uint32_t hex) {
    return {static_cast<std::uint8_t>(hex >> 16), static_cast<std::uint8_t>(hex >> 8), static_cast<std::uint8_t>(hex)};
}

}  // namespace cotter
