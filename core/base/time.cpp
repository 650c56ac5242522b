// RFC 3339 text and civil-date arithmetic (std::chrono's calendar does the counting).
#include "core/base/time.h"

#include <charconv>
#include <chrono>
#include <cstdlib>
#include <fmt/format.h>

namespace cotter {

namespace {

unexpected<Error> bad_time(std::string_view text, const char* wanted) {
    return fail(Errc::refused, fmt::format("not a {}", wanted), fmt::format("'{}'", text));
}

// The number in text[at, at+count), or −1 when it is not all digits.
int digits(std::string_view text, std::size_t at, std::size_t count) {
    if (at + count > text.size()) return -1;
    int value = 0;
    for (std::size_t i = at; i < at + count; ++i) {
        if (text[i] < '0' || text[i] > '9') return -1;
        value = value * 10 + (text[i] - '0');
    }
    return value;
}

// Minutes of "Z", "+hh:mm" or "-hh:mm"; fails for anything else.
Result<int> parse_offset(std::string_view text, std::string_view whole) {
    if (text == "Z" || text == "z") return 0;
    if (text.size() != 6 || (text[0] != '+' && text[0] != '-') || text[3] != ':')
        return bad_time(whole, "time with its offset, like 2026-05-14T08:12:03-05:00");
    const int hours = digits(text, 1, 2);
    const int minutes = digits(text, 4, 2);
    if (hours < 0 || hours > 23 || minutes < 0 || minutes > 59) return bad_time(whole, "time with a possible offset");
    const int total = hours * 60 + minutes;
    return text[0] == '-' ? -total : total;
}

}  // namespace

std::int64_t Date::days() const {
    using namespace std::chrono;
    const year_month_day ymd{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                             std::chrono::day{static_cast<unsigned>(day)}};
    return sys_days{ymd}.time_since_epoch().count();
}

Date Date::from_days(std::int64_t days) {
    using namespace std::chrono;
    const year_month_day ymd{sys_days{std::chrono::days{days}}};
    return {int(ymd.year()), int(unsigned(ymd.month())), int(unsigned(ymd.day()))};
}

std::string Date::text() const {
    return fmt::format("{:04}-{:02}-{:02}", year, month, day);
}

Result<Date> Date::parse(std::string_view text) {
    const Date date{digits(text, 0, 4), digits(text, 5, 2), digits(text, 8, 2)};
    const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
    if (!shaped || date.year < 1900 || date.year > 2199 || date.month < 1 || date.day < 1 || date.month > 12 ||
        from_days(date.days()) != date)
        return bad_time(text, "date, like 2026-05-14");
    return date;
}

Instant::Wall Instant::wall() const {
    const std::int64_t local = unix_s + std::int64_t{offset_min} * 60;
    const std::int64_t day = local >= 0 ? local / 86400 : (local - 86399) / 86400;
    const int second = static_cast<int>(local - day * 86400);
    return {Date::from_days(day), second / 3600, second / 60 % 60, second % 60};
}

Date Instant::local_date() const {
    return wall().date;
}

std::string Instant::text() const {
    const Wall w = wall();
    return fmt::format("{}T{:02}:{:02}:{:02}{}{:02}:{:02}", w.date.text(), w.hour, w.minute, w.second,
                       offset_min < 0 ? '-' : '+', std::abs(offset_min) / 60, std::abs(offset_min) % 60);
}

Instant Instant::from_wall(const Wall& wall, int offset_min) {
    const std::int64_t local = wall.date.days() * 86400 + wall.hour * 3600 + wall.minute * 60 + wall.second;
    return {local - std::int64_t{offset_min} * 60, offset_min};
}

Result<Instant> Instant::parse(std::string_view text) {
    const auto date = Date::parse(text.substr(0, 10));
    const Wall wall{date ? *date : Date{}, digits(text, 11, 2), digits(text, 14, 2), digits(text, 17, 2)};
    const bool shaped =
        date && text.size() > 19 && (text[10] == 'T' || text[10] == 't') && text[13] == ':' && text[16] == ':';
    if (!shaped || wall.hour < 0 || wall.hour > 23 || wall.minute < 0 || wall.minute > 59 || wall.second < 0 ||
        wall.second > 59)
        return bad_time(text, "time with its offset, like 2026-05-14T08:12:03-05:00");
    std::size_t at = 19;
    if (text[at] == '.') {
        const auto end = text.find_first_not_of("0123456789", at + 1);
        if (end == std::string_view::npos || end == at + 1) return bad_time(text, "time with its offset");
        at = end;
    }
    COTTER_ASSIGN(const int offset, parse_offset(text.substr(at), text));
    return from_wall(wall, offset);
}

}  // namespace cotter
