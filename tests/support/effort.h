// How much of a long test is run. With COTTER_TESTS=few in the environment the longest ones do a part of their rounds:
// for the build with sanitizers, which looks for other faults and takes many times as long; the release build does them
// all.
#pragma once

#include <cstdlib>
#include <string_view>

namespace cotter::test {

// Whether only a part is wanted.
inline bool few() {
    const char* tests = std::getenv("COTTER_TESTS");
    return tests != nullptr && std::string_view(tests) == "few";
}

}  // namespace cotter::test
