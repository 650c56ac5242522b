// Inks of the grades, and their outlines on a page.
#include "core/report/grade_sign.h"

#include <vector>

#include "core/survey/grade_sign.h"

namespace cotter {

namespace {

// Lightness falls with gravity, so that a grey print keeps the order too.
Ink fill_of(Grade grade) {
    switch (grade) {
        case Grade::serviceable:
            return {0.86f, 0.94f, 1.0f};
        case Grade::watch:
            return {1.0f, 0.88f, 0.35f};
        case Grade::repair:
            return {1.0f, 0.62f, 0.30f};
        case Grade::do_not_tow:
            break;
    }
    return {0.60f, 0.04f, 0.16f};
}

void draw_part(Canvas& canvas, const SignPart& part, Ink fill, Spot corner, double unit) {
    std::vector<Spot> spots;
    for (const SignPoint& p : part.points) spots.push_back({corner.x + p.x * unit, corner.y + p.y * unit});
    const auto inside = part.filled ? std::optional(fill) : std::nullopt;
    const auto edge = part.line > 0 ? std::optional(kBlack) : std::nullopt;
    const double thickness = part.line * unit;
    if (part.radius > 0)
        canvas.circle(spots[0], part.radius * unit, inside, edge, thickness);
    else if (spots.size() == 2)
        canvas.line(spots[0], spots[1], thickness);
    else
        canvas.polygon(spots, inside, edge, thickness);
}

}  // namespace

void draw_grade_sign(Canvas& canvas, Grade grade, Spot centre, double size) {
    const Spot corner{centre.x - size / 2, centre.y - size / 2};
    for (const SignPart& part : parts_of(sign_of(grade)))
        draw_part(canvas, part, fill_of(grade), corner, size / kSignField);
}

}  // namespace cotter
