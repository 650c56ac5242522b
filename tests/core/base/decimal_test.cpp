// Numbers from text: to the last bit, and nothing but numbers.
#include "core/base/decimal.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

using cotter::read_double;

TEST_CASE("decimal: the nearest double") {
    CHECK(read_double("0") == 0.0);
    CHECK(read_double("0.1") == 0.1);
    CHECK(read_double("-3.5") == -3.5);
    CHECK(read_double("1e-3") == 0.001);
    CHECK(read_double("9007199254740993") == 9007199254740992.0);                    // a tie goes to even
    CHECK(read_double("1.00000000000000011102230246251566") == 1.0000000000000002);  // just above a tie
    CHECK(std::signbit(read_double("-0").value_or(1)));
}

TEST_CASE("decimal: anything else is refused") {
    for (const char* text : {"", " 1", "1 ", "+1", "1,5", "0x10", "1e", "one", "inf", "nan", "-infinity", "1e999", "-"})
        CHECK_MESSAGE(!read_double(text), text);
    CHECK(!read_double(std::string_view("1\0", 2)));
}
