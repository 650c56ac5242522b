// Tables that flow over pages: the head is repeated, a row too tall for a page is cut and goes on. One thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/report/sheet.h"
#include "core/survey/grade_sign.h"

namespace cotter {

struct Column {
    std::string title;
    double share = 1;  // of the width, against the other columns
};

struct Cell {
    std::string text;
    bool strong = false;
    std::optional<Sign> sign;  // drawn before the text

    Cell(std::string text_in = {}) : text(std::move(text_in)) {}
    Cell(const char* text_in) : text(text_in) {}
    [[nodiscard]] static Cell bold(std::string text);
    // The grade's sign and word, with a finding's number above the word.
    [[nodiscard]] static Cell graded(Grade grade, int number = 0);
};

class Table {
public:
    explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
    void add(std::vector<Cell> row);  // as many cells as columns
    [[nodiscard]] bool empty() const { return rows_.empty(); }
    // Of the columns on that sheet, which they fill: by their shares, but none narrower than its longest word as long
    // as the others can give; a word over half the page does not count.
    [[nodiscard]] std::vector<double> widths(const Sheet& sheet) const;
    // Nothing for a table without rows. `heading`: stands above it, on the same page as its first row.
    void draw(Sheet& sheet, const std::string& heading = {}) const;

private:
    std::vector<Column> columns_;
    std::vector<std::vector<Cell>> rows_;
};

}  // namespace cotter
