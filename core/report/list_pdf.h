// A table on pages of its own: a list of the office on paper. Same inputs, same bytes. Any thread.
#pragma once

#include <string>
#include <vector>

#include "core/base/bytes.h"
#include "core/base/error.h"
#include "core/base/time.h"
#include "core/report/paper.h"
#include "core/survey/words.h"

namespace cotter {

struct ListColumn {
    std::string title;
    double share = 1;  // of the width, against the other columns
};

struct ListCell {
    std::string text;
    std::optional<Grade> grade;  // its sign stands before the text
};

struct ListPaper {
    std::string title;               // "Due by 2026-06-13"
    std::vector<std::string> under;  // lines below it: what it was asked for
    std::vector<ListColumn> columns;
    std::vector<std::vector<ListCell>> rows;  // as many cells as columns
    std::string empty;                        // said where there are no rows
    Instant at;                               // the day on it, and the document's date
    std::string software;                     // "Cotter 0.1.0"
    Paper paper = Paper::a4;
    ByteView font, font_bold;  // TrueType files whose licence lets them be embedded
};

// Title, day, the table with its head on each page, page numbers. Refused for a font that does not load.
[[nodiscard]] Result<Bytes> list_pdf(const ListPaper& list);

}  // namespace cotter
