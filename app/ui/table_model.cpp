// See table_model.h.
#include "app/ui/table_model.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/base/text.h"

namespace cotter {

void TableModel::start(std::size_t rows) {
    rows_ = rows;
    cursor_ = anchor_ = 0;
    all_ = false;
    others_.clear();
    top_ = 0;
    measure_ = true;
}

void TableModel::resize(std::size_t rows) {
    measure_ = measure_ || rows != rows_;
    rows_ = rows;
    cursor_ = rows == 0 ? 0 : std::min(cursor_, rows - 1);
    anchor_ = rows == 0 ? 0 : std::min(anchor_, rows - 1);
    others_.erase(others_.lower_bound(rows), others_.end());
    scroll_to(top_);
}

void TableModel::measured(const std::vector<float>& holds, unsigned baked) {
    measure_ = false;
    if (baked != baked_) holds_.clear();
    baked_ = baked;
    holds_.resize(holds.size(), 0);
    for (std::size_t i = 0; i < holds.size(); ++i) holds_[i] = std::max(holds_[i], holds[i]);
}

void TableModel::choose_only(std::size_t row) {
    all_ = false;
    others_ = {row};
}

void TableModel::choose_between(std::size_t a, std::size_t b) {
    all_ = false;
    others_.clear();
    for (std::size_t i = std::min(a, b); i <= std::max(a, b); ++i) others_.insert(others_.end(), i);
}

void TableModel::go(std::size_t row, bool shift, bool ctrl) {
    cursor_ = row;
    if (shift)
        choose_between(anchor_, row);
    else if (!ctrl)
        anchor_ = row;
    show_cursor();
}

bool TableModel::press(TableKey key, bool shift, bool ctrl) {
    if (rows_ == 0) return false;
    const std::size_t last = rows_ - 1;
    const auto page = static_cast<std::size_t>(std::max(1.0F, std::floor(page_) - 1));
    switch (key) {
        case TableKey::up:
            go(cursor_ == 0 ? 0 : cursor_ - 1, shift, ctrl);
            break;
        case TableKey::down:
            go(std::min(last, cursor_ + 1), shift, ctrl);
            break;
        case TableKey::page_up:
            go(cursor_ > page ? cursor_ - page : 0, shift, ctrl);
            break;
        case TableKey::page_down:
            go(std::min(last, cursor_ + page), shift, ctrl);
            break;
        case TableKey::home:
            go(0, shift, ctrl);
            break;
        case TableKey::end:
            go(last, shift, ctrl);
            break;
        case TableKey::space:
            if (others_.erase(cursor_) == 0) others_.insert(cursor_);
            anchor_ = cursor_;
            break;
        case TableKey::all:
            others_.clear();
            all_ = true;
            break;
    }
    return true;
}

void TableModel::click(std::size_t row, bool shift, bool ctrl) {
    if (row >= rows_) return;
    cursor_ = row;
    if (shift) {
        choose_between(anchor_, row);
    } else if (ctrl) {
        if (others_.erase(row) == 0) others_.insert(row);
        anchor_ = row;
    } else {
        choose_only(row);
        anchor_ = row;
    }
}

std::vector<std::size_t> TableModel::chosen_rows(std::size_t most) const {
    std::vector<std::size_t> out;
    if (!all_) {
        for (const std::size_t row : others_)
            if (out.size() < most) out.push_back(row);
        return out;
    }
    for (std::size_t row = 0; row < rows_ && out.size() < most; ++row)
        if (!others_.contains(row)) out.push_back(row);
    return out;
}

void TableModel::scroll_to(float top) {
    const float end = std::max(0.0F, static_cast<float>(rows_) - page_);
    top_ = std::clamp(top, 0.0F, end);
}

void TableModel::show_cursor() {
    const auto at = static_cast<float>(cursor_);
    if (at < top_) scroll_to(at);
    if (at + 1 > top_ + page_) scroll_to(at + 1 - page_);
}

TableModel::Span TableModel::seen() const {
    const auto from = static_cast<std::size_t>(top_);
    const auto to = static_cast<std::size_t>(std::ceil(top_ + page_));
    return {std::min(from, rows_), std::min(to, rows_)};
}

KeptRows::KeptRows(std::vector<TableRow> rows) : rows_(std::move(rows)) {
    for (const TableRow& row : rows_) {
        std::string all;
        for (const TableCell& cell : row.cells) all += " " + ascii_lower(cell.text);
        folded_.push_back(std::move(all));
    }
    arrange();
}

const TableRow* KeptRows::row(std::size_t at) const {
    return at < order_.size() ? &rows_[order_[at]] : nullptr;
}

void KeptRows::sort(const std::optional<TableSort>& sort) {
    if (sort == sort_) return;
    sort_ = sort;
    arrange();
}

void KeptRows::narrow(const std::string& words) {
    if (words == words_) return;
    words_ = words;
    arrange();
}

namespace {

bool holds(const std::string& text, const std::string& words) {
    std::size_t at = 0;
    while (at < words.size()) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        if (end > at && text.find(words.substr(at, end - at)) == std::string::npos) return false;
        at = end + 1;
    }
    return true;
}

bool less(const TableCell& a, const TableCell& b) {
    if (a.number && b.number) return *a.number < *b.number;
    if (a.number.has_value() != b.number.has_value()) return b.number.has_value();
    return ascii_lower(a.text) < ascii_lower(b.text);
}

}  // namespace

void KeptRows::arrange() {
    order_.clear();
    const std::string words = ascii_lower(words_);
    for (std::size_t i = 0; i < rows_.size(); ++i)
        if (holds(folded_[i], words)) order_.push_back(i);
    if (!sort_) return;
    const std::size_t c = sort_->column;
    const auto before = [&](std::size_t a, std::size_t b) {
        if (c >= rows_[a].cells.size() || c >= rows_[b].cells.size()) return false;
        const TableCell& x = rows_[a].cells[c];
        const TableCell& y = rows_[b].cells[c];
        return sort_->falling ? less(y, x) : less(x, y);
    };
    std::stable_sort(order_.begin(), order_.end(), before);
}

namespace {

// Between what a column has at least and what it holds.
struct Room {
    std::size_t column;
    float least, most;

    [[nodiscard]] float at(float level) const { return std::clamp(level, least, most); }
};

float taken(const std::vector<Room>& rooms, float level) {
    float sum = 0;
    for (const Room& room : rooms) sum += room.at(level);
    return sum;
}

// The length that texts are cut to, so that all of them together take `width` or less.
float cut_length(const std::vector<Room>& rooms, float width) {
    float low = 0, high = width;
    for (int i = 0; i < 24; ++i) {
        const float middle = (low + high) / 2;
        (taken(rooms, middle) <= width ? low : high) = middle;
    }
    return std::floor(low);
}

}  // namespace

std::vector<float> column_widths(const std::vector<TableColumn>& columns, float width,
                                 const std::vector<float>& holds) {
    std::vector<Room> rooms;
    float least = 0, shares = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const TableColumn& column = columns[i];
        if (!column.drawn() || (!rooms.empty() && least + column.least > width)) continue;
        const float first = std::min(width, column.least);
        const float most = i < holds.size() ? std::min(width, holds[i]) : first;
        rooms.push_back({i, std::min(first, most), most});
        least += column.least;
        shares += column.share;
    }
    const float level = cut_length(rooms, width);
    const float free = std::max(0.0F, width - taken(rooms, level));
    std::vector<float> out(columns.size(), 0);
    for (const Room& room : rooms)
        out[room.column] = room.at(level) + (shares > 0 ? free * columns[room.column].share / shares : 0);
    return out;
}

}  // namespace cotter
