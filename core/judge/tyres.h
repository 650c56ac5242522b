// Tyre capacity and pressure. Pure; any thread.
#pragma once

#include <optional>
#include <string_view>

namespace cotter {

[[nodiscard]] std::optional<double> load_index_kg(int index);  // 60…140 (ISO 4000-1); else nothing

// What an axle's tyres carry, kg: 2 or 4 tyres by their (dual) rating; passenger tyres count at rating ÷ 1.10.
[[nodiscard]] double axle_capacity_kg(int tyres, double rating_kg, bool passenger);

// Gauge pressure after a change of temperature at the same volume: psi, °C.
[[nodiscard]] double pressure_at(double gauge_psi, double from_c, double to_c);

// Cold pressure estimated from a hot reading after 49 CFR 393.75: 5 psi less for tyres rated up to 4,000 lb, 15
// above.
[[nodiscard]] double cold_estimate_psi(double hot_psi, double rating_lb);

// Does a word beside a hot reading say that it was taken after a run at 41 to 55 mph? Only then does the rule's
// estimate of the cold pressure hold.
[[nodiscard]] bool tells_cold_pressure(std::string_view text);

}  // namespace cotter
