// The signs of the grades and of the answer about towing on paper, as the screens draw them (core/base/sign.h).
#pragma once

#include "core/report/canvas.h"
#include "core/survey/grade_sign.h"

namespace cotter {

// Drawn inside a square of side `size` around `centre`.
void draw_sign(Canvas& canvas, Sign sign, Spot centre, double size);

}  // namespace cotter
