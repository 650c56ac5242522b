// Ages.
#include "core/quote/shelf.h"

#include <fmt/format.h>

namespace cotter {

namespace {
constexpr std::int64_t kOldFromDays = 90;

std::string ago(std::int64_t count, const char* unit) {
    return fmt::format("seen {} {}{} ago", count, unit, count == 1 ? "" : "s");
}

// Whole calendar months between two days.
std::int64_t months_between(const Date& from, const Date& to) {
    const std::int64_t months = (to.year - from.year) * 12 + (to.month - from.month);
    return to.day < from.day ? months - 1 : months;
}
}  // namespace

std::string age_text(const std::optional<Date>& seen, const Date& today) {
    if (!seen) return "not known when seen";
    const std::int64_t days = today.days() - seen->days();
    if (days < 0) return "seen on a day to come";
    if (days == 0) return "seen today";
    if (days == 1) return "seen yesterday";
    if (days < 14) return ago(days, "day");
    const std::int64_t months = months_between(*seen, today);
    if (months < 2) return ago(days / 7, "week");
    return months < 24 ? ago(months, "month") : ago(months / 12, "year");
}

bool is_old(const std::optional<Date>& seen, const Date& today) {
    return !seen || today.days() - seen->days() >= kOldFromDays;
}

Offer taken_into_job(const Offer& shelved, const Instant& at, const std::string& by, Random& random) {
    Offer offer = shelved;
    offer.id = {Uuid::random(random)};
    offer.shot.reset();
    offer.at = at;
    offer.by = by;
    return offer;
}

}  // namespace cotter
