// See list_pdf.h.
#include "core/report/list_pdf.h"

#include <fmt/format.h>

#include "core/report/table.h"

namespace cotter {

Result<Bytes> list_pdf(const ListPaper& list) {
    COTTER_ASSIGN(const auto canvas,
                  Canvas::make(list.paper, list.font, list.font_bold, {list.title, "", list.software, list.at}));
    Sheet sheet(*canvas);
    sheet.part(list.title);
    sheet.paragraph("As of " + list.at.local_date().text());
    for (const std::string& line : list.under) sheet.paragraph(line);
    sheet.gap(4);
    std::vector<Column> columns;
    for (const ListColumn& column : list.columns) columns.push_back({column.title, column.share});
    Table table(std::move(columns));
    for (const std::vector<ListCell>& row : list.rows) {
        std::vector<Cell> cells;
        for (const ListCell& cell : row) cells.push_back(cell.grade ? Cell::graded(*cell.grade) : Cell(cell.text));
        table.add(std::move(cells));
    }
    if (table.empty())
        sheet.paragraph(list.empty);
    else
        table.draw(sheet);
    sheet.feet(fmt::format("{} · {} · {}", list.title, list.at.local_date().text(), list.software));
    return canvas->finish();
}

}  // namespace cotter
