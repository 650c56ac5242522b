// Values as entered and their units.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include "core/base/amount.h"

using namespace cotter;

namespace {
std::string in_unit(const Amount& amount, std::string_view ucum, int decimals) {
    return fmt::format("{:.{}f}", from_si(amount.si(), *find_unit(ucum)), decimals);
}
}  // namespace

TEST_CASE("amount: torque units") {
    CHECK(in_unit(*make_amount("1", "[lbf_av].[ft_i]"), "N.m", 6) == "1.355818");
    CHECK(in_unit(*make_amount("1", "[lbf_av].[in_i]"), "N.m", 6) == "0.112985");
    CHECK(in_unit(*make_amount("120", "[lbf_av].[ft_i]"), "N.m", 1) == "162.7");
    CHECK(in_unit(*make_amount("450", "[lbf_av].[in_i]"), "[lbf_av].[ft_i]", 1) == "37.5");
}

TEST_CASE("amount: fractions of an inch") {
    CHECK(in_unit(*make_amount("1/16", "[in_i]"), "mm", 2) == "1.59");
    CHECK(in_unit(*make_amount("1 3/32", "[in_i]"), "[in_i]", 5) == "1.09375");
    CHECK(make_amount("3/32", "[in_i]")->text() == "3/32 in");
}

TEST_CASE("amount: temperatures have an offset") {
    CHECK(in_unit(*make_amount("88", "Cel"), "[degF]", 1) == "190.4");
    CHECK(in_unit(*make_amount("-40", "[degF]"), "Cel", 1) == "-40.0");
}

TEST_CASE("amount: a number is kept as written, nonsense refused") {
    CHECK(Number::parse("7.10")->text() == "7.10");
    CHECK(Number::parse("-0.5")->value() == -0.5);
    for (const char* bad : {"", "-", ".", "1.", ".5", "1e3", "nan", "inf", "1/0", "1//2", "1.5/2", "0x10", "1,5", "--1",
                            "+1", "1.2.3", "9999999999999", "1 2", "1  1/2"})
        CHECK_FALSE(Number::parse(bad));
    CHECK_FALSE(make_amount("1", "furlong"));
}
