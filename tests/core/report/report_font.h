// The fonts that the report is built with, for its tests.
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <string>

#include "core/base/bytes.h"

namespace cotter::test {

inline Bytes test_font(const std::string& name) {
    std::ifstream in(std::string(COTTER_TEST_FONTS) + "/" + name, std::ios::binary);
    Bytes bytes{std::istreambuf_iterator<char>(in), {}};
    REQUIRE(bytes.size() > 1000);
    return bytes;
}

struct Fonts {
    Bytes regular = test_font("DejaVuSans.ttf");
    Bytes bold = test_font("DejaVuSans-Bold.ttf");
};

}  // namespace cotter::test
