// Hub temperatures.
#include "core/judge/heat.h"

#include <algorithm>
#include <cmath>

namespace cotter {

namespace {
double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}
}  // namespace

std::vector<HubHeat> compare_hubs(std::span<const double> hubs, double air) {
    std::vector<HubHeat> out;
    for (std::size_t i = 0; i < hubs.size(); ++i) {
        std::vector<double> others(hubs.begin(), hubs.end());
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        const double mates = others.empty() ? hubs[i] : median(std::move(others));
        HubHeat h{hubs[i] - air, hubs[i] - mates, std::nullopt};
        if (mates - air >= 1) h.ratio = h.rise / (mates - air);
        out.push_back(h);
    }
    return out;
}

double gun_reads_c(double surface_c, double air_c, double true_e, double set) {
    const auto fourth = [](double c) { return std::pow(c + 273.15, 4); };
    const double seen = true_e * fourth(surface_c) + (1 - true_e) * fourth(air_c);
    return std::pow((seen - (1 - set) * fourth(air_c)) / set, 0.25) - 273.15;
}

}  // namespace cotter
