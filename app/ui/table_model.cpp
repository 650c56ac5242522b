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
}

void TableModel::resize(std::size_t rows) {
    rows_ = rows;
    cursor_ = rows == 0 ? 0 : std::min(cursor_, rows - 1);
    anchor_ = rows == 0 ? 0 : std::min(anchor_, rows - 1);
    others_.erase(others_.lower_bound(rows), others_.end());
    scroll_to(top_);
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

std::vector<float> column_widths(const std::vector<TableColumn>& columns, float width) {
    std::vector<std::size_t> shown;
    float least = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (!columns[i].shown || (!shown.empty() && least + columns[i].least > width)) continue;
        shown.push_back(i);
        least += columns[i].least;
    }
    std::vector<float> out(columns.size(), 0);
    float shares = 0;
    for (const std::size_t i : shown) shares += columns[i].share;
    const float free = std::max(0.0F, width - least);
    for (const std::size_t i : shown)
        out[i] = std::min(width, columns[i].least) + (shares > 0 ? free * columns[i].share / shares : 0);
    return out;
}

}  // namespace cotter
