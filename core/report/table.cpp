// Drawing of tables.
#include "core/report/table.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/report/grade_sign.h"
#include "core/report/say.h"

namespace cotter {

namespace {

constexpr double kPad = 3.5;
constexpr double kSign = 19;  // side of a grade's sign in a cell
constexpr Type kHead{Face::bold, 8, kBlack};
constexpr Type kCell{Face::regular, 8.5, kBlack};
constexpr Type kCellStrong{Face::bold, 8.5, kBlack};

double sign_room(const Cell& cell) {
    return cell.sign ? kSign + 4 : 0;
}

struct Laid {
    const Cell* cell;
    double x;
    std::vector<std::string> lines;
    [[nodiscard]] const Type& type() const { return cell->strong ? kCellStrong : kCell; }
};

class Drawing {
public:
    Drawing(Sheet& sheet, const std::vector<Column>& columns, std::vector<double> widths)
        : sheet_(sheet), columns_(columns), widths_(std::move(widths)) {
        double x = sheet.left();
        for (const double width : widths_) {
            xs_.push_back(x);
            x += width;
        }
    }

    void head(double with_height) {
        std::vector<std::vector<std::string>> titles;
        std::size_t most = 1;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            titles.push_back(sheet_.lines(columns_[i].title, kHead, widths_[i] - 2 * kPad));
            most = std::max(most, titles.back().size());
        }
        const double height = 2 * kPad + kHead.leading() * static_cast<double>(most);
        sheet_.need(height + with_height);
        const double top = sheet_.y(), right = sheet_.left() + sheet_.width();
        const std::array<Spot, 4> band{Spot{sheet_.left(), top}, Spot{right, top}, Spot{right, top + height},
                                       Spot{sheet_.left(), top + height}};
        sheet_.canvas().polygon(band, kShade, {});
        for (std::size_t i = 0; i < titles.size(); ++i)
            for (std::size_t n = 0; n < titles[i].size(); ++n)
                sheet_.line_at({xs_[i] + kPad, top + kPad + kHead.leading() * static_cast<double>(n)}, titles[i][n],
                               kHead);
        sheet_.gap(height);
        rule(0.8);
    }

    void row(const std::vector<Cell>& cells) {
        auto laid = lay(cells);
        std::size_t most = 1;
        for (const Laid& cell : laid) most = std::max(most, cell.lines.size());
        const double tall = height_of(cells, most);
        if (sheet_.room() < tall && (tall < 200 || sheet_.room() < 60)) next_page();
        for (std::size_t from = 0; from < most;) {
            const auto fit = static_cast<std::size_t>((sheet_.room() - 2 * kPad) / kCell.leading() + 0.01);
            const std::size_t count = std::min(most - from, std::max<std::size_t>(1, fit));
            slice(laid, from, count);
            from += count;
            if (from < most) next_page();
        }
    }

    [[nodiscard]] double first_height(const std::vector<Cell>& cells) {
        std::size_t most = 1;
        for (const Laid& cell : lay(cells)) most = std::max(most, cell.lines.size());
        return std::min(height_of(cells, most), 120.0);
    }

private:
    [[nodiscard]] std::vector<Laid> lay(const std::vector<Cell>& cells) {
        std::vector<Laid> out;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const Cell& cell = cells.at(i);
            const double sign = sign_room(cell);
            Laid laid{&cell, xs_[i] + kPad + sign, {}};
            laid.lines = sheet_.lines(cell.text, laid.type(), widths_[i] - 2 * kPad - sign);
            out.push_back(std::move(laid));
        }
        return out;
    }

    [[nodiscard]] static double height_of(const std::vector<Cell>& cells, std::size_t lines) {
        const bool sign =
            std::any_of(cells.begin(), cells.end(), [](const Cell& cell) { return cell.sign.has_value(); });
        return 2 * kPad + std::max(kCell.leading() * static_cast<double>(lines), sign ? kSign : 0.0);
    }

    void slice(const std::vector<Laid>& laid, std::size_t from, std::size_t count) {
        double height = 2 * kPad + kCell.leading() * static_cast<double>(count);
        const bool signs =
            std::any_of(laid.begin(), laid.end(), [](const Laid& cell) { return cell.cell->sign.has_value(); });
        const double down = signs && count == 1 && from == 0 ? (kSign - kCell.leading()) / 2 : 0;  // beside a sign
        for (const Laid& cell : laid) {
            const bool sign = cell.cell->sign && from == 0;
            if (sign) {
                draw_sign(sheet_.canvas(), *cell.cell->sign, {cell.x - 4 - kSign / 2, sheet_.y() + kPad + kSign / 2},
                          kSign);
                height = std::max(height, 2 * kPad + kSign);
            }
            for (std::size_t i = 0; i < count && from + i < cell.lines.size(); ++i)
                sheet_.line_at({cell.x, sheet_.y() + kPad + down + kCell.leading() * static_cast<double>(i)},
                               cell.lines[from + i], cell.type());
        }
        sheet_.gap(height);
        rule(0.4);
    }

    void rule(double thickness) {
        sheet_.canvas().line({sheet_.left(), sheet_.y()}, {sheet_.left() + sheet_.width(), sheet_.y()}, thickness,
                             thickness > 0.5 ? kBlack : kRule);
    }

    void next_page() {
        sheet_.new_page();
        head(0);
    }

    Sheet& sheet_;
    const std::vector<Column>& columns_;
    std::vector<double> widths_, xs_;
};

// Narrower columns get what they lack from those with room to spare, in the proportion of what these can give.
void give_least(std::vector<double>& widths, const std::vector<double>& least) {
    double lack = 0, spare = 0;
    for (std::size_t i = 0; i < widths.size(); ++i)
        (least[i] > widths[i] ? lack : spare) += std::abs(widths[i] - least[i]);
    if (lack <= 0 || spare <= 0) return;
    const double given = std::min(lack, spare);
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const double over = widths[i] - least[i];
        widths[i] -= over < 0 ? over * given / lack : over * given / spare;
    }
}

}  // namespace

Cell Cell::bold(std::string text) {
    Cell cell(std::move(text));
    cell.strong = true;
    return cell;
}

Cell Cell::graded(Grade grade, int number) {
    Cell cell = bold(number > 0 ? fmt::format("No. {}\n{}", number, grade_text(grade)) : grade_text(grade));
    cell.sign = sign_of(grade);
    return cell;
}

void Table::add(std::vector<Cell> row) {
    rows_.push_back(std::move(row));
}

std::vector<double> Table::widths(const Sheet& sheet) const {
    double shares = 0;
    for (const Column& column : columns_) shares += column.share;
    std::vector<double> widths, least;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        double word = sheet.longest_word(columns_[i].title, kHead);
        for (const std::vector<Cell>& row : rows_) {
            const Cell& cell = row.at(i);
            word = std::max(word, sign_room(cell) + sheet.longest_word(cell.text, cell.strong ? kCellStrong : kCell));
        }
        widths.push_back(sheet.width() * columns_[i].share / shares);
        least.push_back(word <= sheet.width() / 2 ? word + 2 * kPad + 0.01 : 0);
    }
    give_least(widths, least);
    return widths;
}

void Table::draw(Sheet& sheet, const std::string& heading) const {
    if (rows_.empty()) return;
    Drawing drawing(sheet, columns_, widths(sheet));
    const double first = drawing.first_height(rows_.front());
    if (!heading.empty()) sheet.heading(heading, first + 40);
    drawing.head(first);
    for (const auto& row : rows_) drawing.row(row);
    sheet.gap(6);
}

}  // namespace cotter
