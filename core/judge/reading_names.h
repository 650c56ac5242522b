// The readings that judging knows: their names as records hold them, what they are measured in, and which component
// they belong to. A reading of any other name is kept and judged only by limits of that very name.
//
// A reading stands at the corner it was taken at, or, when one round over several corners was one reading, at the
// trailer with points whose `where` begins "axle 1 left" (or "axle 1" for a whole axle).
#pragma once

#include <optional>
#include <string_view>

#include "core/base/amount.h"
#include "core/trade/reading_names.h"

namespace cotter {

struct KnownReading {
    std::string_view name;
    std::string_view component;    // "brake", "hub", "tyre", …
    Quantity quantity;             // units of another quantity are refused
    double least = 0, most = 0;    // SI; a value outside is a slip of the pen or of the unit
    std::string_view repaired_by;  // words of a finding's component whose repair makes the reading out of date
};

// By name; names that only begin with a known one ("hub temperature after road test") are that one. nullptr: unknown.
[[nodiscard]] const KnownReading* known_reading(std::string_view name);
[[nodiscard]] std::string_view component_of(std::string_view name);  // "other" when unknown

}  // namespace cotter
