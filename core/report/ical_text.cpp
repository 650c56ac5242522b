// Escaping and folding.
#include "core/report/ical_text.h"

#include <fmt/format.h>

namespace cotter {

std::string ical_escaped(std::string_view text) {
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

void add_ical_line(std::string& out, std::string_view content) {
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

std::string ical_day(const Date& date) {
    return fmt::format("{:04}{:02}{:02}", date.year, date.month, date.day);
}

std::string ical_utc(const Instant& at) {
    const auto wall = Instant{at.unix_s, 0}.wall();
    return fmt::format("{}T{:02}{:02}{:02}Z", ical_day(wall.date), wall.hour, wall.minute, wall.second);
}

}  // namespace cotter
