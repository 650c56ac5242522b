// Moments and dates as the records keep them: RFC 3339 with the offset of the place. No time zones, no clock.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/error.h"

namespace cotter {

// A day of the proleptic Gregorian calendar.
struct Date {
    int year = 1970;
    int month = 1;  // 1…12
    int day = 1;    // 1…31

    auto operator<=>(const Date&) const = default;

    [[nodiscard]] std::string text() const;   // "2026-05-14"
    [[nodiscard]] std::int64_t days() const;  // since 1970-01-01
    [[nodiscard]] static Date from_days(std::int64_t days);
    [[nodiscard]] static Result<Date> parse(std::string_view text);  // years 1900…2199 only
};

// A moment with the offset at the place where it was taken. Order and equality are by moment, then offset.
struct Instant {
    std::int64_t unix_s = 0;
    int offset_min = 0;  // minutes east of UTC, −1439…1439

    auto operator<=>(const Instant&) const = default;

    [[nodiscard]] std::string text() const;  // "2026-05-14T08:12:03-05:00"; "+00:00" never "Z"
    [[nodiscard]] Date local_date() const;
    struct Wall {
        Date date;
        int hour, minute, second;
    };
    [[nodiscard]] Wall wall() const;  // what a clock at the place showed
    // Accepts "Z" and fractions of a second (dropped). Fails `refused` for anything but RFC 3339.
    [[nodiscard]] static Result<Instant> parse(std::string_view text);
    [[nodiscard]] static Instant from_wall(const Wall& wall, int offset_min);
};

}  // namespace cotter
