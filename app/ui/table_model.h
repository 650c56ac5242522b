// A table without its drawing: which columns are shown, what it is sorted by, where the cursor is, which rows are
// chosen, how far it is scrolled. Rows are told by their number only; whoever has them looks them up. Pure; any thread.
#pragma once

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/base/sign.h"
#include "core/survey/words.h"

namespace cotter {

struct TableColumn {
    std::string key;  // stable: what settings and commands call it
    std::string title;
    float share = 1;     // of the width, against the other columns shown
    float least = 80;    // dp
    bool right = false;  // figures stand on the right
    bool sorts = true;
    bool shown = true;
    bool idle = false;  // has nothing to say at present: not drawn, though it is among those shown

    [[nodiscard]] bool drawn() const { return shown && !idle; }
};

struct TableCell {
    std::string text;
    std::optional<double> number;  // sorted by this where there is one
    std::optional<Grade> grade;    // its mark stands before the text
    std::optional<Sign> sign;      // in its place: of the answer about towing

    TableCell(std::string t = {}) : text(std::move(t)) {}
    TableCell(const char* t) : text(t) {}
    TableCell(std::string t, double n) : text(std::move(t)), number(n) {}
};

struct TableRow {
    std::string key;    // the record's id
    std::string label;  // what a screen reader and the test driver call it
    std::vector<TableCell> cells;
    std::string detail;   // all of it in words, shown while the cursor is on it
    bool marked = false;  // worth a look: flagged, in conflict, refused
};

// Where the rows come from. Pages may be missing yet: row() then gives nullptr.
class TableRows {
public:
    virtual ~TableRows() = default;
    [[nodiscard]] virtual std::size_t size() const = 0;
    [[nodiscard]] virtual const TableRow* row(std::size_t at) const = 0;
};

struct TableSort {
    std::size_t column = 0;
    bool falling = false;
    bool operator==(const TableSort&) const = default;
};

enum class TableKey { up, down, page_up, page_down, home, end, space, all };

class TableModel {
public:
    // A table of other rows: the cursor goes to the first one, nothing is chosen.
    void start(std::size_t rows);
    // More or fewer of the same rows: cursor and choice stay where they still mean something.
    void resize(std::size_t rows);
    [[nodiscard]] std::size_t rows() const { return rows_; }

    [[nodiscard]] std::size_t cursor() const { return cursor_; }
    // `shift` chooses what the cursor passes; `ctrl` moves it alone. True when anything changed.
    bool press(TableKey key, bool shift, bool ctrl);
    void click(std::size_t row, bool shift, bool ctrl);

    [[nodiscard]] bool chosen(std::size_t row) const { return all_ != others_.contains(row); }
    [[nodiscard]] std::size_t chosen_count() const { return all_ ? rows_ - others_.size() : others_.size(); }
    [[nodiscard]] std::vector<std::size_t> chosen_rows(std::size_t most) const;  // in order, the first `most`

    // What is seen: set by the drawing, in rows.
    void set_page(float rows) { page_ = rows < 1 ? 1 : rows; }
    [[nodiscard]] float top() const { return top_; }  // the first row seen, with its fraction
    void scroll_to(float top);
    void show_cursor();
    struct Span {
        std::size_t from = 0, to = 0;  // to: one behind
    };
    [[nodiscard]] Span seen() const;

    // How wide the widest text of each column is, with the room around it: measured by the drawing each time there are
    // other rows. It only grows, so that columns come to rest while somebody types; but it begins anew with other
    // fonts, `baked` as of Faces.
    [[nodiscard]] bool wants_measure(unsigned baked) const { return measure_ || baked != baked_; }
    void measured(const std::vector<float>& holds, unsigned baked);
    [[nodiscard]] const std::vector<float>& holds() const { return holds_; }

private:
    void choose_only(std::size_t row);
    void choose_between(std::size_t a, std::size_t b);
    void go(std::size_t row, bool shift, bool ctrl);

    std::size_t rows_ = 0, cursor_ = 0, anchor_ = 0;
    bool all_ = false;
    std::set<std::size_t> others_;  // chosen ones; where all are chosen, those that are not
    float top_ = 0, page_ = 20;
    bool measure_ = true;
    unsigned baked_ = 0;
    std::vector<float> holds_;
};

// All rows in memory, sorted and narrowed down here.
class KeptRows final : public TableRows {
public:
    KeptRows() = default;
    explicit KeptRows(std::vector<TableRow> rows);
    [[nodiscard]] std::size_t size() const override { return order_.size(); }
    [[nodiscard]] const TableRow* row(std::size_t at) const override;
    [[nodiscard]] std::size_t all() const { return rows_.size(); }

    // Equal ones stay in the order in which they were given.
    void sort(const std::optional<TableSort>& sort);
    // Only rows that hold each of the words, compared without case.
    void narrow(const std::string& words);

private:
    void arrange();
    std::vector<TableRow> rows_;
    std::vector<std::string> folded_;  // all cells of a row, for narrowing
    std::vector<std::size_t> order_;
    std::optional<TableSort> sort_;
    std::string words_;
};

// Widths of the columns drawn for a table of `width` dp, in their order; 0 for the others. Columns that do not fit with
// their least width are left out from the right, the first one never. `holds`: what the texts of each column take.
// Short columns get what they hold, long ones are cut to one length, and what is left goes by the shares. Without it
// each gets its least width and its share.
[[nodiscard]] std::vector<float> column_widths(const std::vector<TableColumn>& columns, float width,
                                               const std::vector<float>& holds = {});

}  // namespace cotter
