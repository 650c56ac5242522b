// The sign of a grade: a shape of its own, told apart without colour, the same as on tagged photos.
#pragma once

#include "core/report/canvas.h"
#include "core/survey/words.h"

namespace cotter {

// Drawn inside a square of side `size` around `centre`: disc, diamond, triangle or octagon from the mildest grade to
// the gravest. `number` (a finding's) is written inside when it is over 0.
void draw_grade_sign(Canvas& canvas, Grade grade, Spot centre, double size, int number = 0);

}  // namespace cotter
