// The unit table and numbers as written. Factors are exact by definition (NIST SP 811) unless marked.
#include "core/base/amount.h"

#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <optional>

#include "core/base/decimal.h"

namespace cotter {

namespace {

constexpr double kPound = 0.45359237;             // kg
constexpr double kPoundForce = kPound * 9.80665;  // N
constexpr double kInch = 0.0254;                  // m
constexpr double kPsi = kPoundForce / (kInch * kInch);

using enum Quantity;
constexpr std::array kUnits{
    Unit{"mm", "mm", length, 1e-3},
    Unit{"cm", "cm", length, 1e-2},
    Unit{"m", "m", length, 1},
    Unit{"km", "km", length, 1e3},
    Unit{"[in_i]", "in", length, kInch},
    Unit{"[ft_i]", "ft", length, 12 * kInch},
    Unit{"[mi_i]", "mi", length, 63360 * kInch},
    Unit{"kg", "kg", mass, 1},
    Unit{"[lb_av]", "lb", mass, kPound},
    Unit{"N", "N", force, 1},
    Unit{"[lbf_av]", "lbf", force, kPoundForce},
    Unit{"N.m", "N·m", torque, 1},
    Unit{"[lbf_av].[ft_i]", "lb-ft", torque, kPoundForce * 12 * kInch},
    Unit{"[lbf_av].[in_i]", "lb-in", torque, kPoundForce* kInch},
    Unit{"kPa", "kPa", pressure, 1e3},
    Unit{"bar", "bar", pressure, 1e5},
    Unit{"[psi]", "psi", pressure, kPsi},
    Unit{"Cel", "°C", temperature, 1, 273.15},
    Unit{"[degF]", "°F", temperature, 5.0 / 9.0, 459.67},
    Unit{"K", "K", temperature, 1},
    Unit{"mL", "mL", volume, 1e-6},
    Unit{"L", "L", volume, 1e-3},
    Unit{"[foz_us]", "fl oz", volume, 2.95735295625e-5},
    Unit{"[pt_us]", "pt", volume, 4.73176473e-4},
    Unit{"[qt_us]", "qt", volume, 9.46352946e-4},
    Unit{"deg", "°", angle, std::numbers::pi / 180},
    Unit{"V", "V", voltage, 1},
    Unit{"A", "A", current, 1},
    Unit{"Ohm", "Ω", resistance, 1},
    Unit{"s", "s", Quantity::time, 1},
    Unit{"min", "min", Quantity::time, 60},
    Unit{"h", "h", Quantity::time, 3600},
    Unit{"d", "days", Quantity::time, 86400},
    Unit{"%", "%", ratio, 1e-2},
    Unit{"1", "", ratio, 1},
    Unit{"A.h", "Ah", charge, 3600},
    Unit{"[mi_i]/h", "mph", speed, 63360 * kInch / 3600},
    Unit{"km/h", "km/h", speed, 1.0 / 3.6},
};

// Reads a plain decimal ("12", "0.50"); false for anything else, exponents and signs too.
bool read_decimal(std::string_view text, double& value) {
    if (text.empty() || text.find_first_not_of("0123456789.") != std::string_view::npos || text.front() == '.' ||
        text.back() == '.')
        return false;
    const std::optional<double> read = read_double(text);
    value = read.value_or(value);
    return read.has_value();
}

// Reads "3/32" or "1 3/32".
bool read_fraction(std::string_view text, double& value) {
    double whole = 0;
    const auto space = text.find(' ');
    if (space != std::string_view::npos) {
        if (text.substr(0, space).find('.') != std::string_view::npos || !read_decimal(text.substr(0, space), whole))
            return false;
        text.remove_prefix(space + 1);
    }
    const auto slash = text.find('/');
    double top = 0;
    double bottom = 0;
    if (slash == std::string_view::npos || text.find('.') != std::string_view::npos ||
        !read_decimal(text.substr(0, slash), top) || !read_decimal(text.substr(slash + 1), bottom) || bottom == 0)
        return false;
    value = whole + top / bottom;
    return true;
}

}  // namespace

std::span<const Unit> all_units() {
    return kUnits;
}

const Unit* find_unit(std::string_view ucum) {
    for (const Unit& unit : kUnits)
        if (unit.ucum == ucum) return &unit;
    return nullptr;
}

Result<Number> Number::parse(std::string_view text) {
    std::string_view body = text;
    const bool negative = body.starts_with('-');
    if (negative) body.remove_prefix(1);
    double value = 0;
    if (text.size() > 24 || !(read_decimal(body, value) || read_fraction(body, value)) || value >= 1e12)
        return fail(Errc::refused, "not a number", fmt::format("'{}'", text.substr(0, 40)),
                    "write it like 7.10, 3/32 or 1 3/32");
    Number number;
    number.text_ = text;
    number.value_ = negative ? -value : value;
    return number;
}

double Amount::si() const {
    const Unit* known = find_unit(unit);
    return known == nullptr ? std::nan("") : (number.value() + known->shift) * known->factor;
}

std::string Amount::text() const {
    const Unit* known = find_unit(unit);
    const std::string_view label = known == nullptr ? std::string_view(unit) : known->label;
    return label.empty() ? number.text() : fmt::format("{} {}", number.text(), label);
}

Result<Amount> make_amount(std::string_view number, std::string_view ucum) {
    if (find_unit(ucum) == nullptr) return fail(Errc::refused, "unknown unit", fmt::format("'{}'", ucum));
    COTTER_ASSIGN(Number parsed, Number::parse(number));
    return Amount{std::move(parsed), std::string(ucum)};
}

double from_si(double si, const Unit& unit) {
    return si / unit.factor - unit.shift;
}

}  // namespace cotter
