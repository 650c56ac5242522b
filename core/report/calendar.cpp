// Entries, escaping, folding.
#include "core/report/calendar.h"

#include <fmt/format.h>

#include "core/report/ical_text.h"

namespace cotter {

namespace {

// Due by distance alone: the day after the work, so that the reminder is there before the trailer rolls far.
Date day_of(const Recheck& recheck, const CalendarFace& face) {
    return recheck.due.value_or(Date::from_days(face.at.local_date().days() + 1));
}

std::string description(const Recheck& r) {
    std::string out = r.words + ".";
    if (!r.places.empty()) out += "\nWhere: " + r.places + ".";
    return out + fmt::format("\nSource: {} ({}).", r.source, r.law ? "law" : "practice, mark c");
}

void add_event(std::string& out, const Job& job, const Recheck& r, const CalendarFace& face) {
    const Trailer* trailer = job.only<Trailer>();
    const std::string unit = trailer == nullptr || trailer->unit.empty() ? "" : ", " + trailer->unit;
    const Date day = day_of(r, face);
    add_ical_line(out, "BEGIN:VEVENT");
    add_ical_line(out, fmt::format("UID:{}-{}", job.id().text(), r.rule));
    add_ical_line(out, "DTSTAMP:" + ical_utc(face.at));
    add_ical_line(out, fmt::format("SEQUENCE:{}", face.revision - 1));
    add_ical_line(out, "DTSTART;VALUE=DATE:" + ical_day(day));
    add_ical_line(out, "DTEND;VALUE=DATE:" + ical_day(Date::from_days(day.days() + 1)));
    add_ical_line(out, "SUMMARY:" + ical_escaped(r.title + unit));
    add_ical_line(out, "DESCRIPTION:" + ical_escaped(description(r)));
    add_ical_line(out, "TRANSP:TRANSPARENT");
    add_ical_line(out, "END:VEVENT");
}

}  // namespace

std::string rechecks_ics(const Job& job, std::span<const Recheck> due, const CalendarFace& face) {
    if (due.empty()) return {};
    std::string out;
    add_ical_line(out, "BEGIN:VCALENDAR");
    add_ical_line(out, "VERSION:2.0");
    add_ical_line(out, "PRODID:-//" + ical_escaped(face.software) + "//rechecks//EN");
    for (const Recheck& recheck : due) add_event(out, job, recheck, face);
    add_ical_line(out, "END:VCALENDAR");
    return out;
}

}  // namespace cotter
