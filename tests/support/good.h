// For tests that go on only with a value.
#pragma once

#include <doctest/doctest.h>

#include <type_traits>
#include <utility>

#include "core/base/error.h"

namespace cotter::test {

// The value, or the end of the test with the error's line.
template <class T>
T good(Result<T> result) {
    REQUIRE_MESSAGE(result, result.error().line());
    if constexpr (!std::is_void_v<T>) return std::move(*result);
}

}  // namespace cotter::test
