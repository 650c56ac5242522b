// From readings to values.
#include "core/judge/values.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/judge/judge_words.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

constexpr std::int64_t kSecondsOfDay = 86400;

// "axle 2 right, inner" -> that corner with "inner" left over; "axle 2" -> the axle.
void settle_place(Value& value) {
    const std::string text = ascii_lower(value.where);
    if (value.place.is_corner() || !text.starts_with("axle ") || text.size() < 6) return;
    const int axle = text[5] - '0';
    if (axle < 1 || axle > 4) return;
    std::size_t end = 6;
    value.axle = axle;
    for (const Side side : {Side::left, Side::right})
        if (const auto word = std::string(" ") + std::string(name_of(side)); text.compare(6, word.size(), word) == 0) {
            value.place = Place::corner(axle, side);
            value.axle = 0;
            end = 6 + word.size();
        }
    while (end < text.size() && (text[end] == ' ' || text[end] == ',')) ++end;
    value.where = value.where.substr(end);
}

Unknown unknown_of(const Reading& r, std::string because, std::string todo = {}) {
    return {r.place, 0, std::string(component_of(r.what)), r.what, std::move(because), std::move(todo), false};
}

// Why a value of this reading cannot be used; empty when it can.
std::string fault_of(const Reading& r, const Amount& amount) {
    const Unit* unit = find_unit(amount.unit);
    if (unit == nullptr || amount.unit.empty()) return "the unit is missing or not known";
    const ReadingSpec* known = reading_spec(r.what);
    if (known == nullptr) return {};
    if (unit->quantity != known->quantity) return fmt::format("{} is in a unit of something else", amount.text());
    const double si = amount.si();
    if (!(si >= known->lowest && si <= known->highest))
        return fmt::format("{} is not plausible: look at the number and its unit again", amount.text());
    return {};
}

bool repaired_since(const Job& job, const Reading& r) {
    const ReadingSpec* known = reading_spec(r.what);
    if (known == nullptr) return false;
    const auto& findings = job.all<Finding>();
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
        return f.outcome == Outcome::repaired && corner_of(f.place) == corner_of(r.place) &&
               ended_by_repair(*known, f.component);
    });
}

// Does `other` hold every point that `r` has?
bool covers(const Reading& other, const Reading& r) {
    return std::all_of(r.points.begin(), r.points.end(), [&](const ReadingPoint& point) {
        return std::any_of(other.points.begin(), other.points.end(),
                           [&](const ReadingPoint& p) { return p.where == point.where; });
    });
}

// Is there a newer reading of the same thing at the same stage, or one after the work while this is from before it?
bool superseded(const Job& job, const Reading& r, State state) {
    for (const Reading& other : job.all<Reading>()) {
        if (&other == &r || other.place != r.place || other.what != r.what || other.taken != Taken::measured) continue;
        if (r.stage == other.stage && !covers(other, r)) continue;
        if (other.stage == r.stage && (other.at > r.at || (other.at == r.at && &other > &r))) return true;
        if (state == State::now && r.stage == Stage::before && other.stage == Stage::after) return true;
    }
    return false;
}

void take(const Reading& r, Values& out) {
    for (const ReadingPoint& point : r.points) {
        Value value{r.place, 0, r.what, point.where, {point.value, r.unit}, 0, 0, &r};
        settle_place(value);
        if (std::string fault = fault_of(r, value.amount); !fault.empty()) {
            out.unknowns.push_back(unknown_of(r, std::move(fault), "read it again"));
            out.unknowns.back().place = value.place;
            continue;
        }
        value.si = value.amount.si();
        if (r.resolution) value.step_si = r.resolution->value() * find_unit(r.unit)->factor;
        out.all.push_back(std::move(value));
    }
}

}  // namespace

Place corner_of(const Place& place) {
    return place.is_corner() ? Place::corner(place.axle, place.side) : place;
}

std::string Value::text() const {
    return where.empty() ? amount.text() : fmt::format("{} ({})", amount.text(), where);
}

std::vector<const Value*> Values::of(std::string_view name) const {
    std::vector<const Value*> out;
    for (const Value& value : all) {
        const ReadingSpec* known = reading_spec(value.what);
        if (value.what == name || (known != nullptr && known->name == name)) out.push_back(&value);
    }
    return out;
}

std::vector<const Value*> Values::of(std::string_view name, const Place& corner) const {
    std::vector<const Value*> out = of(name);
    std::erase_if(out, [&](const Value* v) { return v->axle != 0 || corner_of(v->place) != corner; });
    return out;
}

bool Values::unknown(std::string_view name, const Place& corner) const {
    return std::any_of(unknowns.begin(), unknowns.end(),
                       [&](const Unknown& u) { return u.subject == name && corner_of(u.place) == corner; });
}

Values values_of(const Job& job, State state, const Instant& now) {
    Values out;
    for (const Reading& r : job.all<Reading>()) {
        if (state == State::found && r.stage == Stage::after) continue;
        if (superseded(job, r, state)) continue;
        if (r.at.unix_s > now.unix_s + kSecondsOfDay)
            out.unknowns.push_back(unknown_of(r, "dated in the future: " + r.at.text(), "look at the phone's clock"));
        else if (r.taken != Taken::measured)
            out.unknowns.push_back(unknown_of(r, words::not_taken(r.taken, r.reason)));
        else if (state == State::now && r.stage == Stage::before && repaired_since(job, r))
            out.unknowns.push_back(unknown_of(r, words::after_repair(component_of(r.what)), "measure the new part"));
        else
            take(r, out);
    }
    return out;
}

}  // namespace cotter
