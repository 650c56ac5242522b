// Book labor by operation: which operations the needs call for, and what the shop's own hours make of them. The hours
// are the shop's data alone. Where none are entered the quote says so; there is no default and no zero. Pure; any
// thread.
//
// Method: operations are counted corner by corner. Of operations that share their work (the caliper comes off once for
// pads and rotor) only the longest entered one is charged at a corner. Set-up is charged once for the trailer, once for
// each axle, the wheel once for each corner, bleeding once a visit.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/quote/operations.h"
#include "core/survey/quote_records.h"

namespace cotter {

// A shop's hours for one operation.
struct OpHours {
    Number low;
    Number high;
    std::string source;  // "shop's own list, 2026-03", "maker's sheet", "actual"
};
using ShopHours = std::map<std::string, OpHours, std::less<>>;

// An operation and where it is done; pieces: so many, 0 when nobody knows yet.
struct CalledOp {
    const Operation* op = nullptr;
    std::vector<Place> places;
    int count = 0;
};
// In the table's order, each once; overlaps are still in it. Needs that were left out call for nothing.
[[nodiscard]] std::vector<CalledOp> operations_for(std::span<const Need> needs);

// One operation's hours in all, in thousandths of an hour so that sums are exact.
struct BookedHours {
    std::string text;  // "Pads, 2 times"
    std::int64_t low = 0;
    std::int64_t high = 0;
    std::string source;
};
struct BookLabour {
    std::vector<BookedHours> lines;
    std::vector<std::string> not_entered;  // titles of operations without hours
    std::vector<std::string> not_counted;  // titles of those whose number nobody knows yet
};
// `refused`: hours below zero, low above high, more than can be counted.
[[nodiscard]] Result<BookLabour> book_labour(std::span<const Need> needs, const ShopHours& hours);

}  // namespace cotter
