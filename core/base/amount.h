// Measured values as entered, with their unit. SI is computed, never stored instead.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/error.h"

namespace cotter {

// What a unit measures; amounts of different quantities cannot be compared.
enum class Quantity {
    length,
    mass,
    force,
    torque,
    pressure,
    temperature,
    volume,
    angle,
    voltage,
    current,
    resistance,
    time,
    ratio,
    charge,
    speed
};

// One unit: si = (value + shift) × factor. `ucum` is its code in the Unified Code for Units of Measure.
struct Unit {
    std::string_view ucum;   // "[lbf_av].[ft_i]"
    std::string_view label;  // "lb-ft"
    Quantity quantity;
    double factor;     // to SI: m, kg, N, N·m, Pa, K, m³, rad, V, A, Ω, s, 1, C, m/s
    double shift = 0;  // only temperatures have one
};

[[nodiscard]] std::span<const Unit> all_units();
[[nodiscard]] const Unit* find_unit(std::string_view ucum);  // nullptr when unknown

// A number as a person wrote it: "7.10", "-0.5", "3/32", "1 3/32". Kept to the letter.
class Number {
public:
    Number() = default;
    [[nodiscard]] static Result<Number> parse(std::string_view text);  // at most 24 characters, |value| < 1e12
    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] double value() const { return value_; }
    bool operator==(const Number& other) const { return text_ == other.text_; }

private:
    std::string text_ = "0";
    double value_ = 0;
};

// A value in a unit, as entered.
struct Amount {
    Number number;
    std::string unit = "1";  // a UCUM code of all_units()

    bool operator==(const Amount&) const = default;
    [[nodiscard]] double si() const;         // in the SI unit of the quantity
    [[nodiscard]] std::string text() const;  // "7.10 mm", "3/32 in"
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("value", s.number);
        f.must("unit", s.unit);
    }
};

[[nodiscard]] Result<Amount> make_amount(std::string_view number, std::string_view ucum);

// An SI value of the unit's quantity in that unit.
[[nodiscard]] double from_si(double si, const Unit& unit);

}  // namespace cotter
