// Tables of readings, torques and levels at one place.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"
#include "core/work/torque_check.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

std::string wheel_of(const Place& place) {
    return place.wheel == Wheel::only ? "" : fmt::format("{} wheel", name_of(place.wheel));
}

// "NOT ACCESSIBLE: seized", for the place where a value would stand.
Cell no_value(Taken taken, const std::string& reason) {
    return Cell::bold(
        joined({capital(name_of(taken)), reason.empty() ? "no reason given" : std::string_view(reason)}, ": "));
}

std::string in_unit(const Number& number, const std::string& ucum) {
    return Amount{number, ucum}.text();
}

// One point a line, the value first, as it is the shorter: "3.20 mm, inner, leading end".
std::string points_text(const Reading& r) {
    std::string out;
    for (const ReadingPoint& point : r.points)
        out += (out.empty() ? "" : "\n") + joined({in_unit(point.value, r.unit), point.where}, "  ");
    return out.empty() ? "no value recorded" : out;
}

void add_reading(const Writing& w, Table& table, const Reading& r) {
    const std::string what =
        joined({joined({capital(r.what), name_of(r.stage)}, ", "), wheel_of(r.place), r.note}, "\n");
    const std::string with =
        joined({r.instrument, r.resolution ? "reads to " + in_unit(*r.resolution, r.unit) : ""}, ", ");
    table.add({what, r.taken == Taken::measured ? Cell::bold(points_text(r)) : no_value(r.taken, r.reason), with,
               w.when_who(r.at, r.by)});
}

std::string order_text(const Pass& pass) {
    std::string out;
    for (const int nut : pass.tightened) out += fmt::format("{}{}", out.empty() ? "" : " → ", nut);
    return out.empty() ? "none recorded" : out;
}

// What the passes leave open, said plainly: fasteners without a click in the last pass, a last pass off the target, an
// order that went along the circle, a unit that nobody confirmed.
std::string open_points(const Torque& t) {
    if (t.passes.empty()) return {};
    const Pass& last = t.passes.back();
    std::string missing;
    for (int nut = 1; nut <= t.fasteners; ++nut)
        if (std::find(last.tightened.begin(), last.tightened.end(), nut) == last.tightened.end())
            missing += fmt::format("{}{}", missing.empty() ? "" : ", ", nut);
    std::string off;
    if (t.target && !(std::abs(at_nut(last).si() - t.target->si()) <= 0.005 * std::abs(t.target->si())))
        off = fmt::format("The last pass ({}) was not at the target ({}).", at_nut(last).text(), t.target->text());
    std::string more;
    for (const TorqueRemark& r : check_torque(t))
        if (r.difference == TorqueDifference::not_across || r.difference == TorqueDifference::unit_doubt ||
            r.difference == TorqueDifference::other_at_nut)
            more += fmt::format("{}{}.", more.empty() ? "" : " ", capital(r.words));
    return joined({missing.empty() ? "" : "Not tightened in the last pass: " + missing + ".", off, more}, " ");
}

std::string target_text(const Torque& t) {
    if (!t.target) return "no target recorded";
    const std::string from =
        t.target_from ? "taken over from " + without_codes(t.target_from->text()) + " and confirmed" : "";
    return joined({t.target->text(), t.target_source.empty() ? "source not given" : std::string_view(t.target_source),
                   from, t.unit_confirmed ? "its unit was asked about and confirmed" : ""},
                  "\n");
}

std::string wrench_text(const Torque& t) {
    const std::string calibrated =
        t.wrench_calibrated ? "calibrated " + t.wrench_calibrated->text() : "calibration date not recorded";
    return joined({t.wrench.empty() ? "wrench not recorded" : std::string_view(t.wrench), calibrated,
                   t.adapter ? "adapter " + adapter_words(*t.adapter) : ""},
                  "\n");
}

// "2: 60 lb-ft"; with an adapter the wrench's setting below it, as that is another one.
std::string pass_text(const Torque& t, std::size_t pass) {
    const Pass& p = t.passes[pass];
    const std::string got = fmt::format("{}: {}", pass + 1, at_nut(p).text());
    return at_nut(p) == p.setting ? got : joined({got, "wrench set to " + p.setting.text()}, "\n");
}

void add_torque(const Writing& w, Table& table, const Torque& recorded) {
    const Torque t = in_present_form(recorded);
    const std::string joint = joined({fmt::format("{}, {} of them", capital(t.joint), t.fasteners), wheel_of(t.place),
                                      t.found_note.empty() ? "" : "Found: " + t.found_note, w.time(t.at), t.by},
                                     "\n");
    if (t.taken != Taken::measured)
        table.add({joint, "", no_value(t.taken, t.reason), wrench_text(t), target_text(t)});
    else if (t.passes.empty())
        table.add({joint, "", "no pass recorded", wrench_text(t), target_text(t)});
    for (std::size_t i = 0; i < t.passes.size(); ++i) {
        const bool first = i == 0 && t.taken == Taken::measured;
        std::string order = order_text(t.passes[i]);
        if (i + 1 == t.passes.size()) order = joined({order, open_points(t)}, "\n");
        table.add({first ? joint : "", Cell::bold(pass_text(t, i)), order, first ? wrench_text(t) : "",
                   first ? target_text(t) : ""});
    }
}

// "below the mark by 6 mm, dark": the offset as entered, its sign said in words too.
std::string seen_text(const LevelSeen& seen) {
    std::string mark;
    switch (seen.mark) {
        case LevelMark::not_seen:
            mark = "not seen";
            break;
        case LevelMark::empty:
            mark = "empty";
            break;
        case LevelMark::below:
            mark = "below the mark";
            break;
        case LevelMark::at:
            mark = "at the mark";
            break;
        case LevelMark::above:
            mark = "above the mark";
            break;
    }
    return joined({mark, amount_text(seen.offset), seen.note}, ", ");
}

void add_level(const Writing& w, Table& table, const Level& l) {
    const std::string fluid = joined({joined({capital(l.fluid), l.product}, ", "), wheel_of(l.place)}, "\n");
    const std::string settled = l.settled ? "settled for " + l.settled->text() : "";
    table.add({fluid, l.taken == Taken::measured ? Cell(seen_text(l.before)) : no_value(l.taken, l.reason),
               l.added ? Cell::bold(l.added->text()) : Cell("none recorded"),
               joined({l.after ? seen_text(*l.after) : "not recorded", settled}, "\n"), w.when_who(l.at, l.by)});
}

}  // namespace

void draw_readings(Writing& w, const PlaceRecords& records) {
    if (records.readings.empty()) return;
    Table table({{"What", 2}, {"Value as entered", 2.3}, {"Instrument", 1.7}, {"When, who", 1.35}});
    for (const Reading* reading : records.readings) add_reading(w, table, *reading);
    table.draw(w.sheet, "Readings");
}

void draw_torques(Writing& w, const PlaceRecords& records) {
    if (records.torques.empty()) return;
    Table table({{"Joint", 1.5},
                 {"Pass: torque at the nut", 1},
                 {"Fasteners in the order they clicked (1: top, then clockwise)", 2},
                 {"Wrench", 1.15},
                 {"Target, source", 1.35}});
    for (const Torque* torque : records.torques) add_torque(w, table, *torque);
    table.draw(w.sheet, "Torques");
}

void draw_levels(Writing& w, const PlaceRecords& records) {
    if (records.levels.empty()) return;
    Table table({{"Fluid", 1.5}, {"Before", 1.5}, {"Added", 0.9}, {"After", 1.5}, {"When, who", 1.35}});
    for (const Level* level : records.levels) add_level(w, table, *level);
    table.draw(w.sheet, "Fluid levels");
}

}  // namespace cotter
