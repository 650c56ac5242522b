// Shapes and inks of the grades.
#include "core/report/grade_sign.h"

#include <cmath>
#include <numbers>
#include <vector>

#include "core/report/print_text.h"

namespace cotter {

namespace {

std::vector<Spot> corners(int count, double first_degrees, Spot centre, double radius) {
    std::vector<Spot> out;
    for (int i = 0; i < count; ++i) {
        const double turn = (first_degrees + 360.0 * i / count) * std::numbers::pi / 180;
        out.push_back({centre.x + radius * std::cos(turn), centre.y + radius * std::sin(turn)});
    }
    return out;
}

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

}  // namespace

void draw_grade_sign(Canvas& canvas, Grade grade, Spot centre, double size, int number) {
    const Ink fill = fill_of(grade);
    const double edge = size / 12, half = size / 2 - edge / 2;
    double down = 0;  // of the number
    switch (grade) {
        case Grade::serviceable:
            canvas.circle(centre, half * 0.92, fill, kBlack, edge);
            break;
        case Grade::watch:
            canvas.polygon(corners(4, -90, centre, half), fill, kBlack, edge);
            break;
        case Grade::repair:
            down = size * 0.11;
            canvas.polygon(corners(3, -90, {centre.x, centre.y + half * 0.25}, half * 1.2), fill, kBlack, edge);
            break;
        case Grade::do_not_tow:
            canvas.polygon(corners(8, 22.5, centre, half), fill, kBlack, edge);
            break;
    }
    if (number <= 0) return;
    const std::string digits = std::to_string(number);
    const double letter = size * (digits.size() == 1 ? 0.5 : digits.size() == 2 ? 0.38 : 0.27);
    const double width = text_width(digits, canvas, Face::bold, letter);
    canvas.text({centre.x - width / 2, centre.y + down + letter * 0.36}, Face::bold, letter, digits,
                grade == Grade::do_not_tow ? kWhite : kBlack);
}

}  // namespace cotter
