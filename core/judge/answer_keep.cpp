// How long a good answer keeps, and what ends it: time, distance, use, damage and work at its place.
#include <algorithm>

#include "core/judge/answering.h"
#include "core/judge/inspection.h"

namespace cotter::answering {

namespace {

constexpr int kQuarterDays = 91;
constexpr double kQuarterMiles = 3000, kYearMiles = 12000;

// The last day on which an answer of that kind still counts; nullopt: no day ends it.
std::optional<Date> last_day(Keeps keeps, const Reply& reply) {
    const Date day = reply.at.local_date();
    switch (keeps) {
        case Keeps::trip:
            return day;
        case Keeps::visit:
            if (reply.sitting->current && !reply.sitting->job->signed_off()) return std::nullopt;
            return std::max(day, reply.sitting->last.local_date());
        case Keeps::quarter:
            return Date::from_days(day.days() + kQuarterDays);
        case Keeps::year:
            return months_later(day, 12);
        case Keeps::two_years:
            return months_later(day, 24);
        case Keeps::plate:
        case Keeps::until_work:
            break;
    }
    return std::nullopt;
}

std::optional<Ending> by_time(const Scene& scene, const Ask& ask, const Reply& reply) {
    const Keeps keeps = keeps_of(ask, reply);
    std::optional<Ending> out;
    if (const auto day = last_day(keeps, reply))
        out = Ending{midnight_after(reply.at, *day), fact(FactId::ran_out, reply.at.local_date(), keeps), true};
    if (reply.until && (!out || *reply.until < out->at))
        out = Ending{*reply.until, fact(FactId::ran_out, reply.at.local_date(), keeps), true};
    const double most = keeps == Keeps::quarter ? kQuarterMiles : keeps == Keeps::year ? kYearMiles : 0;
    const double run = reply.sitting->run_m / kMile;
    if (most > 0 && run > most * (1 + 1e-9))
        out = Ending{std::min(scene.question->as_of, out ? out->at : scene.question->as_of),
                     fact(FactId::ran_out_distance, reply.at.local_date(), figure(run * kMile, "[mi_i]", 0)), true};
    return out;
}

bool ends(const Event& event, Keeps keeps, Spot spot, const Place& place) {
    switch (event.kind) {
        case EventKind::loaded:
        case EventKind::unloaded:
        case EventKind::coupled:
            return keeps == Keeps::trip;
        case EventKind::impact:
        case EventKind::overload:
        case EventKind::overheated:
            return keeps != Keeps::plate && concerns(event.place, place, spot);
        case EventKind::driven:
            break;
    }
    return false;
}

void by_events(const Scene& scene, const Ask& ask, const Reply& reply, std::optional<Ending>& out) {
    const Keeps keeps = keeps_of(ask, reply);
    for (const Sitting& s : scene.sittings)
        for (const Event& e : s.job->all<Event>()) {
            if (!(e.at > reply.at) || e.at > scene.question->as_of) continue;
            if (!ends(e, keeps, ask.point->spot, ask.place) || (out && !(e.at < out->at))) continue;
            const bool use =
                e.kind == EventKind::loaded || e.kind == EventKind::unloaded || e.kind == EventKind::coupled;
            out = Ending{e.at, fact(FactId::ended_by_event, reply.at.local_date(), e.kind), use};
        }
}

void by_work(const Scene& scene, const Ask& ask, const Reply& reply, std::optional<Ending>& out) {
    for (const Done& d : scene.works) {
        if (!opens_again(d.work, ask.point->id) || !concerns(d.place, ask.place, ask.point->spot)) continue;
        if (later_than_work(reply, d) || (out && !(d.at < out->at))) continue;
        out = Ending{std::min(d.at, scene.question->as_of), fact(FactId::ended_by_work, reply.at.local_date(), d.work)};
    }
}

bool measures_it(const TradePoint& p, std::string_view component) {
    return std::any_of(p.readings.begin(), p.readings.end(), [&](std::string_view name) {
        const ReadingSpec* spec = reading_spec(name);
        return spec != nullptr && ended_by_repair(*spec, component);
    });
}

// Another part is there now: what was measured on the old one is over.
void by_renewal(const Scene& scene, const Ask& ask, const Reply& reply, std::optional<Ending>& out) {
    if (reply.facet != Facet::measure || ask.point->readings.empty()) return;
    for (std::size_t i = reply.sitting->index; i < scene.sittings.size(); ++i) {
        const Sitting& s = scene.sittings[i];
        if (&s == reply.sitting && (!reply.staged || reply.stage == Stage::after)) continue;
        if (s.current && scene.question->state == State::found) continue;
        for (const Finding& f : s.job->all<Finding>()) {
            if (f.outcome != Outcome::repaired || corner_only(f.place) != corner_only(ask.place)) continue;
            if (!measures_it(*ask.point, f.component) || (out && !(f.at < out->at))) continue;
            out = Ending{std::min(f.at, scene.question->as_of),
                         fact(FactId::ended_by_renewal, reply.at.local_date(), f.component)};
        }
    }
}

}  // namespace

Keeps keeps_of(const Ask& ask, const Reply& reply) {
    if (reply.keeps) return *reply.keeps;
    if (reply.reach == Reach::outside && ask.point->keeps_outside) return *ask.point->keeps_outside;
    return ask.point->keeps;
}

Instant midnight_after(const Instant& at, const Date& day) {
    return Instant::from_wall({Date::from_days(day.days() + 1), 0, 0, 0}, at.offset_min);
}

bool concerns(const Place& there, const Place& here, Spot spot) {
    if (there == Place::at(Station::trailer) || spot == Spot::trailer) return true;
    if (spot == Spot::actuator && there.is_corner()) return true;
    if (there.is_corner() != here.is_corner()) return false;
    if (!there.is_corner()) return there == here;
    return there.axle == here.axle && (spot == Spot::axle || there.side == here.side);
}

bool later_than_work(const Reply& reply, const Done& done) {
    if (reply.sitting->index != done.sitting) return reply.sitting->index > done.sitting;
    return !(reply.at < done.at);
}

std::optional<Ending> ending_of(const Scene& scene, const Ask& ask, const Reply& reply) {
    std::optional<Ending> out = by_time(scene, ask, reply);
    by_events(scene, ask, reply, out);
    by_work(scene, ask, reply, out);
    by_renewal(scene, ask, reply, out);
    return out;
}

}  // namespace cotter::answering
