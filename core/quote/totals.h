// From lines to a total: taxes once per rate, half-up; deposits beside it. Pure.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/survey/quote_records.h"

namespace cotter {

struct Totals {
    std::vector<QuoteTax> taxes;  // one a rate above 0, in order of first use
    std::int64_t lines_low = 0;   // without taxes and cores
    std::int64_t lines_high = 0;
    std::int64_t total_low = 0;  // with taxes, without cores
    std::int64_t total_high = 0;
    std::int64_t cores = 0;
};

// `refused` when a sum is too large. Tax is never below nothing.
[[nodiscard]] Result<Totals> totals_of(std::span<const QuoteLine> lines, const std::string& tax_name);

// Puts taxes, totals and deposits of its own lines into the quote.
[[nodiscard]] Result<> add_up(Quote& quote, const std::string& tax_name);

// Low and high total divided by the quote's corners, half-up; nothing when it has none.
struct PerCorner {
    std::int64_t low = 0;
    std::int64_t high = 0;
};
[[nodiscard]] std::optional<PerCorner> per_corner(const Quote& quote);

}  // namespace cotter
