// Readings, torques and levels as tables for spreadsheets and scripts. Pure; any thread.
//
// Form: RFC 4180 with a header line, CRLF after every line, UTF-8 without a byte order mark, fields quoted only where
// they must be. Numbers as entered, units as UCUM codes, times RFC 3339, words as in job.json.
//
// Spreadsheets run a text that begins like a formula. So a text (never a number) that begins with = + - @, their
// full-width forms, a tab, a line break or an apostrophe gets one apostrophe in front. A reader that takes one leading
// apostrophe off a field has the text as entered back, to the letter; job.json holds it as it is in any case.
#pragma once

#include <string>

#include "core/survey/job.h"

namespace cotter {

// One row a point; a reading without points has one row with its `value` empty.
[[nodiscard]] std::string readings_csv(const Job& job);

// One row a nut and pass; `order` is the nut's turn in its pass. A joint without passes has one row.
[[nodiscard]] std::string torques_csv(const Job& job);

// One row a level.
[[nodiscard]] std::string levels_csv(const Job& job);

}  // namespace cotter
