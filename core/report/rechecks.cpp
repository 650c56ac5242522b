// What calls for a re-check.
#include "core/report/rechecks.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/text.h"

namespace cotter {

namespace {

constexpr const char* kPractice = "common practice (c): the maker's own interval goes before it";

// One default: due so many days after the hand-over.
struct Default {
    const char* key;
    const char* what;
    const char* when;
    int days;
};
constexpr Default kWheelNuts{"wheel-nuts", "Re-torque the wheel nuts", "at 10, 25 and 50 miles", 1};
constexpr Default kHubHeat{"hub-temperature", "Feel or measure the hubs",
                           "at the first stop, then at each stop for 50 to 100 miles", 1};
constexpr Default kHubOilSoon{"hub-oil-look", "Look at the hub oil", "the day after hub work, and at about 100 miles",
                              1};
constexpr Default kHubOilChange{"hub-oil-change", "Change the hub oil",
                                "yearly, at 50,000 to 100,000 miles, or at reline", 365};
constexpr Default kGrease{"hub-grease", "Repack the hub bearings", "12 months or 12,000 miles", 365};
constexpr Default kElectric{"electric-brakes", "Adjust the electric brakes",
                            "at 200 miles, then every 3,000 miles or yearly", 14};
constexpr Default kLinings{"linings", "Look at magnets and linings", "every 6 to 12 months or 12,000 miles", 182};
constexpr Default kFluid{"brake-fluid", "Test or change the brake fluid",
                         "every 1 to 2 years, or at the tester's limit", 365};
constexpr Default kBolts{"spring-bolts", "Re-torque U-bolts and spring bolts",
                         "after the first loaded 500 to 1,000 miles", 30};
constexpr Default kSurge{"surge-slide", "Check the surge actuator's slide", "every 6 to 12 months, travel mark noted",
                         182};
constexpr Default kNutsRoutine{"wheel-nuts-routine", "Check the wheel nuts", "every trip, 3 months or 3,000 miles", 91};

bool has_word(const std::string& text, std::initializer_list<const char*> words) {
    const std::string small = ascii_lower(text);
    return std::any_of(words.begin(), words.end(), [&](auto word) { return small.find(word) != std::string::npos; });
}

class Due {
public:
    Due(const Job& job, const Date& from) : job_(job), from_(from) {}

    std::vector<Recheck> list() {
        from_torques();
        from_levels();
        from_trailer();
        return std::move(out_);
    }

private:
    void add(const Default& d, const std::string& because) {
        if (std::any_of(out_.begin(), out_.end(), [&](const Recheck& r) { return r.key == d.key; })) return;
        out_.push_back({d.key, d.what, d.when, kPractice, Date::from_days(from_.days() + d.days), because});
    }

    void from_torques() {
        for (const Torque& torque : job_.all<Torque>()) {
            if (torque.taken != Taken::measured) continue;
            if (has_word(torque.joint, {"wheel nut", "lug nut", "wheel bolt"})) {
                add(kWheelNuts, "the wheels were off or their nuts tightened");
                add(kHubHeat, "the wheels were off or their nuts tightened");
                add(kNutsRoutine, "routine");
            }
            if (has_word(torque.joint, {"u-bolt", "spring", "shackle"})) add(kBolts, torque.joint + " tightened");
        }
    }

    void from_levels() {
        for (const Level& level : job_.all<Level>()) {
            if (level.taken != Taken::measured || !level.added) continue;
            if (level.place.is_corner() && has_word(level.fluid, {"oil"})) {
                add(kHubOilSoon, "hub oil was added");
                add(kHubOilChange, "hub oil was added");
            }
            if (has_word(level.fluid, {"brake fluid"})) add(kFluid, "brake fluid was added");
        }
    }

    void from_trailer() {
        const Trailer* trailer = job_.only<Trailer>();
        if (trailer == nullptr) return;
        for (const Axle& axle : trailer->axles) {
            if (axle.hub != HubKind::oil_bath) add(kGrease, "hubs run in grease");
            if (axle.brake == BrakeKind::electric_drum) add(kElectric, "electric drum brakes");
            if (axle.brake != BrakeKind::none) add(kLinings, "the trailer has brakes");
        }
        if (trailer->actuation == Actuation::surge) add(kSurge, "surge actuation");
    }

    const Job& job_;
    Date from_;
    std::vector<Recheck> out_;
};

// The law's own: 12 months from the day of the inspection.
void add_inspection(const Job& job, std::vector<Recheck>& out) {
    const Inspection* inspection = job.only<Inspection>();
    if (inspection == nullptr || !inspection->date) return;
    Date due = *inspection->date;
    ++due.year;
    if (due.month == 2 && due.day == 29) due.day = 28;
    out.push_back({"periodic-inspection", "Periodic inspection due", "12 months after the last one",
                   "law (a): 49 CFR 396.17", due, "a periodic inspection is in the job"});
}

// ---- calendar text -------------------------------------------------------------------------------------------

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

void add_event(std::string& out, const Job& job, const Recheck& r, int revision, const Instant& at) {
    const Trailer* trailer = job.only<Trailer>();
    const std::string unit = trailer == nullptr || trailer->unit.empty() ? "" : ", " + trailer->unit;
    add_content(out, "BEGIN:VEVENT");
    add_content(out, fmt::format("UID:{}-{}", job.id().text(), r.key));
    add_content(out, "DTSTAMP:" + utc(at));
    add_content(out, fmt::format("SEQUENCE:{}", revision - 1));
    add_content(out, "DTSTART;VALUE=DATE:" + compact(r.due));
    add_content(out, "DTEND;VALUE=DATE:" + compact(Date::from_days(r.due.days() + 1)));
    add_content(out, "SUMMARY:" + escaped(r.what + unit));
    add_content(out,
                "DESCRIPTION:" + escaped(fmt::format("{}.\nBecause: {}.\nSource: {}.", r.when, r.because, r.source)));
    add_content(out, "TRANSP:TRANSPARENT");
    add_content(out, "END:VEVENT");
}

}  // namespace

std::vector<Recheck> rechecks(const Job& job, const Date& from) {
    auto out = Due(job, from).list();
    add_inspection(job, out);
    std::stable_sort(out.begin(), out.end(), [](const Recheck& a, const Recheck& b) { return a.due < b.due; });
    return out;
}

std::string rechecks_ics(const Job& job, int revision, const Instant& at, const std::string& software) {
    const auto due = rechecks(job, at.local_date());
    if (due.empty()) return {};
    std::string out;
    add_content(out, "BEGIN:VCALENDAR");
    add_content(out, "VERSION:2.0");
    add_content(out, "PRODID:-//" + escaped(software) + "//rechecks//EN");
    for (const Recheck& r : due) add_event(out, job, r, revision, at);
    add_content(out, "END:VCALENDAR");
    return out;
}

}  // namespace cotter
