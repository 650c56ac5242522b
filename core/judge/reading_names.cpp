// The table of known readings. The ranges are wide: they catch a wrong unit, not a worn part.
#include "core/judge/reading_names.h"

#include <array>

namespace cotter {

namespace {

constexpr double kPsi = 6894.757;
constexpr double kTon = 1000;

using enum Quantity;
constexpr std::array kKnown{
    KnownReading{what::pad_thickness, "brake", length, 0, 0.040, "pad"},
    KnownReading{what::lining_thickness, "brake", length, 0, 0.040, "shoe lining"},
    KnownReading{what::rotor_machine_to, "brake", length, 0.003, 0.080, "rotor"},
    KnownReading{what::rotor_variation, "brake", length, 0, 0.01, "rotor"},
    KnownReading{what::rotor_thickness, "brake", length, 0.003, 0.080, "rotor"},
    KnownReading{what::rotor_cut, "brake", length, 0, 0.005, "rotor"},
    KnownReading{what::rotor_runout, "brake", length, 0, 0.01, "rotor"},
    KnownReading{what::drum_diameter, "brake", length, 0.1, 0.6, "drum"},
    KnownReading{what::pad_when_new, "brake", length, 0.003, 0.040, ""},
    KnownReading{what::end_play, "hub", length, 0, 0.01, "bearing hub spindle"},
    KnownReading{what::tread_depth, "tyre", length, 0, 0.03, "tyre"},
    KnownReading{what::tyre_date, "tyre", ratio, 0, 9999, "tyre"},
    KnownReading{what::load_index, "tyre", ratio, 50, 200, "tyre"},
    KnownReading{what::load_rating, "tyre", mass, 200, 6 * kTon, "tyre"},
    KnownReading{what::pressure_cold, "tyre", pressure, 0, 160 * kPsi, "tyre"},
    KnownReading{what::pressure_hot, "tyre", pressure, 0, 180 * kPsi, "tyre"},
    KnownReading{what::hub_over_mates, "hub", temperature, -200, 700, ""},
    KnownReading{what::hub_temperature, "hub", temperature, 223, 773, ""},
    KnownReading{what::pressure_hold, "hydraulics", pressure, 0, 3000 * kPsi, ""},
    KnownReading{what::line_pressure, "hydraulics", pressure, 0, 3000 * kPsi, ""},
    KnownReading{what::fluid_moisture, "hydraulics", ratio, 0, 0.2, "fluid"},
    KnownReading{what::fluid_boiling, "hydraulics", temperature, 360, 600, "fluid"},
    KnownReading{what::reservoir_fill, "hydraulics", ratio, 0, 1.2, "fluid reservoir"},
    KnownReading{what::battery_volts, "breakaway", voltage, 0, 20, "battery"},
    KnownReading{what::battery_held, "breakaway", Quantity::time, 0, 86400, "battery breakaway"},
    KnownReading{what::battery_capacity, "breakaway", charge, 3600, 3600.0 * 200, "battery"},
    KnownReading{what::magnet_current, "brake", current, 0, 12, "magnet"},
    KnownReading{what::axle_weight, "load", mass, 20, 15 * kTon, ""},
    KnownReading{what::wheel_weight, "load", mass, 10, 8 * kTon, ""},
    KnownReading{what::tongue_weight, "load", mass, 0, 10 * kTon, ""},
    KnownReading{what::tow_vehicle_rating, "load", mass, 300, 50 * kTon, ""},
    KnownReading{what::run_since, "use", length, 1000, 1e9, ""},
    KnownReading{what::run_total, "use", length, 0, 1e10, ""},
};

}  // namespace

const KnownReading* known_reading(std::string_view name) {
    const KnownReading* begins = nullptr;
    for (const KnownReading& known : kKnown) {
        if (known.name == name) return &known;
        const bool more = name.size() > known.name.size() && name.starts_with(known.name);
        if (more && name[known.name.size()] == ' ' && known.name == what::hub_temperature) begins = &known;
    }
    return begins;
}

std::string_view component_of(std::string_view name) {
    const KnownReading* known = known_reading(name);
    return known == nullptr ? "other" : known->component;
}

}  // namespace cotter
