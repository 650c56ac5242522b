// Each band at its figures: on one side and on the other.
#include "core/judge/gross_bands.h"

#include <doctest/doctest.h>

using namespace cotter;

namespace {
constexpr double kPsi = 6894.757293168;
Amount inch(const char* n) {
    return *make_amount(n, "[in_i]");
}
Amount mm(const char* n) {
    return *make_amount(n, "mm");
}
}  // namespace

TEST_CASE("bands: G1 end play, in the unit that was entered") {
    CHECK(bands::end_play(inch("0.005")) == Grade::serviceable);
    CHECK(bands::end_play(inch("0.006")) == Grade::watch);
    CHECK(bands::end_play(inch("0.020")) == Grade::watch);
    CHECK(bands::end_play(inch("0.021")) == Grade::repair);
    CHECK(bands::end_play(inch("0.050")) == Grade::repair);
    CHECK(bands::end_play(inch("0.051")) == Grade::do_not_tow);
    CHECK(bands::end_play(inch("0")) == Grade::watch);
    CHECK_FALSE(bands::end_play(inch("-0.001")));
    CHECK(bands::end_play(mm("0.13")) == Grade::serviceable);
    CHECK(bands::end_play(mm("0.52")) == Grade::repair);
    CHECK(bands::end_play(mm("1.27")) == Grade::repair);
    CHECK(bands::end_play_gross(mm("1.28")));
}

TEST_CASE("bands: G2 magnets") {
    CHECK(bands::magnet_current(0.2) == Grade::do_not_tow);
    CHECK(bands::magnet_current(0.3) == Grade::repair);
    CHECK(bands::magnet_current(1.25) == Grade::watch);
    CHECK(bands::magnet_current(2.5) == Grade::serviceable);
    CHECK(bands::magnet_current(4.1) == Grade::serviceable);
    CHECK(bands::magnet_current(4.2) == Grade::watch);
    CHECK(bands::magnet_current(8.3) == Grade::repair);
    CHECK(bands::magnet_resistance(0.9) == Grade::repair);
    CHECK(bands::magnet_resistance(3.2) == Grade::serviceable);
    CHECK(bands::magnet_resistance(2.0) == Grade::watch);
    CHECK(bands::magnet_resistance(1e6) == Grade::do_not_tow);
}

TEST_CASE("bands: G3 hub heat and G9 a cold brake") {
    CHECK(bands::hub_heat(100, 20, true) == Grade::serviceable);
    CHECK(bands::hub_heat(100, 21, true) == Grade::watch);
    CHECK(bands::hub_heat(150, 51, true) == Grade::repair);
    CHECK(bands::hub_heat(200, 101, true) == Grade::do_not_tow);
    CHECK(bands::hub_heat(251, 0, true) == Grade::do_not_tow);
    CHECK(bands::hub_heat(121, 0, false) == Grade::serviceable);
    CHECK(bands::hub_heat(122, 0, false) == Grade::do_not_tow);
    CHECK(bands::hub_heat(88, 33, false) == Grade::repair);
    CHECK(bands::brake_cold(-51, true));
    CHECK_FALSE(bands::brake_cold(-50, true));
}

TEST_CASE("bands: G4 cold pressure: 80 percent itself has been run low") {
    CHECK(bands::cold_pressure(80 * kPsi, 80 * kPsi) == Grade::serviceable);
    CHECK(bands::cold_pressure(65 * kPsi, 80 * kPsi) == Grade::serviceable);
    CHECK(bands::cold_pressure(64 * kPsi, 80 * kPsi) == Grade::repair);
    CHECK(bands::cold_pressure(40 * kPsi, 80 * kPsi) == Grade::repair);
    CHECK(bands::cold_pressure(39 * kPsi, 80 * kPsi) == Grade::do_not_tow);
    CHECK(bands::cold_pressure(14 * kPsi, 20 * kPsi) == Grade::do_not_tow);
    CHECK(bands::cold_pressure_unplaced(9 * kPsi, 80 * kPsi) == Grade::do_not_tow);
    CHECK(bands::cold_pressure_unplaced(41 * kPsi, 80 * kPsi) == Grade::serviceable);
    CHECK(bands::flat(14.9 * kPsi));
}

TEST_CASE("bands: G5 to G8 and G10") {
    CHECK(bands::line_pressure(0.80) == Grade::serviceable);
    CHECK(bands::line_pressure(0.79) == Grade::watch);
    CHECK(bands::line_pressure(0.49) == Grade::repair);
    CHECK(bands::line_pressure(0.24) == Grade::do_not_tow);
    CHECK(bands::hold(1000, 0.05) == Grade::serviceable);
    CHECK(bands::hold(1000, 0.06) == Grade::watch);
    CHECK(bands::hold(1000, 0.12) == Grade::repair);
    CHECK(bands::hold(1000, 0.51) == Grade::do_not_tow);
    CHECK(bands::hold(0, 0) == Grade::do_not_tow);
    CHECK(bands::battery_rest(12.2) == Grade::serviceable);
    CHECK(bands::battery_rest(12.1) == Grade::watch);
    CHECK(bands::battery_rest(10.4) == Grade::do_not_tow);
    CHECK(bands::battery_load(10.5) == Grade::serviceable);
    CHECK(bands::battery_load(10.4) == Grade::do_not_tow);
    CHECK(bands::tongue_share(0.15, false) == Grade::serviceable);
    CHECK(bands::tongue_share(0.151, false) == Grade::watch);
    CHECK(bands::tongue_share(0.174, true) == Grade::serviceable);
    CHECK(bands::tongue_share(0.0, false) == Grade::do_not_tow);
    CHECK(bands::air_leak(3, false) == Grade::serviceable);
    CHECK(bands::air_leak(4, false) == Grade::watch);
    CHECK(bands::air_leak(6.5, false) == Grade::repair);
    CHECK(bands::air_leak(8, true) == Grade::watch);
    CHECK(bands::air_leak(9, true) == Grade::repair);
}
