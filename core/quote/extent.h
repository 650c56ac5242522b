// Amounts of goods as whole units that can be compared and added: corners, pieces, µL, µm. Pure.
#pragma once

#include <string>

#include "core/survey/quote_records.h"

namespace cotter {

// Corners and pieces as they are, a volume in µL, a length in µm, each to the nearest whole unit.
// `refused`: the basis is not said, the unit is of something else, not a whole number of corners or pieces, less than
// nothing, or more than 10,000 L or 10 km.
[[nodiscard]] Result<std::int64_t> units_of(const Extent& extent);

// So many units with `percent` more, rounded up to a whole unit.
[[nodiscard]] Result<std::int64_t> with_spill(std::int64_t units, const Number& percent);

// The other way, in a usual unit: "3 corners", "838 mL" (whole mL, rounded down), "1.250 m".
[[nodiscard]] Extent extent_of(Basis basis, std::int64_t units);

[[nodiscard]] Extent corners(int count);
[[nodiscard]] Extent pieces(int count);

// "1 corner", "2 corners", "4 pieces", "0.946 L".
[[nodiscard]] std::string extent_text(const Extent& extent);

// How items are told apart: small letters, without blanks at the ends. "Brake pads " and "brake pads" are one item.
[[nodiscard]] std::string item_key(std::string_view item);

}  // namespace cotter
