// Record ids: UUIDs (RFC 9562), one C++ type per kind of record so that they cannot be mixed up.
#pragma once

#include <array>
#include <compare>
#include <string>
#include <string_view>

#include "core/base/error.h"
#include "core/base/ports.h"

namespace cotter {

struct Uuid {
    std::array<std::uint8_t, 16> bytes{};

    auto operator<=>(const Uuid&) const = default;
    [[nodiscard]] bool nil() const { return *this == Uuid{}; }
    [[nodiscard]] std::string text() const;                          // "3f9c1a2b-…", lower case
    [[nodiscard]] static Result<Uuid> parse(std::string_view text);  // the 36-character form, either case
    [[nodiscard]] static Uuid random(Random& random);                // version 4
};

template <class Kind>
struct Id {
    Uuid uuid;

    auto operator<=>(const Id&) const = default;
    [[nodiscard]] bool nil() const { return uuid.nil(); }
    [[nodiscard]] std::string text() const { return uuid.text(); }
};

}  // namespace cotter
