// RFC 4180 text as lines of fields, both ways. For the price shelf; pure.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"

namespace cotter {

struct CsvLine {
    std::size_t number = 0;  // of the file's line on which it begins, from 1
    std::vector<std::string> fields;
};

// CRLF or LF ends a line; empty lines are left out; a byte order mark at the start is ignored. `refused`: a quote in
// an unquoted field, text behind a closing quote, a quote left open; the line says where.
[[nodiscard]] Result<std::vector<CsvLine>> csv_lines(std::string_view text);

// Appends a line with its CRLF, fields quoted where they must be.
void add_csv_line(std::string& out, const std::vector<std::string>& fields);

// A person's text so that no spreadsheet runs it: an apostrophe in front where it begins like a formula.
[[nodiscard]] std::string guarded_text(std::string_view text);
// The other way.
[[nodiscard]] std::string unguarded_text(std::string_view text);

}  // namespace cotter
