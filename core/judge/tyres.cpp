// Tyre arithmetic.
#include "core/judge/tyres.h"

#include <array>

namespace cotter {

std::optional<double> load_index_kg(int index) {
    constexpr int kFirst = 60;
    constexpr std::array<int, 81> kg{250,  257,  265,  272,  280,  290,  300,  307,  315,  325,  335,  345,  355,  365,
                                     375,  387,  400,  412,  425,  437,  450,  462,  475,  487,  500,  515,  530,  545,
                                     560,  580,  600,  615,  630,  650,  670,  690,  710,  730,  750,  775,  800,  825,
                                     850,  875,  900,  925,  950,  975,  1000, 1030, 1060, 1090, 1120, 1150, 1180, 1215,
                                     1250, 1285, 1320, 1360, 1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850,
                                     1900, 1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430, 2500};
    if (index < kFirst || index >= kFirst + static_cast<int>(kg.size())) return std::nullopt;
    return kg[static_cast<std::size_t>(index - kFirst)];
}

double axle_capacity_kg(int tyres, double rating_kg, bool passenger) {
    return tyres * (passenger ? rating_kg / 1.10 : rating_kg);
}

double pressure_at(double gauge_psi, double from_c, double to_c) {
    constexpr double atmosphere = 14.7;
    return (gauge_psi + atmosphere) * (to_c + 273.15) / (from_c + 273.15) - atmosphere;
}

double cold_estimate_psi(double hot_psi, double rating_lb) {
    return hot_psi - (rating_lb <= 4000 ? 5 : 15);
}

bool tells_cold_pressure(std::string_view text) {
    return text.find("41") != std::string_view::npos && text.find("55") != std::string_view::npos;
}

}  // namespace cotter
