// Rounding and the check of units.
#include "core/work/amounts.h"

#include <cmath>
#include <fmt/format.h>

#include "core/base/text.h"

namespace cotter {

namespace {

const char* quantity_word(Quantity quantity) {
    switch (quantity) {
        case Quantity::torque:
            return "a torque (lb-ft, lb-in or N·m)";
        case Quantity::length:
            return "a length (mm, in, m or ft)";
        case Quantity::volume:
            return "a volume (mL, L or fl oz)";
        case Quantity::time:
            return "a time (min, h or days)";
        default:
            return "the right kind";
    }
}

}  // namespace

std::string rounded_text(double value, int decimals) {
    const double scale = std::pow(10.0, decimals);
    // The nudge lets a half that binary cannot hold exactly go up as on paper.
    const double units = std::round(value * scale * (1 + 1e-12));
    return fmt::format("{:.{}f}", (units == 0 ? 0.0 : units) / scale, decimals);
}

Amount amount_of(double value, std::string_view ucum, int decimals) {
    Amount out;
    if (auto number = Number::parse(rounded_text(value, decimals))) out.number = *number;
    out.unit = ucum;
    return out;
}

Result<> need_quantity(const Amount& amount, Quantity quantity, std::string_view what) {
    const Unit* unit = find_unit(amount.unit);
    if (unit != nullptr && unit->quantity == quantity) return {};
    return fail(Errc::refused, fmt::format("{} is not {}", what, quantity_word(quantity)), one_line(amount.text(), 60),
                "choose the unit that stands in the maker's document");
}

}  // namespace cotter
