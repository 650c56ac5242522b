// Entries, escaping, folding.
#include "core/report/calendar.h"

#include <fmt/format.h>

namespace cotter {

namespace {

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == '\\' || c == ';' || c == ',') out += '\\';
        if (c == '\n')
            out += "\\n";
        else if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F)
            out += c;
    }
    return out;
}

// Folded so that no line is longer than 75 bytes and no character is torn.
void add_content(std::string& out, std::string_view content) {
    std::size_t room = 75;
    while (content.size() > room) {
        std::size_t cut = room;
        while (cut > 1 && (static_cast<unsigned char>(content[cut]) & 0xC0) == 0x80) --cut;
        out += content.substr(0, cut);
        out += "\r\n ";
        content.remove_prefix(cut);
        room = 74;
    }
    out += content;
    out += "\r\n";
}

std::string compact(const Date& date) {
    return fmt::format("{:04}{:02}{:02}", date.year, date.month, date.day);
}

std::string utc(const Instant& at) {
    const auto wall = Instant{at.unix_s, 0}.wall();
    return fmt::format("{}T{:02}{:02}{:02}Z", compact(wall.date), wall.hour, wall.minute, wall.second);
}

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
    add_content(out, "BEGIN:VEVENT");
    add_content(out, fmt::format("UID:{}-{}", job.id().text(), r.rule));
    add_content(out, "DTSTAMP:" + utc(face.at));
    add_content(out, fmt::format("SEQUENCE:{}", face.revision - 1));
    add_content(out, "DTSTART;VALUE=DATE:" + compact(day));
    add_content(out, "DTEND;VALUE=DATE:" + compact(Date::from_days(day.days() + 1)));
    add_content(out, "SUMMARY:" + escaped(r.title + unit));
    add_content(out, "DESCRIPTION:" + escaped(description(r)));
    add_content(out, "TRANSP:TRANSPARENT");
    add_content(out, "END:VEVENT");
}

}  // namespace

std::string rechecks_ics(const Job& job, std::span<const Recheck> due, const CalendarFace& face) {
    if (due.empty()) return {};
    std::string out;
    add_content(out, "BEGIN:VCALENDAR");
    add_content(out, "VERSION:2.0");
    add_content(out, "PRODID:-//" + escaped(face.software) + "//rechecks//EN");
    for (const Recheck& recheck : due) add_event(out, job, recheck, face);
    add_content(out, "END:VCALENDAR");
    return out;
}

}  // namespace cotter
