// Is a photo good enough to show someone who was not there? A hint to take it again while the wheel is still off,
// never a refusal. Any thread.
#pragma once

#include "core/photo/image.h"

namespace cotter {

struct Quality {
    double sharpness = 0;     // 0 (flat or blurred) … about 1: fine detail against contrast in the sharpest parts
    double mean_light = 0;    // mean luma, 0 black … 1 white
    double dark_share = 0;    // share of pixels that show nothing but black, 0…1
    double bright_share = 0;  // share of pixels burnt out to white, 0…1
};

// The thresholds were set on the demo photos and worsened copies of them. Sharp, the softest of them measures 0.021;
// after a Gaussian blur of 3 pixels at 2,048 px (a shaken hand, a lens too near) the sharpest measures 0.0075.
inline constexpr double kBlurredBelow = 0.010;
inline constexpr double kDarkMeanBelow = 0.12;    // about 3½ stops under a normal exposure, which has a mean near 0.45
inline constexpr double kDarkShareAbove = 0.50;   // half the picture black: the work lies in shadow
inline constexpr double kGlareShareAbove = 0.10;  // a tenth burnt out: sun or flash on wet metal hides the surface

// Measured on the upright preview (or any picture of it; it is brought to about 1,024 px first).
[[nodiscard]] Quality measure_quality(const Image& preview);

[[nodiscard]] bool blurred(const Quality& quality);
[[nodiscard]] bool dark(const Quality& quality);
[[nodiscard]] bool glare(const Quality& quality);

}  // namespace cotter
