// How the report says places, times, words and units. Pure; any thread.
#pragma once

#include <string>

#include "core/survey/job.h"

namespace cotter {

[[nodiscard]] std::string place_name(const Place& place);  // "Axle 1 left", "Axle 2 right, inner wheel", "Drawbar"
// A text of core, with the codes of corners as words: "Pads in, axle1-left" -> "Pads in, axle 1 left".
[[nodiscard]] std::string without_codes(std::string text);
[[nodiscard]] Place without_wheel(Place place);                              // the corner that a wheel belongs to
[[nodiscard]] std::string time_text(Instant at);                             // "2026-05-14 08:12 −05:00"
[[nodiscard]] std::string local_time_text(Instant at);                       // "2026-05-14 08:12"
[[nodiscard]] std::string offset_text(int offset_min);                       // "−05:00"
[[nodiscard]] std::string grade_text(Grade grade);                           // "Do not tow"
[[nodiscard]] std::string capital(std::string_view text);                    // first ASCII letter in upper case
[[nodiscard]] std::string amount_text(const std::optional<Amount>& amount);  // empty when there is none
[[nodiscard]] std::string unit_label(const std::string& ucum);               // the code itself when unknown

// "3 photos", "1 photo", "no photo"
[[nodiscard]] std::string count_text(std::size_t count, std::string_view one);

// The parts that are not empty, with `between` between them.
[[nodiscard]] std::string joined(std::initializer_list<std::string_view> parts, std::string_view between);

}  // namespace cotter
