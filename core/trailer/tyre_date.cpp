// Tyre date codes.
#include "core/trailer/tyre_date.h"

#include <fmt/format.h>

namespace cotter {

namespace {
// 0 for Sunday … 6 for Saturday; 1970-01-01 was a Thursday.
int weekday(std::int64_t days) {
    return static_cast<int>(((days + 4) % 7 + 7) % 7);
}

std::int64_t first_sunday(int year) {
    const std::int64_t january_first = Date{year, 1, 1}.days();
    return january_first + (7 - weekday(january_first)) % 7;
}
}  // namespace

Result<TyreWeek> tyre_week(std::string_view tin) {
    const auto refuse = [&](std::string why) { return fail(Errc::refused, std::move(why), fmt::format("'{}'", tin)); };
    const std::string_view code = tin.size() > 4 ? tin.substr(tin.size() - 4) : tin;
    if (code.size() != 4 || code.find_first_not_of("0123456789") != std::string_view::npos)
        return refuse("a tyre's date code is four digits: week and year");
    const int week = (code[0] - '0') * 10 + (code[1] - '0');
    const int year = 2000 + (code[2] - '0') * 10 + (code[3] - '0');
    const std::int64_t first = first_sunday(year) + (week - 1) * 7;
    if (week == 0 || week > 53 || Date::from_days(first).year != year)
        return refuse(fmt::format("the year {} has no week {:02}", year, week));
    return TyreWeek{Date::from_days(first), Date::from_days(first + 6)};
}

double tyre_age_years(const TyreWeek& week, const Date& day) {
    return static_cast<double>(day.days() - week.first.days()) / 365.25;
}

}  // namespace cotter
