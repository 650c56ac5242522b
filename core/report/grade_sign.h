// The sign of a grade on paper: the outline that the screens draw too (core/base/sign.h).
#pragma once

#include "core/report/canvas.h"
#include "core/survey/words.h"

namespace cotter {

// Drawn inside a square of side `size` around `centre`.
void draw_grade_sign(Canvas& canvas, Grade grade, Spot centre, double size);

}  // namespace cotter
