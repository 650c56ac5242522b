// What the rules of several points need: tires as last read, weights as last taken, wear over the visits.
#include <algorithm>
#include <cmath>

#include "core/judge/answer_rules.h"
#include "core/judge/tyres.h"

namespace cotter::answering {

namespace {

// Does a weight taken then still count? Weights keep for a trip.
std::optional<Instant> trip_end(const Scene& scene, const Sitting& sitting, const Reading& reading) {
    static const TradePoint kWeight = point(PointId::load_gross);
    Reply r = reply_at(sitting, reading.at, reading.by);
    r.keeps = Keeps::trip;
    const auto end = ending_of(scene, {&kWeight, Place::at(Station::trailer)}, r);
    if (!end) return scene.question->as_of;
    return end->at > scene.question->as_of ? std::optional(end->at) : std::nullopt;
}

template <class Fits>
std::optional<Weighed> weighed(const Scene& scene, std::string_view name, Fits fits) {
    for (auto s = scene.sittings.rbegin(); s != scene.sittings.rend(); ++s) {
        if (!scene.usable(*s)) continue;
        const Measure* newest = nullptr;
        for (const Measure* m : measures_anywhere(*s, name))
            if (!m->fault && fits(*m) && (newest == nullptr || newest->reading->at < m->reading->at)) newest = m;
        if (newest == nullptr) continue;
        const auto until = trip_end(scene, *s, *newest->reading);
        if (!until) return std::nullopt;
        return Weighed{newest->si, newest->step_si, newest->amount(), &*s, newest->reading, *until};
    }
    return std::nullopt;
}

struct Worn {
    double si = 0, step = 0;
    Amount shown;
    Instant at;
    std::size_t sitting = 0;
    const Reading* reading = nullptr;
    std::string_view where;
};

// Every value of a part over all visits, in the order of taking.
std::vector<Worn> history_of(const Scene& scene, std::string_view name, const Place& place) {
    std::vector<Worn> out;
    for (const Sitting& s : scene.sittings)
        if (scene.usable(s))
            for (const Measure* m : all_measures(s, name, place))
                if (!m->fault)
                    out.push_back({m->si, m->step_si, m->amount(), m->reading->at, s.index, m->reading, m->where});
    return out;
}

bool renewed_between(const Scene& scene, Work work, const Place& place, const Worn& older, const Worn& newer) {
    return std::any_of(scene.works.begin(), scene.works.end(), [&](const Done& d) {
        if (d.work != work || d.place != corner_only(place) || !scene.sittings[d.sitting].accepted) return false;
        if (d.sitting < older.sitting || d.sitting > newer.sitting) return false;
        return older.sitting != newer.sitting || older.reading->stage != newer.reading->stage;
    });
}

const Worn* before_it(const std::vector<Worn>& history, const Worn& newest) {
    const Worn* out = nullptr;
    for (const Worn& w : history)
        if (w.where == newest.where && w.reading != newest.reading && &w < &newest) out = &w;
    return out;
}

}  // namespace

bool thinner(const Measure* a, const Measure* b) {
    return a->si < b->si;
}

Fact few(std::size_t there, std::int64_t wanted) {
    return fact(FactId::too_few, static_cast<std::int64_t>(there), wanted);
}

std::vector<Place> wheels_of_axle(const Scene& scene, int axle) {
    std::vector<Place> out;
    const Axle* a = scene.layout.axle(axle);
    for (const Side side : {Side::left, Side::right}) {
        if (a == nullptr) continue;
        if (a->wheels == Wheels::single) {
            out.push_back(Place::corner(axle, side));
            continue;
        }
        out.push_back(Place::corner(axle, side, Wheel::inner));
        out.push_back(Place::corner(axle, side, Wheel::outer));
    }
    return out;
}

const Sidewall* sidewall_in(const Scene& scene, const Sitting& sitting, const Place& wheel) {
    const Sidewall *first = nullptr, *last = nullptr;
    for (const Sidewall& tire : sitting.job->all<Sidewall>()) {
        if (tire.place != wheel) continue;
        if (first == nullptr || tire.at < first->at) first = &tire;
        if (last == nullptr || !(tire.at < last->at)) last = &tire;
    }
    return sitting.current && scene.question->state == State::found ? first : last;
}

std::optional<TireSeen> newest_sidewall(const Scene& scene, const Place& wheel) {
    for (auto s = scene.sittings.rbegin(); s != scene.sittings.rend(); ++s)
        if (scene.usable(*s))
            if (const Sidewall* tire = sidewall_in(scene, *s, wheel)) return TireSeen{tire, &*s};
    return std::nullopt;
}

TireRating tire_rating(const Sidewall& tire, bool dual) {
    const auto& most = dual ? tire.max_dual : tire.max_single;
    const int index = dual ? tire.index_dual : tire.index_single;
    TireRating out;
    if (most) {
        out.kg = most->si();
    } else if (index > 0) {
        out.kg = load_index_kg(index);
        if (!out.kg) out.because = fact(FactId::index_not_in_table, static_cast<std::int64_t>(index));
    } else {
        out.because = fact(dual ? FactId::dual_rating_missing : FactId::rating_missing);
    }
    if (out.kg && tire.type == TireType::passenger) *out.kg /= 1.10;
    return out;
}

std::optional<TireRated> rating_at(const Scene& scene, const Place& wheel) {
    const Axle* axle = scene.axle(wheel);
    const bool dual = axle != nullptr && axle->wheels == Wheels::dual;
    if (const auto seen = newest_sidewall(scene, wheel))
        return TireRated{tire_rating(*seen->tire, dual), seen->sitting, seen->tire->at, seen->tire->by,
                         seen->tire->id.uuid};
    for (auto s = scene.sittings.rbegin(); s != scene.sittings.rend(); ++s)
        for (const std::string_view name : {what::load_rating, what::load_index})
            for (const Measure* m : measures(*s, name, wheel)) {
                if (m->fault || !scene.usable(*s)) continue;
                TireRated out{{}, &*s, m->reading->at, m->reading->by, m->reading->id.uuid};
                out.rating.kg = name == what::load_rating ? m->si : load_index_kg(static_cast<int>(m->si));
                if (!out.rating.kg)
                    out.rating.because = fact(FactId::index_not_in_table, static_cast<std::int64_t>(m->si));
                return out;
            }
    return std::nullopt;
}

std::optional<Weighed> axle_weighed(const Scene& scene, int axle) {
    return weighed(scene, what::axle_weight,
                   [&](const Measure& m) { return m.axle == axle || (m.place.is_corner() && m.place.axle == axle); });
}

std::optional<Weighed> wheel_weighed(const Scene& scene, const Place& corner) {
    return weighed(scene, what::wheel_weight,
                   [&](const Measure& m) { return corner_only(m.place) == corner_only(corner); });
}

std::optional<Weighed> tongue_weighed(const Scene& scene) {
    return weighed(scene, what::tongue_weight, [](const Measure&) { return true; });
}

std::optional<Gross> gross_weighed(const Scene& scene) {
    const auto tongue = tongue_weighed(scene);
    if (scene.trailer == nullptr || scene.trailer->axles.empty() || !tongue) return std::nullopt;
    Gross out{tongue->kg, tongue->step, true, tongue};
    for (int axle = 1; axle <= static_cast<int>(scene.trailer->axles.size()); ++axle) {
        const auto weight = axle_weighed(scene, axle);
        if (!weight) return std::nullopt;
        out.kg += weight->kg;
        out.step += weight->step;
        const Instant until = std::min(out.newest->until, weight->until);
        if (weight->reading->at > out.newest->reading->at) out.newest = weight;
        out.newest->until = until;
    }
    return out;
}

Reply reply_from(const Scene& scene, std::initializer_list<const Weighed*> inputs) {
    const Sitting& now = scene.current();
    Reply r = reply_at(now, now.opened, {});
    r.accepted = scene.trusting && now.accepted;
    for (const Weighed* w : inputs) {
        if (w == nullptr) continue;
        if (w->reading->at > r.at || r.by.empty()) {
            r.at = w->reading->at;
            r.by = w->reading->by;
            r.record = w->reading->id.uuid;
        }
        if (w->until > scene.question->as_of) r.until = std::min(r.until.value_or(w->until), w->until);
    }
    return r;
}

void doubt_regrown(const Scene& scene, const Ask& ask, std::string_view name, Work renewed, Replies& out,
                   bool larger_is_better) {
    const std::vector<Worn> history = history_of(scene, name, ask.place);
    for (Reply& reply : out)
        for (const Worn& now : history) {
            if (now.reading->id.uuid != reply.record || reply.sitting->index != now.sitting) continue;
            const Worn* then = before_it(history, now);
            if (then == nullptr || renewed_between(scene, renewed, ask.place, *then, now)) continue;
            const double gain = larger_is_better ? now.si - then->si : then->si - now.si;
            const double step = std::max({now.step, then->step, 1e-9});
            if (gain <= 2 * step * (1 + 1e-6)) continue;
            reply.verdicts.push_back(open(fact(FactId::reads_better, now.shown, then->shown, then->at.local_date())));
            break;
        }
}

void end_at_forecast(const Scene& scene, const Ask& ask, std::string_view name, double limit_si, Replies& out) {
    const std::vector<Worn> history = history_of(scene, name, ask.place);
    for (Reply& reply : out) {
        std::optional<double> least;  // days left, of the point that ends first
        for (const Worn& now : history) {
            if (now.reading->id.uuid != reply.record || reply.sitting->index != now.sitting) continue;
            const Worn* then = before_it(history, now);
            if (then == nullptr || renewed_between(scene, Work::linings_renewed, ask.place, *then, now)) continue;
            const double worn = then->si - now.si;
            const auto days = static_cast<double>(now.at.local_date().days() - then->at.local_date().days());
            if (worn <= std::max(now.step, then->step) * 2 || days < 1 || now.si <= limit_si) continue;
            least = std::min(least.value_or(1e9), (now.si - limit_si) / worn * days);
        }
        if (!least || *least > 4000) continue;
        const Date end = Date::from_days(reply.at.local_date().days() + static_cast<std::int64_t>(std::floor(*least)));
        const Instant until = midnight_after(reply.at, end);
        reply.until = std::min(reply.until.value_or(until), until);
    }
}

}  // namespace cotter::answering
