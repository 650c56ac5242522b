// Colour arithmetic for the themes and their checks: contrast, colour blindness, difference. Pure; any thread.
#pragma once

#include "core/base/rgb.h"

namespace cotter {

// Relative luminance 0…1 and contrast ratio 1…21, as WCAG 2.2 defines them.
[[nodiscard]] double luminance(Rgb colour);
[[nodiscard]] double contrast_ratio(Rgb a, Rgb b);

enum class Vision { usual, protanopia, deuteranopia, tritanopia };

// How `colour` looks to someone with that vision: Machado, Oliveira, Fernandes (2009), severity 1, on linear light.
[[nodiscard]] Rgb simulate_colour_blindness(Rgb colour, Vision vision);

struct Lab {
    double l = 0, a = 0, b = 0;
};
[[nodiscard]] Lab to_lab(Rgb colour);  // CIE 1976 L*a*b*, white D65

// CIEDE2000 difference: 1 is just seen side by side, 10 at a glance.
[[nodiscard]] double delta_e(const Lab& x, const Lab& y);
[[nodiscard]] double delta_e(Rgb x, Rgb y);

}  // namespace cotter
