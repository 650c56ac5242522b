// Why one quote is dearer than another: every cent of the difference, in words. Pure.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/survey/quote_records.h"

namespace cotter {

// One reason. The differences of all of them add up to the difference of the high totals exactly.
struct Difference {
    LineKind kind = LineKind::parts;  // `other` with text "Tax" for taxes
    std::string what;                 // "brake pads", "Freight", "Labour", …
    std::string words;                // "2 × 69.50, one covers 2 corners, against 1 × 149.00, one covers 4 corners"
    std::int64_t low = 0;             // a's low amount less b's
    std::int64_t high = 0;
    bool beside = false;  // a core deposit: beside the totals, not part of the sum
};

struct Explanation {
    std::string headline;              // "A is 88.80 dearer than B", "A costs the same as B"
    std::vector<Difference> reasons;   // largest first; what is the same is left out; deposits last
    std::vector<std::string> remarks;  // leftovers, lead times, what is missing, on either side
    std::int64_t low = 0;              // a's total less b's
    std::int64_t high = 0;
};

// `refused` when the currencies differ. `needs`: those of the job, for the names of what is bought.
[[nodiscard]] Result<Explanation> why_dearer(const Quote& a, const Quote& b, std::span<const Need> needs);

// Quotes beside each other, in the order in which a person would weigh them.
struct SideBySide {
    const Quote* quote = nullptr;
    std::int64_t per_corner_low = 0;  // 0 when the quote has no corners
    std::int64_t per_corner_high = 0;
    int warranty_months = 0;  // the shortest of its parts
    bool warranty_labour = false;
};
enum class SortBy { total, soonest, completeness, warranty };
// Complete ones first when sorting by completeness; otherwise by that key, then by high total, then labour warranty.
[[nodiscard]] std::vector<SideBySide> side_by_side(std::span<const Quote> quotes, std::span<const Offer> offers,
                                                   SortBy by);

}  // namespace cotter
