// A list as the desk shows it: its columns, what it is sorted by and narrowed to, and its rows, whole in memory or by
// pages. One thread.
#pragma once

#include <map>
#include <string>
#include <variant>

#include "app/desk/rows.h"

namespace cotter::desk {

// Rows of a long list, fetched page by page as they are looked at; the farthest are let go.
class PagedRows final : public TableRows {
public:
    static constexpr std::size_t kPage = 100;

    void start(std::size_t size);
    void grow(std::size_t size) { size_ = size; }  // more or fewer of the same rows
    void put(std::size_t page, std::vector<TableRow> rows);
    [[nodiscard]] std::size_t size() const override { return size_; }
    [[nodiscard]] const TableRow* row(std::size_t at) const override;
    [[nodiscard]] std::vector<std::size_t> pages() const;  // those that are there
    // Pages that are seen and not there.
    [[nodiscard]] std::vector<std::size_t> missing(const TableModel::Span& span) const;

private:
    std::size_t size_ = 0;
    std::map<std::size_t, std::vector<TableRow>> pages_;
};

struct List {
    std::string name;   // of its files: "due"
    std::string title;  // on paper: "What is due"
    std::string empty;  // said where there are no rows
    Columns columns;
    std::optional<TableSort> sort;
    std::string words;  // narrowed down to rows with these
    std::variant<KeptRows, PagedRows> rows;
    std::uint64_t made = 0;  // another number: other rows, the table begins at its first one

    [[nodiscard]] const TableRows& table() const;
    [[nodiscard]] bool paged() const { return std::holds_alternative<PagedRows>(rows); }
    void keep(std::vector<TableRow> all);  // sorted and narrowed as before
    void sort_by(const TableSort& by);     // kept rows only
    void narrow(const std::string& to);    // the same
};

[[nodiscard]] List list_of(std::string name, std::string title, std::string empty, Columns columns);

}  // namespace cotter::desk
