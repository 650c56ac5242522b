// What is measured where: the readings wanted at each place, with points, units, usual tools and usual values.
// A data table for the corner page and the keypad; pure, any thread.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/trailer/trailer.h"

namespace cotter {

// A unit on offer, and the smallest step that the usual tool shows in it.
struct UnitStep {
    std::string_view ucum;
    std::string_view step;  // a Number
};

struct ReadingKind {
    std::string_view what;                     // as records hold it
    std::string_view tool;                     // the usual instrument
    std::span<const std::string_view> points;  // empty: one nameless point
    std::span<const UnitStep> units;           // the usual one first
    double least = 0, most = 0;                // SI: values outside are asked about; zero itself never is
    bool fractions = false;                    // read in /8, /16 or /32
    bool sign = false;                         // below zero makes sense
    bool high = false;                         // of several points the highest counts, not the least
};

// A reading to be taken. With dual wheels each tyre has its own place.
struct WantedReading {
    const ReadingKind* kind = nullptr;
    Place place;
};

[[nodiscard]] std::span<const ReadingKind> all_reading_kinds();
[[nodiscard]] const ReadingKind* reading_kind(std::string_view what);  // nullptr: not in the table
// In the order in which they are usually taken. A corner's brake and hub decide; a nullptr trailer has only stations.
[[nodiscard]] std::vector<WantedReading> readings_wanted(const Trailer* trailer, const Place& place);

// Why there is no value, ready to choose: the first list for 'not measured', the second for 'not accessible'.
[[nodiscard]] std::span<const std::string_view> reasons_not_measured();
[[nodiscard]] std::span<const std::string_view> reasons_not_accessible();

}  // namespace cotter
