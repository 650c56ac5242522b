// VINs, tyre dates, places.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include "core/trailer/trailer.h"
#include "core/trailer/tyre_date.h"
#include "core/trailer/vin.h"
#include "tests/support/invented.h"

using namespace cotter;

TEST_CASE("vin: check digit of 49 CFR 565.15") {
    CHECK(check_vin("1X9DE0006MADM0345").verdict == VinVerdict::ok);
    CHECK(check_vin("1x9de0006madm0345").verdict == VinVerdict::ok);
    const VinCheck swapped = check_vin("1X9DE0006MADM0354");
    CHECK(swapped.verdict == VinVerdict::wrong_check_digit);
    CHECK(check_vin("1X9DE0006MADM034").verdict == VinVerdict::wrong_length);
    CHECK(check_vin("1X9DE0006OADM0345").verdict == VinVerdict::wrong_character);
    CHECK(check_vin("1X9DEM0F0MADM0014").verdict == VinVerdict::ok);
}

TEST_CASE("vin: swapping positions 15 and 16 of the example calls for 7 where 6 stands") {
    CHECK(check_vin("1X9DE0006MADM0435").expected_check == '7');
}

TEST_CASE("vin: what tests and made-up data bear is right, and of the maker that is none") {
    for (const int serial : {0, 1, 8, 345, 999, 1'000, 123'456, 999'999}) {
        const std::string vin = test::invented_vin(serial);
        CAPTURE(vin);
        CHECK(check_vin(vin).verdict == VinVerdict::ok);
        CHECK(vin.starts_with(test::kInventedMaker));
        CHECK(vin.substr(11, 3) == test::kInventedMakerOfFew);
    }
    CHECK(test::invented_vin(1) != test::invented_vin(1'001));
}

TEST_CASE("vin: catches 92.5 % of single-character slips") {
    const std::string good = "1X9DE0006MADM0345";
    constexpr std::string_view alphabet = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";
    int tried = 0;
    int caught = 0;
    for (std::size_t at = 0; at < good.size(); ++at)
        for (const char c : alphabet) {
            if (c == good[at] || at == 8) continue;
            std::string slip = good;
            slip[at] = c;
            ++tried;
            caught += check_vin(slip).verdict != VinVerdict::ok;
        }
    CHECK(caught > 0.9 * tried);
    CHECK(caught < tried);
}

TEST_CASE("tyre date: week 01 is the first full Sunday-to-Saturday week") {
    const auto week = tyre_week("3419");
    REQUIRE(week);
    CHECK(week->first == Date{2019, 8, 25});
    CHECK(week->last == Date{2019, 8, 31});
    CHECK(fmt::format("{:.2f}", tyre_age_years(*week, {2026, 2, 10})) == "6.46");
    CHECK(tyre_week("U2LLLMLR0523")->first == Date{2023, 1, 29});
    CHECK(fmt::format("{:.2f}", tyre_age_years(*tyre_week("0523"), {2026, 2, 10})) == "3.03");
}

TEST_CASE("tyre date: impossible weeks are refused") {
    for (const char* bad : {"0019", "6019", "5419", "341", "34A9", "", "5319"}) CHECK_FALSE(tyre_week(bad));
    CHECK(tyre_week("5317")->first == Date{2017, 12, 31});
}

TEST_CASE("place: codes both ways, and only places the trailer has") {
    for (const char* code : {"axle1-left", "axle4-right", "axle2-right-inner", "drawbar", "trailer"})
        CHECK(Place::parse(code)->text() == code);
    for (const char* bad : {"", "axle0-left", "axle5-left", "axle1", "axle1-left-", "Drawbar"})
        CHECK_FALSE(Place::parse(bad));
    Trailer trailer;
    trailer.axles.resize(2);
    CHECK(trailer.corners().size() == 4);
    CHECK_FALSE(trailer.has(Place::corner(3, Side::left)));
    CHECK_FALSE(trailer.has(Place::corner(1, Side::left, Wheel::inner)));
    trailer.axles[0].wheels = Wheels::dual;
    CHECK(trailer.has(Place::corner(1, Side::left, Wheel::inner)));
}
