// Series of a point over the visits, and what they foretell.
#include "core/judge/forecast.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>

#include "core/base/text.h"
#include "core/judge/judge_words.h"
#include "core/judge/judging.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

using words::number;
constexpr double kMile = 1609.344;

// A visit and the way up to it.
struct Visited {
    const Job* job = nullptr;
    Instant at;
    std::optional<double> counter_m;  // hub counter
    std::optional<double> since_m;    // run since the visit before
    bool estimated = false;
    bool metric = false;
};

Visited visited(const Job& job) {
    Visited v{&job, job.only<Visit>()->opened, {}, {}, false, false};
    for (const Reading& r : job.all<Reading>()) {
        if (r.points.empty() || r.taken != Taken::measured) continue;
        const double m = Amount{r.points.front().value, r.unit}.si();
        if (r.what == what::run_total) v.counter_m = m;
        if (r.what == what::run_since) v.since_m = m;
        if (r.what != what::run_total && r.what != what::run_since) continue;
        v.estimated = v.estimated || r.instrument.find("estimate") != std::string::npos;
        v.metric = r.unit == "km";
    }
    return v;
}

std::vector<Visited> visits_of(const Job& job, std::span<const Job> earlier) {
    std::vector<Visited> out;
    if (job.only<Visit>() == nullptr) return out;
    const Visited last = visited(job);
    for (const Job& other : earlier)
        if (same_trailer(job, other) && other.id() != job.id()) out.push_back(visited(other));
    std::erase_if(out, [&](const Visited& v) { return v.at >= last.at; });
    std::sort(out.begin(), out.end(), [](const Visited& a, const Visited& b) { return a.at < b.at; });
    out.push_back(last);
    return out;
}

struct Way {
    std::string unit = "days";
    double length = 0;
    double u = 0;
};

Way way_between(const std::vector<Visited>& visits, std::size_t from, std::size_t to) {
    const Visited &a = visits[from], &b = visits[to];
    std::optional<double> meters;
    if (a.counter_m && b.counter_m) {
        meters = *b.counter_m - *a.counter_m;
    } else {
        meters = 0;
        for (std::size_t i = from + 1; i <= to; ++i)
            meters = meters && visits[i].since_m ? std::optional(*meters + *visits[i].since_m) : std::nullopt;
    }
    if (!meters) return {"days", static_cast<double>(b.at.local_date().days() - a.at.local_date().days()), 0};
    const double length = *meters / (b.metric ? 1000 : kMile);
    return {b.metric ? "km" : "mi", length, std::abs(length) * (b.estimated ? 0.20 : 0.05)};
}

struct Measure {
    std::size_t visit = 0;
    double mm = 0;
    double u_mm = 0;
    bool fresh = false;  // taken after the part was repaired or replaced in that visit
};

bool repaired_in(const Job& job, const Place& place, std::string_view name) {
    const ReadingSpec* known = reading_spec(name);
    const auto& all = job.all<Finding>();
    return known != nullptr && std::any_of(all.begin(), all.end(), [&](const Finding& f) {
               return f.outcome == Outcome::repaired && corner_of(f.place) == place &&
                      ended_by_repair(*known, f.component);
           });
}

// The measurements of one point of one part, oldest first. Empty when the part at the end was never measured.
std::vector<Measure> series_of(const std::vector<Visited>& visits, const Value& point) {
    std::vector<Measure> out;
    const Place place = corner_of(point.place);
    for (std::size_t i = 0; i < visits.size(); ++i) {
        const Job& job = *visits[i].job;
        const bool changed = repaired_in(job, place, point.what);
        for (const State state : {State::found, State::now}) {
            if (state == State::now) {
                if (!changed) continue;
                out.clear();  // another part from here on
            }
            for (const Value& v : values_of(job, state, visits.back().at).all)
                if (v.what == point.what && v.place == point.place && v.where == point.where)
                    out.push_back({i, v.si * 1000, v.step_si > 0 ? 1500 * v.step_si : 0.15, state == State::now});
        }
    }
    return out;
}

void say(Forecast& f, const Way& way) {
    const WearLife& l = f.life;
    switch (l.answer) {
        case WearAnswer::told:
            if (l.plan <= 0)
                f.says =
                    fmt::format("too uncertain to plan on: {} ± {} {} left to {}; measure it again at the next visit",
                                number(l.left, 0), number(l.u, 0), way.unit, f.limit);
            else
                f.says = fmt::format("plan on {} {} ({} ± {} left to {})", number(l.plan, 0), way.unit,
                                     number(l.left, 0), number(l.u, 0), f.limit);
            break;
        case WearAnswer::too_small:
            f.says = fmt::format("cannot tell, because the wear of {} mm is too small to predict from ({} mm needed)",
                                 number(l.worn, 2), number(l.least, 2));
            break;
        case WearAnswer::grew:
            f.says = "cannot tell, because it did not get thinner: check the corner, the part or the method";
            break;
        case WearAnswer::no_way:
            f.says = "cannot tell, because the way run or the time between the visits is not known";
            break;
        case WearAnswer::at_limit:
            f.says = "nothing left: it is at its limit";
            break;
    }
}

struct Break {
    double before = 0, after = 0;  // mm a unit of way
};

// Wear that has become faster: what went before the last visit says too little of what is to come.
std::optional<Break> faster_at_last(const std::vector<Visited>& visits, const std::vector<Measure>& series) {
    constexpr double kFaster = 1.5;
    if (series.size() < 3) return std::nullopt;
    const Measure &first = series.front(), &turn = series[series.size() - 2], &last = series.back();
    const Way early = way_between(visits, first.visit, turn.visit), late = way_between(visits, turn.visit, last.visit);
    if (early.unit != late.unit || !(early.length > 0) || !(late.length > 0)) return std::nullopt;
    const Break out{(first.mm - turn.mm) / early.length, (turn.mm - last.mm) / late.length};
    const bool sure = turn.mm - last.mm > 2 * std::max(turn.u_mm, last.u_mm);
    return sure && out.after > kFaster * std::max(out.before, 0.0) ? std::optional(out) : std::nullopt;
}

void foretell(Forecast& f, const std::vector<Visited>& visits, const std::vector<Measure>& series) {
    const auto broken = faster_at_last(visits, series);
    const Measure &a = broken ? series[series.size() - 2] : series.front(), &b = series.back();
    const Way way = way_between(visits, a.visit, b.visit);
    f.way_unit = way.unit;
    for (const Measure& m : series)
        f.points.push_back(
            {visits[m.visit].at.local_date(), way_between(visits, series.front().visit, m.visit).length, m.mm});
    f.life = wear_life({a.mm, b.mm, way.length, f.limit_mm, std::max(a.u_mm, b.u_mm), way.u});
    f.answer = f.life.answer;
    if (f.answer == WearAnswer::told)
        f.steps = {
            fmt::format("({} − {}) mm ÷ {} {} = {} mm in 1,000 {}", number(a.mm, 2), number(b.mm, 2),
                        number(way.length, 0), way.unit, number(f.life.rate * 1000, 4), way.unit),
            fmt::format("({} − {}) mm ÷ that = {} {} left", number(b.mm, 2), number(f.limit_mm, 2),
                        number(f.life.left, 0), way.unit),
            fmt::format("uncertainty from {} mm a reading and {} {} of way: {} {}", number(std::max(a.u_mm, b.u_mm), 2),
                        number(way.u, 0), way.unit, number(f.life.u, 0), way.unit),
            fmt::format("{} − 2 × {} {}", number(f.life.left, 0), number(f.life.u, 0),
                        f.life.plan > 0 ? fmt::format("= {} {}", number(f.life.plan, 0), way.unit) : "is below 0")};
    say(f, way);
    if (!broken) return;
    f.says += fmt::format("; it wears faster now: {} mm, then {} mm in 10,000 {}", number(broken->before * 10000, 1),
                          number(broken->after * 10000, 1), way.unit);
}

Forecast forecast_of(const std::vector<Visited>& visits, const Value& point, const Limit& limit) {
    Forecast f;
    f.place = corner_of(point.place);
    f.what = point.what;
    f.where = point.where;
    f.limit_mm = limit.value.si() * 1000;
    f.limit = limit_text(limit);
    f.source = source_text(limit);
    const auto series = series_of(visits, point);
    if (series.size() >= 2 && series.front().visit != series.back().visit) {
        foretell(f, visits, series);
        return f;
    }
    for (const Measure& m : series) f.points.push_back({visits[m.visit].at.local_date(), 0, m.mm});
    const bool changed = std::any_of(visits.begin(), visits.end(),
                                     [&](const Visited& v) { return repaired_in(*v.job, f.place, f.what); });
    f.says = changed ? "cannot tell, because the part was changed; nothing is foretold across a change of part"
                     : "cannot tell, because no earlier visit measured this point";
    return f;
}

// Does `a` end before `b`? What is told goes before what is not.
bool sooner(const Forecast& a, const Forecast& b) {
    const auto rank = [](const Forecast& f) {
        return f.answer == WearAnswer::at_limit ? 0 : f.answer == WearAnswer::told ? 1 : 2;
    };
    if (rank(a) != rank(b)) return rank(a) < rank(b);
    return rank(a) == 1 && a.life.plan < b.life.plan;
}

}  // namespace

bool same_trailer(const Job& a, const Job& b) {
    const Trailer *x = a.only<Trailer>(), *y = b.only<Trailer>();
    if (x == nullptr || y == nullptr || b.only<Visit>() == nullptr) return false;
    if (!x->vin.empty() && !y->vin.empty()) return ascii_lower(x->vin) == ascii_lower(y->vin);
    return !x->unit.empty() && ascii_lower(x->unit) == ascii_lower(y->unit);
}

std::vector<Forecast> forecasts_of(const Job& job, std::span<const Job> earlier, std::span<const Limit> limits) {
    const auto visits = visits_of(job, earlier);
    std::map<std::tuple<Place, std::string>, Forecast> best;
    if (visits.empty()) return {};
    Bench bench{job, job.only<Trailer>(), State::found, visits.back().at, {}, {limits.begin(), limits.end()}, {}, {}};
    Values values = values_of(job, State::found, visits.back().at);
    for (Value& v : values_of(job, State::now, visits.back().at).all)
        if (v.reading->stage == Stage::after) values.all.push_back(std::move(v));
    for (const Value& v : values.all) {
        if (!v.place.is_corner() || (v.what != what::pad_thickness && v.what != what::lining_thickness &&
                                     v.what != what::rotor_thickness && v.what != what::tread_depth))
            continue;
        const Limit* highest = nullptr;
        for (const Limit* l : bench.limits_at(v.what, v.place))
            if (is_lower(l->bound) && (highest == nullptr || l->value.si() > highest->value.si())) highest = l;
        if (highest == nullptr) continue;
        Forecast f = forecast_of(visits, v, *highest);
        const auto [it, fresh] = best.try_emplace({f.place, f.what}, f);
        if (!fresh && sooner(f, it->second)) it->second = std::move(f);
    }
    std::vector<Forecast> out;
    for (auto& [key, f] : best) out.push_back(std::move(f));
    return out;
}

}  // namespace cotter
