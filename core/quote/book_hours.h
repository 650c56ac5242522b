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

#include "core/quote/draft.h"

namespace cotter {

enum class OpPer { trailer, axle, corner, piece };
constexpr auto names(OpPer) {
    return name_list("trailer", "axle", "corner", "piece");
}

struct Operation {
    std::string_view id;     // "pads": what the shop's hours are kept under
    std::string_view title;  // "Pads"
    OpPer per;
    std::string_view items;     // needs that call for it, parted by '|'
    std::string_view not_with;  // operations that do its work too, at the same place
    bool wheel_off;             // the wheel comes off for it
    std::string_view includes;  // said to whoever enters the hours
};
[[nodiscard]] std::span<const Operation> operations();
[[nodiscard]] const Operation* find_operation(std::string_view id);

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

struct BookLabour {
    std::vector<Labour> lines;         // for QuoteTerms::labour
    std::vector<std::string> missing;  // "Pads: hours not entered"; for QuoteTerms::not_priced
};
// `refused`: hours below zero, low above high, more than can be counted.
[[nodiscard]] Result<BookLabour> book_labour(std::span<const Need> needs, const ShopHours& hours, std::int64_t rate);

}  // namespace cotter
