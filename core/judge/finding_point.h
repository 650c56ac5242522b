// Which point of the table a person's finding is about, by its component and defect as the finding table names them
// (older spellings too). For core/judge. Constant data; any thread.
#pragma once

#include <string_view>
#include <vector>

#include "core/trade/point.h"

namespace cotter {

// The likeliest first: which of them applies depends on the trailer. Empty: the table knows no such thing.
[[nodiscard]] std::vector<PointId> points_of_finding(std::string_view component, std::string_view defect);

}  // namespace cotter
