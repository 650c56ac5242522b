// Inks and outlines of the signs on a page.
#include "core/report/grade_sign.h"

#include <vector>

namespace cotter {

namespace {

Ink ink_of(Rgb color) {
    return {color.r / 255.0F, color.g / 255.0F, color.b / 255.0F};
}

void draw_part(Canvas& canvas, const SignPart& part, Ink tint, Spot corner, double unit) {
    std::vector<Spot> spots;
    for (const SignPoint& p : part.points) spots.push_back({corner.x + p.x * unit, corner.y + p.y * unit});
    if (spots.size() == 2)
        canvas.line(spots[0], spots[1], part.width * unit);
    else if (part.ink == SignInk::line)
        canvas.polygon(spots, {}, kBlack, part.width * unit);
    else
        canvas.polygon(spots, part.ink == SignInk::tint ? tint : kBlack, {});
}

}  // namespace

void draw_sign(Canvas& canvas, Sign sign, Spot centre, double size) {
    const Spot corner{centre.x - size / 2, centre.y - size / 2};
    for (const SignPart& part : parts_of(sign))
        draw_part(canvas, part, ink_of(tint_of(sign)), corner, size / kSignField);
}

}  // namespace cotter
