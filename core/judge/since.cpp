// Two visits side by side.
#include "core/judge/since.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "core/judge/judge_words.h"
#include "core/trade/reading_names.h"
#include "core/judge/values.h"

namespace cotter {

namespace {

bool same_point(const Value& a, const Value& b) {
    return a.what == b.what && a.where == b.where && a.place == b.place && a.axle == b.axle;
}

const Value* like(const std::vector<Value>& values, const Value& value) {
    for (const Value& v : values)
        if (same_point(v, value)) return &v;
    return nullptr;
}

// Figures that name a thing: they are the same or another, never more or less.
bool is_name(std::string_view what) {
    return what == what::tyre_date || what == what::load_index;
}

int digits_of(const std::string& number) {
    const auto dot = number.find('.');
    if (number.find('/') != std::string::npos) return 4;
    return dot == std::string::npos ? 0 : static_cast<int>(std::min<std::size_t>(6, number.size() - dot - 1));
}

// Of what is measured at many points only the worst counts, and points bear other names at another visit: the least
// of a rotor, the most of a drum or of end play. 0: each point for itself.
int worst_end(std::string_view what) {
    if (what == what::rotor_thickness) return -1;
    return what == what::drum_diameter || what == what::end_play ? 1 : 0;
}

// Each place's worst point in place of all of them, in the place of the first one.
std::vector<Value> comparable(const Values& values) {
    std::vector<Value> out;
    for (const Value& value : values.all) {
        if (value.what == what::run_since) continue;  // it tells of the way, not of the trailer
        const int end = worst_end(value.what);
        const auto there = std::find_if(out.begin(), out.end(), [&](const Value& v) {
            return end != 0 && v.what == value.what && v.place == value.place && v.axle == value.axle;
        });
        Value own = value;
        if (end != 0) own.where.clear();
        if (there == out.end())
            out.push_back(std::move(own));
        else if (end * value.si > end * there->si)
            *there = std::move(own);
    }
    return out;
}

std::string difference(const Value& before, const Value& now) {
    const Unit& unit = *find_unit(now.amount.unit);
    const double change = from_si(now.si, unit) - from_si(before.si, unit);
    int digits = digits_of(now.amount.number.text());
    if (before.amount.unit == now.amount.unit) digits = std::max(digits, digits_of(before.amount.number.text()));
    const std::string figure = words::number(std::abs(change), digits);
    if (figure.find_first_not_of("0.") == std::string::npos) return "the same";
    return fmt::format("{}{} {}", change < 0 ? "−" : "+", figure, unit.label);
}

void compare(const Value& before, const Value& now, ReadingChange& out) {
    out.told = true;
    if (is_name(now.what)) {
        out.change = before.si == now.si ? "the same" : "another: not the same tyre";
        return;
    }
    out.change = difference(before, now);
}

// Why a point of the last visit has nothing beside it now.
std::string why_not_now(const Values& now, const Value& before) {
    for (const Unknown& u : now.unknowns)
        if (u.subject == before.what && corner_of(u.place) == corner_of(before.place))
            return "cannot tell, because: " + u.because;
    return "cannot tell, because it was not measured at this visit";
}

std::string why_not_before(const Values& before, const Value& now) {
    for (const Unknown& u : before.unknowns)
        if (u.subject == now.what && corner_of(u.place) == corner_of(now.place))
            return "cannot tell, because at the last visit: " + u.because;
    return "cannot tell, because it was not measured at the last visit";
}

ReadingChange row_of(const Value& value) {
    constexpr std::string_view kEnds[]{"thinnest", "", "largest"};
    ReadingChange out;
    out.place = value.place;
    out.axle = value.axle;
    out.what = value.what;
    out.where = worst_end(value.what) == 0 ? value.where : std::string(kEnds[worst_end(value.what) + 1]);
    return out;
}

}  // namespace

std::vector<ReadingChange> changes_since(const Job& last, const Job& job, const Instant& at) {
    const Values before = values_of(last, State::now, at), now = values_of(job, State::found, at);
    const std::vector<Value> then_values = comparable(before), now_values = comparable(now);
    std::vector<ReadingChange> out;
    for (const Value& value : now_values) {
        ReadingChange row = row_of(value);
        row.now = value.amount;
        if (const Value* then = like(then_values, value)) {
            row.before = then->amount;
            compare(*then, value, row);
        } else {
            row.change = why_not_before(before, value);
        }
        out.push_back(std::move(row));
    }
    for (const Value& value : then_values) {
        if (like(now_values, value) != nullptr) continue;
        ReadingChange row = row_of(value);
        row.before = value.amount;
        row.change = why_not_now(now, value);
        out.push_back(std::move(row));
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const ReadingChange& a, const ReadingChange& b) { return a.place < b.place; });
    return out;
}

}  // namespace cotter
