// Hub temperatures against each other and the air. °C and K. Pure; any thread.
#pragma once

#include <optional>
#include <span>
#include <vector>

namespace cotter {

struct HubHeat {
    double rise = 0;              // over the air
    double over_mates = 0;        // against the median of the other hubs, K
    std::optional<double> ratio;  // rise ÷ median rise of the others; none when those are not warm
};
// One a hub, in the order given. At least two hubs.
[[nodiscard]] std::vector<HubHeat> compare_hubs(std::span<const double> hubs_c, double air_c);

// What an infrared gun set to emissivity `set` reads on a surface of emissivity `true_e` (broadband estimate).
[[nodiscard]] double gun_reads_c(double surface_c, double air_c, double true_e, double set = 0.95);

}  // namespace cotter
