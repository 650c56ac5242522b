// From which width a page with two parts takes the whole window and sets them side by side. For screens.
#pragma once

namespace cotter {

inline constexpr float kWide = 800;  // dp

}  // namespace cotter
