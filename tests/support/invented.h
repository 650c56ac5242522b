// What tests and made-up data take for things of the world, so that none of it can be somebody's: companies say that
// they are invented, trailers bear the numbers of our demo's maker, which builds nothing.
#pragma once

#include <string>
#include <string_view>

#include <fmt/format.h>

#include "core/trailer/vin.h"

namespace cotter::test {

// A maker of few trailers has 9 in position 3 and is told apart by positions 12 to 14: ours are 1X9 and DM0.
inline constexpr std::string_view kInventedMaker = "1X9", kInventedMakerOfFew = "DM0";

// A VIN of that maker with the right check digit; `serial`: 0…999,999, another VIN for each.
[[nodiscard]] inline std::string invented_vin(int serial) {
    std::string vin =
        fmt::format("{}DE{:03}0MA{}{:03}", kInventedMaker, serial / 1000, kInventedMakerOfFew, serial % 1000);
    vin[8] = check_vin(vin).expected_check;
    return vin;
}

[[nodiscard]] inline std::string invented(std::string_view company) {
    return fmt::format("{} (invented)", company);
}

}  // namespace cotter::test
