// The bits of iCalendar text (RFC 5545) that every calendar of ours is made of. Pure; any thread.
#pragma once

#include <string>
#include <string_view>

#include "core/base/time.h"

namespace cotter {

// A text as a property's value.
[[nodiscard]] std::string ical_escaped(std::string_view text);
// Adds a line, folded so that none is longer than 75 bytes and no character is torn.
void add_ical_line(std::string& out, std::string_view content);
[[nodiscard]] std::string ical_day(const Date& date);   // "20260514"
[[nodiscard]] std::string ical_utc(const Instant& at);  // "20260514T214012Z"

}  // namespace cotter
