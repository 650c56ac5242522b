// Units of goods.
#include "core/quote/extent.h"

#include <cmath>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/quote/exact.h"

namespace cotter {

namespace {

constexpr std::int64_t kMostOfUnit = 10'000'000'000;
constexpr double kMicro = 1e6;
constexpr double kMicrolitresInCubicMetre = 1e9;

Result<std::int64_t> measured(const Extent& extent, Quantity wanted, double per_si) {
    const Unit* unit = find_unit(extent.amount.unit);
    if (unit == nullptr || unit->quantity != wanted)
        return fail(Errc::refused, fmt::format("the unit is not one of {}", name_of(extent.basis)),
                    extent.amount.text());
    const double units = std::round(extent.amount.si() * per_si);
    if (!(units >= 0 && units <= static_cast<double>(kMostOfUnit)))
        return fail(Errc::refused, "the amount is below zero or too large", extent.amount.text());
    return static_cast<std::int64_t>(units);
}

Result<std::int64_t> counted(const Extent& extent) {
    const double value = extent.amount.number.value();
    if (extent.amount.unit != "1" || value != std::floor(value))
        return fail(Errc::refused, fmt::format("{} are counted in whole numbers", name_of(extent.basis)),
                    extent.amount.text());
    if (!(value >= 0 && value <= 10'000))
        return fail(Errc::refused, "the number is not from 0 to 10,000", extent.amount.text());
    return static_cast<std::int64_t>(value);
}

Number number(const std::string& text) {
    return Number::parse(text).value();  // made here, so it parses
}

}  // namespace

Result<std::int64_t> units_of(const Extent& extent) {
    switch (extent.basis) {
        case Basis::corners:
        case Basis::pieces:
            return counted(extent);
        case Basis::volume:
            return measured(extent, Quantity::volume, kMicrolitresInCubicMetre);
        case Basis::length:
            return measured(extent, Quantity::length, kMicro);
        case Basis::unsaid:
            break;
    }
    return fail(Errc::refused, "it is not said what is counted", extent.amount.text(),
                "say corners, pieces, volume or length");
}

Result<std::int64_t> with_spill(std::int64_t units, const Number& percent) {
    COTTER_ASSIGN(std::int64_t more, percent_of(units, percent));
    // percent_of() rounds to the nearest; what was rounded off is bought too.
    if (static_cast<double>(more) * 100 < static_cast<double>(units) * percent.value() - 1e-6) ++more;
    return units + more;
}

Extent extent_of(Basis basis, std::int64_t units) {
    if (basis == Basis::volume) return {basis, {number(std::to_string(units / 1000)), "mL"}};
    if (basis == Basis::length)
        return {basis, {number(fmt::format("{}.{:03}", units / 1'000'000, units / 1000 % 1000)), "m"}};
    return {basis, {number(std::to_string(units)), "1"}};
}

Extent corners(int count) {
    return extent_of(Basis::corners, count);
}

Extent pieces(int count) {
    return extent_of(Basis::pieces, count);
}

std::string extent_text(const Extent& extent) {
    const bool counts = extent.basis == Basis::corners || extent.basis == Basis::pieces;
    if (!counts) return extent.amount.text();
    std::string word(name_of(extent.basis));
    if (extent.amount.number.value() == 1) word.pop_back();
    return extent.amount.number.text() + " " + word;
}

std::string item_key(std::string_view item) {
    const auto from = item.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return ascii_lower(item.substr(from, item.find_last_not_of(" \t") - from + 1));
}

}  // namespace cotter
