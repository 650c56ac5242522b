// The one table of readings: what is measured, in which units and steps, with which tool, and which values are a slip,
// in the order in which they are usually taken. The keypad, the judge and the report read it; asked.h says where each
// is taken. Constant data; any thread.
#pragma once

#include <span>
#include <string_view>

#include "core/base/amount.h"
#include "core/trade/reading_names.h"

namespace cotter {

// A unit on offer, and the smallest step that the usual tool shows in it.
struct UnitStep {
    std::string_view ucum;
    std::string_view step;  // a Number
};

// Who makes a reading.
enum class ReadingUse {
    taken,     // offered on screens, and missing where it applies and was not taken
    extra,     // offered on screens for when it helps
    computed,  // follows from others; limits bound it
    replaced   // in older packets: has a record of its own now, is read and judged, and no longer offered
};

struct ReadingSpec {
    std::string_view name;       // as records hold it
    std::string_view component;  // "brake", "hub", "tyre", …
    Quantity quantity;           // units of another quantity are refused
    // SI. A value outside is a slip of the pen or of the unit: it is kept, and never judged.
    double lowest = 0, highest = 0;
    std::string_view renewed_by{};               // words of a finding's component whose repair ends the reading
    std::string_view tool{};                     // the usual instrument
    std::span<const std::string_view> points{};  // empty: one nameless point
    std::span<const UnitStep> units{};           // the usual one first
    double least = 0, most = 0;                  // SI: values outside are asked about; zero itself never is
    bool fractions = false;                      // read in /8, /16 or /32
    bool sign = false;                           // below zero makes sense
    bool high = false;                           // of several points the highest counts, not the least
    ReadingUse use = ReadingUse::taken;
};

[[nodiscard]] std::span<const ReadingSpec> all_readings();
// By name; a name that only begins with a known one ("hub temperature after road test") is that one. nullptr: unknown.
[[nodiscard]] const ReadingSpec* reading_spec(std::string_view name);
// The part of the trailer that a reading of this name is about; "other" when it is not in the table.
[[nodiscard]] std::string_view component_of(std::string_view name);
// Whether the repair of a component so named ends readings like this one: another part is there now.
[[nodiscard]] bool ended_by_repair(const ReadingSpec& spec, std::string_view component);
[[nodiscard]] inline bool is_offered(const ReadingSpec& spec) {
    return spec.use == ReadingUse::taken || spec.use == ReadingUse::extra;
}

}  // namespace cotter
