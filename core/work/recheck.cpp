// From a job's records to what is due.
#include "core/work/recheck.h"

#include <algorithm>
#include <fmt/format.h>
#include <functional>

#include "core/survey/json_visitors.h"
#include "core/trade/work_done.h"

namespace cotter {

namespace {

using Places = std::vector<Place>;

void add(Places& places, const Place& place) {
    const Place corner = place.is_corner() ? Place::corner(place.axle, place.side) : place;
    if (std::find(places.begin(), places.end(), corner) == places.end()) places.push_back(corner);
}

template <class R>
Places places_where(const Job& job, const std::function<bool(const R&)>& wanted) {
    Places out;
    for (const R& r : job.all<R>())
        if (wanted(r)) add(out, r.place);
    return out;
}

Places torqued(const Job& job, std::string_view joint) {
    return places_where<Torque>(job, [&](const Torque& t) { return t.joint == joint && t.taken == Taken::measured; });
}

Places levelled(const Job& job, std::string_view fluid) {
    return places_where<Level>(job, [&](const Level& l) { return l.fluid == fluid && l.added.has_value(); });
}

Places worked_on(const Job& job, std::initializer_list<std::string_view> procedures) {
    return places_where<StepMark>(job, [&](const StepMark& m) {
        return m.word == StepWord::done &&
               std::find(procedures.begin(), procedures.end(), m.procedure) != procedures.end();
    });
}

Places corners_with(const Job& job, const std::function<bool(const Axle&)>& wanted) {
    Places out;
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners())
            if (wanted(trailer->axles[static_cast<std::size_t>(corner.axle) - 1])) out.push_back(corner);
    return out;
}

Places both(Places a, const Places& b) {
    for (const Place& place : b) add(a, place);
    return a;
}

Places opened_hubs(const Job& job) {
    return both(places_where<BearingSetting>(job, [](const BearingSetting&) { return true; }),
                worked_on(job, {"bearing"}));
}

// Retorque is due wherever a wheel was off or its nuts were tightened: a wheel whose torque was never recorded needs it
// most.
Places wheels_off(const Job& job) {
    Places out = torqued(job, "wheel nuts");
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners())
            if (work_done(job, Work::wheel_off, corner)) add(out, corner);
    return out;
}

Places surge(const Job& job) {
    const Trailer* trailer = job.only<Trailer>();
    return trailer != nullptr && trailer->actuation == Actuation::surge ? Places{Place::at(Station::actuator)}
                                                                        : Places{};
}

// Where the cause is found; the trailer itself for what concerns all of it.
Places found(const Job& job, Cause cause) {
    switch (cause) {
        case Cause::always:
            return {Place::at(Station::trailer)};
        case Cause::wheel_off:
            return wheels_off(job);
        case Cause::hub_opened:
            return opened_hubs(job);
        case Cause::hub_oil:
            return levelled(job, "hub oil");
        case Cause::grease_hub:
            return corners_with(job, [](const Axle& a) { return a.hub == HubKind::grease; });
        case Cause::electric_brake:
            return corners_with(job, [](const Axle& a) { return a.brake == BrakeKind::electric_drum; });
        case Cause::brake_work:
            return worked_on(job, {"disc", "electric-drum", "hydraulic-drum"});
        case Cause::brake_fluid:
            return both(levelled(job, "brake fluid"),
                        places_where<BleedCount>(job, [](const BleedCount&) { return true; }));
        case Cause::u_bolts:
            return torqued(job, "U-bolts");
        case Cause::surge_actuator:
            return surge(job);
        case Cause::inspection:
            break;
    }
    return job.only<Inspection>() == nullptr ? Places{} : Places{Place::at(Station::trailer)};
}

std::string miles_text(const std::vector<Number>& miles) {
    std::string out;
    for (std::size_t i = 0; i < miles.size(); ++i)
        out += (i == 0 ? "" : i + 1 == miles.size() ? " and " : ", ") + miles[i].text();
    return out;
}

std::string words_of(const RecheckRule& rule, const std::optional<Date>& due) {
    std::string out;
    if (due) out = "by " + due->text();
    if (!rule.miles.empty()) out += fmt::format("{}after {} miles", out.empty() ? "" : " or ", miles_text(rule.miles));
    if (rule.each_trip) out += out.empty() ? "before each trip" : ", and before each trip";
    return out;
}

// 49 CFR 396 binds motor carriers; to others its intervals are advice.
bool is_carrier(const Job& job) {
    const Visit* visit = job.only<Visit>();
    return visit != nullptr && visit->duty == Duty::carrier;
}

}  // namespace

Result<RecheckRules> rechecks_from_json(std::string_view json) {
    COTTER_ASSIGN(const Json parsed, parse_json(json));
    return fields_from_json<RecheckRules>(parsed);
}

std::vector<Recheck> rechecks(const RecheckRules& rules, const Job& job, const Date& day) {
    std::vector<Recheck> out;
    for (const RecheckRule& rule : rules.rules) {
        const Places places = found(job, rule.after);
        if (places.empty()) continue;
        Recheck r{rule.id, rule.title, {}, {}, std::nullopt, rule.each_trip, rule.law && is_carrier(job), {}, {}};
        r.source = rule.law && !r.law ? "Reference (binds commercial trailers): " + rule.source : rule.source;
        for (const Place& place : places)
            if (place != Place::at(Station::trailer)) r.places += (r.places.empty() ? "" : ", ") + place.text();
        for (const Number& miles : rule.miles) r.distances.push_back(Amount{miles, "[mi_i]"});
        if (rule.days > 0) r.due = Date::from_days(day.days() + rule.days);
        r.words = words_of(rule, r.due);
        out.push_back(std::move(r));
    }
    return out;
}

}  // namespace cotter
