// The office's table: a head to sort by, rows as many as there are and drawn as far as they are seen, a cursor, any
// number of chosen rows. Mouse, wheel, finger and keys. For the desk's screens.
#pragma once

#include "app/ui/table_model.h"
#include "app/ui/ui.h"

namespace cotter {

// Least heights on a desk, where a mouse points: dp.
inline constexpr float kTableRow = 34;
inline constexpr float kTableHead = 36;

struct TableSpec {
    std::string key;
    const std::vector<TableColumn>& columns;
    const TableRows& rows;
    std::optional<TableSort> sort;
    std::string empty;  // said where there are no rows
    bool keys = true;   // arrows, page, home, end, Enter, Space and Ctrl+A are this table's
    bool marks = true;  // Ctrl, Shift and Space choose several
};

struct TableAnswer {
    std::optional<std::size_t> opened;       // a row, by Enter or two clicks
    std::optional<TableSort> sort;           // asked for by a click on a head
    std::optional<TableModel::Span> wanted;  // rows that are seen and not there yet
};

// Rows are drawn whole: what of `rect` is left below the last one stays empty, see whole_rows().
TableAnswer table(UiContext& ui, const TableSpec& spec, TableModel& model, const Rect& rect);

// A letter or figure key pressed while no field has the keyboard: somebody begins to search.
[[nodiscard]] std::optional<char> typed_key(const UiContext& ui);

// The height of a table that fits into `height` and ends with a whole row; one row at least.
[[nodiscard]] float whole_rows(float height);

// As tall as a table of so many rows is, at most `most` of them: for tables within a page.
[[nodiscard]] float table_height(std::size_t rows, std::size_t most);

}  // namespace cotter
