// The flow of text over pages.
#include "core/report/sheet.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/report/grade_sign.h"

namespace cotter {

namespace {
constexpr double kRise = 0.95;  // from a line's upper edge to its baseline, in sizes
}  // namespace

Sheet::Sheet(Canvas& canvas) : canvas_(canvas) {
    new_page();
}

void Sheet::new_page() {
    canvas_.add_page();
    y_ = kMargin;
}

void Sheet::start_page() {
    if (y_ > kMargin) new_page();
}

void Sheet::need(double height) {
    const double whole = canvas_.page_height() - kFoot - kMargin;
    if (room() < std::min(height, whole)) new_page();
}

std::vector<std::string> Sheet::lines(std::string_view text, const Type& type, double width) {
    const Printable fit = printable(text, canvas_);
    replaced_ = replaced_ || fit.replaced;
    return wrap(fit.signs, canvas_, type.face, type.size, width);
}

double Sheet::longest_word(std::string_view text, const Type& type) const {
    return cotter::longest_word(printable(text, canvas_).signs, canvas_, type.face, type.size);
}

void Sheet::line_at(Spot upper_left, const std::string& line, const Type& type) {
    canvas_.text({upper_left.x, upper_left.y + type.size * kRise}, type.face, type.size, line, type.ink);
}

void Sheet::part(const std::string& title) {
    const Type type{Face::bold, 14, kBlack};
    const auto text = lines(title, type, width() - 16);
    gap(y_ > kMargin ? 16 : 0);
    need(110);
    canvas_.bookmark(text.front(), y_);
    const double top = y_;
    for (const std::string& line : text) {
        line_at({left() + 14, y_}, line, type);
        gap(type.leading());
    }
    // The slanted stripe that a mechanic paints over a tightened nut.
    const std::array<Spot, 4> stripe{Spot{left() + 4, top}, Spot{left() + 9, top}, Spot{left() + 5, top + 15},
                                     Spot{left(), top + 15}};
    canvas_.polygon(stripe, kBlack, {});
    canvas_.line({left(), y_ + 1}, {left() + width(), y_ + 1}, 1.2);
    gap(8);
}

void Sheet::heading(const std::string& title, double with) {
    const Type type{Face::bold, 10.5, kBlack};
    gap(8);
    need(type.leading() + 2 + with);
    for (const std::string& line : lines(title, type, width())) {
        line_at({left(), y_}, line, type);
        gap(type.leading());
    }
    gap(2);
}

void Sheet::paragraph(std::string_view text, const Type& type) {
    for (const std::string& line : lines(text, type, width())) {
        need(type.leading());
        line_at({left(), y_}, line, type);
        gap(type.leading());
    }
    gap(3);
}

void Sheet::labelled(const std::vector<Labelled>& rows, double label_width) {
    const Type label{Face::regular, 9, kSoft};
    for (const Labelled& row : rows)
        if (!row.value.empty())
            label_width = std::max(label_width, std::min(longest_word(row.label, label) + 6, width() / 2));
    for (const Labelled& row : rows) {
        if (row.value.empty()) continue;
        const auto left_lines = lines(row.label, label, label_width - 6);
        const auto right_lines = lines(row.value, kBody, width() - label_width);
        for (std::size_t i = 0; i < std::max(left_lines.size(), right_lines.size()); ++i) {
            need(kBody.leading());
            if (i < left_lines.size()) line_at({left(), y_}, left_lines[i], label);
            if (i < right_lines.size()) line_at({left() + label_width, y_}, right_lines[i], kBody);
            gap(kBody.leading());
        }
        gap(1.5);
    }
}

void Sheet::framed(std::string_view text, const Type& type, std::optional<Sign> sign) {
    const double pad = 8, side = sign ? 26 : 0, beside = sign ? side + pad : 0;
    const auto all = lines(text, type, width() - 2 * pad - beside);
    for (std::size_t from = 0; from < all.size();) {
        need(2 * pad +
             std::max(side, type.leading() * static_cast<double>(std::min<std::size_t>(all.size() - from, 12))));
        const auto fit = static_cast<std::size_t>((room() - 2 * pad) / type.leading() + 0.01);
        const std::size_t count = std::min(all.size() - from, std::max<std::size_t>(1, fit));
        const double high = type.leading() * static_cast<double>(count), more = std::max(0.0, side - high);
        const double top = y_, bottom = y_ + 2 * pad + high + more;
        const double right = left() + width(), cut = 9;
        const std::array<Spot, 5> plate{Spot{left(), top}, Spot{right - cut, top}, Spot{right, top + cut},
                                        Spot{right, bottom}, Spot{left(), bottom}};
        canvas_.polygon(plate, {}, kBlack, 1.2);
        if (sign && from == 0) draw_sign(canvas_, *sign, {left() + pad + side / 2, top + pad + side / 2}, side);
        gap(pad + more / 2);
        for (std::size_t i = 0; i < count; ++i, gap(type.leading()))
            line_at({left() + pad + beside, y_}, all[from + i], type);
        gap(pad + more / 2 + 5);
        from += count;
    }
}

void Sheet::feet(const std::string& left_text) {
    const double y = canvas_.page_height() - 38;
    for (int page = 1; page <= canvas_.pages(); ++page) {
        canvas_.go_to(page);
        const std::string count = fmt::format("page {} of {}", page, canvas_.pages());
        const double count_width = text_width(count, canvas_, kSmall.face, kSmall.size);
        canvas_.line({left(), y - 4}, {left() + width(), y - 4}, 0.5, kRule);
        line_at({left(), y}, lines(left_text, kSmall, width() - count_width - 12).front(), kSmall);
        line_at({left() + width() - count_width, y}, count, kSmall);
    }
}

}  // namespace cotter
