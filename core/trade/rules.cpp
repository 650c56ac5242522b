// See rules.h.
#include "core/trade/rules.h"

#include <algorithm>
#include <array>
#include <initializer_list>

#include "core/base/text.h"
#include "core/trade/reading_spec.h"
#include "core/trade/work_done.h"

namespace cotter::applies {

namespace {

constexpr double kPound = 0.45359237;
constexpr double kInch = 0.0254;

Applies yes_if(bool yes) {
    return yes ? Applies::yes : Applies::no;
}

// A brake among `kinds`; `untyped_air`: what an air brake of unknown kind may be.
Applies brake_among(const Layout& layout, const Place& place, std::initializer_list<BrakeKind> kinds,
                    Applies untyped_air = Applies::no) {
    const Axle* axle = layout.axle(place.axle);
    if (axle == nullptr || axle->brake == BrakeKind::not_known) return Applies::not_known;
    if (axle->brake == BrakeKind::air_untyped) return untyped_air;
    return yes_if(std::find(kinds.begin(), kinds.end(), axle->brake) != kinds.end());
}

template <class Kind>
Applies known_as(const Layout& layout, const Place& place, Kind Axle::*field, Kind wanted) {
    const Axle* axle = layout.axle(place.axle);
    if (axle == nullptr || axle->*field == Kind::not_known) return Applies::not_known;
    return yes_if(axle->*field == wanted);
}

// Whether any axle has a brake that `is` accepts; not_known while one may.
template <class F>
Applies any_axle(const Layout& layout, F is) {
    if (layout.trailer == nullptr || layout.trailer->axles.empty()) return Applies::not_known;
    bool open = false;
    for (const Axle& axle : layout.trailer->axles) {
        if (axle.brake == BrakeKind::not_known)
            open = true;
        else if (is(axle.brake))
            return Applies::yes;
    }
    return open ? Applies::not_known : Applies::no;
}

// Whether brakes like those of the axles are brought on so; a brake that is not known may be any.
bool fits_brakes(const Layout& layout, Actuation actuation) {
    using enum Actuation;
    return any_axle(layout, [&](BrakeKind brake) {
               switch (actuation) {
                   case none:
                   case other:
                       return true;
                   case electric:
                       return brake == BrakeKind::electric_drum;
                   case overrun:
                       return brake == BrakeKind::overrun;
                   case air:
                       return is_air(brake);
                   default:
                       return is_hydraulic(brake);
               }
           }) != Applies::no;
}

// By the actuation; without one entered the axles' brakes say which there may be.
Applies actuation_among(const Layout& layout, std::initializer_list<Actuation> wanted) {
    if (layout.trailer == nullptr) return Applies::not_known;
    const auto& entered = layout.trailer->actuation;
    if (entered && *entered != Actuation::other)
        return yes_if(std::find(wanted.begin(), wanted.end(), *entered) != wanted.end());
    const bool may =
        std::any_of(wanted.begin(), wanted.end(), [&](Actuation actuation) { return fits_brakes(layout, actuation); });
    return may ? Applies::not_known : Applies::no;
}

Applies coupler_among(const Layout& layout, std::initializer_list<CouplerKind> wanted) {
    if (layout.trailer == nullptr || layout.trailer->coupler == CouplerKind::not_known) return Applies::not_known;
    return yes_if(std::find(wanted.begin(), wanted.end(), layout.trailer->coupler) != wanted.end());
}

// Does what the trailer is called hold one of these words?
bool kind_among(const Layout& layout, std::initializer_list<std::string_view> words) {
    if (layout.trailer == nullptr) return false;
    const std::string kind = ascii_lower(layout.trailer->kind);
    return std::any_of(words.begin(), words.end(),
                       [&](std::string_view word) { return kind.find(word) != std::string::npos; });
}

Applies at_least(const std::optional<Amount>& amount, double si) {
    return amount ? yes_if(amount->si() >= si * (1 - 1e-9)) : Applies::not_known;
}

Applies both(Applies a, Applies b) {
    if (a == Applies::no || b == Applies::no) return Applies::no;
    return a == Applies::yes && b == Applies::yes ? Applies::yes : Applies::not_known;
}

Applies but(Applies a) {
    return a == Applies::not_known ? a : yes_if(a == Applies::no);
}

Applies either(Applies a, Applies b) {
    return but(both(but(a), but(b)));
}

// Was it built in or after this month? `built` is "2019-04" or "2019"; a year alone leaves its own months open.
Applies built_from(const Trailer& trailer, std::string_view month) {
    const std::string& built = trailer.built;
    if (built.size() == month.size()) return yes_if(built >= month);
    if (built.size() != 4) return Applies::not_known;
    const std::string_view year = month.substr(0, 4);
    if (built == year) return month.substr(5) == "01" ? Applies::yes : Applies::not_known;
    return yes_if(built > year);
}

Applies done(const Layout& layout, Work work, const Place& place) {
    if (layout.job == nullptr) return Applies::no;
    return yes_if(place.is_corner() ? work_done(*layout.job, work, place).has_value()
                                    : work_done_anywhere(*layout.job, work));
}

bool bad_look(const Job& job, PointId point) {
    const auto& looks = job.all<Look>();
    return std::any_of(looks.begin(), looks.end(), [&](const Look& look) {
        return look.point == name_of(point) && look.result == LookResult::bad;
    });
}

}  // namespace

Applies always(const Layout&, const Place&) {
    return Applies::yes;
}

Applies duals(const Layout& layout, const Place& place) {
    const Axle* axle = layout.axle(place.axle);
    return axle == nullptr ? Applies::not_known : yes_if(axle->wheels == Wheels::dual);
}
Applies oil_hub(const Layout& layout, const Place& place) {
    return known_as(layout, place, &Axle::hub, HubKind::oil_bath);
}
Applies greased_hub(const Layout& layout, const Place& place) {
    return but(oil_hub(layout, place));
}
Applies grease_cap(const Layout& layout, const Place& place) {
    return known_as(layout, place, &Axle::hub, HubKind::grease);
}
Applies oil_cap(const Layout& layout, const Place& place) {
    return but(grease_cap(layout, place));
}
Applies braked(const Layout& layout, const Place& place) {
    const Axle* axle = layout.axle(place.axle);
    if (axle == nullptr || axle->brake == BrakeKind::not_known) return Applies::not_known;
    return yes_if(is_braked(axle->brake));
}
Applies hydraulic_brake(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::hydraulic_disc, BrakeKind::hydraulic_drum});
}
Applies hydraulic_disc(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::hydraulic_disc});
}
Applies hydraulic_drum(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::hydraulic_drum});
}
Applies any_disc(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::hydraulic_disc, BrakeKind::air_disc}, Applies::not_known);
}
Applies any_drum(const Layout& layout, const Place& place) {
    return brake_among(layout, place,
                       {BrakeKind::hydraulic_drum, BrakeKind::electric_drum, BrakeKind::overrun, BrakeKind::air_cam,
                        BrakeKind::air_wedge},
                       Applies::not_known);
}
Applies shoe_brake(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::hydraulic_drum, BrakeKind::electric_drum, BrakeKind::overrun});
}
Applies electric_brake(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::electric_drum});
}
Applies overrun_brake(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::overrun});
}
Applies air_brake(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::air_cam, BrakeKind::air_wedge, BrakeKind::air_disc}, Applies::yes);
}
Applies air_rod(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::air_cam, BrakeKind::air_disc}, Applies::not_known);
}
Applies air_wedge(const Layout& layout, const Place& place) {
    return brake_among(layout, place, {BrakeKind::air_wedge}, Applies::not_known);
}
Applies spring_brake(const Layout& layout, const Place& place) {
    const Applies air = air_brake(layout, place);
    if (air != Applies::yes || layout.job == nullptr) return air == Applies::yes ? Applies::not_known : air;
    Fitted fitted = Fitted::not_known;
    const Instant* newest = nullptr;
    for (const Chamber& chamber : layout.job->all<Chamber>())
        if (chamber.place.axle == place.axle && chamber.place.side == place.side &&
            (newest == nullptr || !(chamber.at < *newest))) {
            newest = &chamber.at;
            fitted = chamber.spring_brake;
        }
    return fitted == Fitted::not_known ? Applies::not_known : yes_if(fitted == Fitted::yes);
}
Applies fluid_or_air(const Layout& layout, const Place& place) {
    return either(hydraulic_brake(layout, place), air_brake(layout, place));
}
Applies bolted_wheel(const Layout& layout, const Place& place) {
    return known_as(layout, place, &Axle::fastening, Fastening::wheel_bolts);
}
Applies studded_wheel(const Layout& layout, const Place& place) {
    return but(bolted_wheel(layout, place));
}
Applies leaf_springs(const Layout& layout, const Place& place) {
    return known_as(layout, place, &Axle::suspension, Suspension::leaf);
}
Applies torsion(const Layout& layout, const Place& place) {
    return known_as(layout, place, &Axle::suspension, Suspension::torsion);
}
Applies air_springs(const Layout& layout, const Place& place) {
    return known_as(layout, place, &Axle::suspension, Suspension::air);
}
Applies sprung(const Layout& layout, const Place& place) {
    return either(leaf_springs(layout, place), air_springs(layout, place));
}
Applies sliding_axle(const Layout& layout, const Place& place) {
    const Axle* axle = layout.axle(place.axle);
    return axle == nullptr ? Applies::not_known : yes_if(axle->slides);
}

Applies some_brake(const Layout& layout, const Place&) {
    return any_axle(layout, is_braked);
}
Applies hydraulic_system(const Layout& layout, const Place&) {
    using enum Actuation;
    const Applies by_brakes = any_axle(layout, is_hydraulic);
    if (by_brakes == Applies::yes) return by_brakes;
    const Applies by_unit =
        actuation_among(layout, {surge, electric_over_hydraulic, air_over_hydraulic, vacuum_over_hydraulic});
    if (by_unit == Applies::yes) return by_unit;
    return by_brakes == Applies::no ? Applies::no : Applies::not_known;
}
Applies air_system(const Layout& layout, const Place&) {
    const Applies by_brakes = any_axle(layout, is_air);
    const Applies by_unit = actuation_among(layout, {Actuation::air});
    if (by_brakes == Applies::yes || by_unit == Applies::yes) return Applies::yes;
    return by_brakes == Applies::no ? Applies::no : Applies::not_known;
}
// Air brakes and overrun couplings have one; on other trailers it is not usual, and not required. Of air-braked ones
// the law lets some carry chocks instead.
Applies parking_brake(const Layout& layout, const Place& place) {
    const bool chocks = kind_among(layout, {"dolly", "pulpwood", "heavy hauler", "agricultural commodity"});
    return either(chocks ? Applies::no : air_system(layout, place),
                  any_axle(layout, [](BrakeKind brake) { return brake == BrakeKind::overrun; }));
}
Applies pushed(const Layout& layout, const Place&) {
    return actuation_among(layout, {Actuation::surge, Actuation::overrun});
}
Applies surge(const Layout& layout, const Place&) {
    return actuation_among(layout, {Actuation::surge});
}
Applies powered_unit(const Layout& layout, const Place&) {
    using enum Actuation;
    return actuation_among(layout, {electric_over_hydraulic, air_over_hydraulic, vacuum_over_hydraulic});
}
Applies electric_pull(const Layout& layout, const Place&) {
    return actuation_among(layout, {Actuation::electric, Actuation::electric_over_hydraulic});
}
// Air brakes apply when the supply line parts: there is no cable to look at.
Applies away_cable(const Layout& layout, const Place& place) {
    const Applies braked_at_all = some_brake(layout, place);
    if (layout.trailer != nullptr && layout.trailer->actuation == Actuation::air) return Applies::no;
    const Applies other = any_axle(layout, [](BrakeKind brake) { return is_braked(brake) && !is_air(brake); });
    return both(braked_at_all, other);
}
Applies air_abs(const Layout& layout, const Place& place) {
    const Applies air = air_system(layout, place);
    return layout.trailer == nullptr ? air : both(air, built_from(*layout.trailer, "1998-03"));
}
Applies ball_coupler(const Layout& layout, const Place&) {
    using enum CouplerKind;
    return coupler_among(layout, {ball, european_ball, gooseneck_ball});
}
Applies kingpin(const Layout& layout, const Place&) {
    return coupler_among(layout, {CouplerKind::kingpin});
}
Applies pintle(const Layout& layout, const Place&) {
    return coupler_among(layout, {CouplerKind::pintle_eye});
}
Applies chains(const Layout& layout, const Place& place) {
    return but(kingpin(layout, place));
}
Applies wide(const Layout& layout, const Place&) {
    return layout.trailer == nullptr ? Applies::not_known : at_least(layout.trailer->width, 80 * kInch);
}
Applies long_trailer(const Layout& layout, const Place&) {
    return layout.trailer == nullptr ? Applies::not_known : at_least(layout.trailer->length, 360 * kInch);
}
Applies taped(const Layout& layout, const Place& place) {
    if (layout.trailer == nullptr) return Applies::not_known;
    const auto& gvwr = layout.trailer->gvwr;
    const Applies heavy = gvwr ? yes_if(gvwr->si() > 10000 * kPound * (1 + 1e-9)) : Applies::not_known;
    return both(wide(layout, place), heavy);
}
// 49 CFR 393.86 counts from 10,000 lb. Trailers older than 26 January 1998 have a rule of their own, which depends on
// the height of the body's rear edge; month and year of building do not tell a day in January 1998.
Applies rear_guard(const Layout& layout, const Place&) {
    if (layout.visit != nullptr && layout.visit->duty != Duty::carrier) return Applies::no;
    if (layout.trailer == nullptr || layout.visit == nullptr) return Applies::not_known;
    if (!layout.trailer->guard_exempt.empty()) return Applies::no;
    const Applies heavy = at_least(layout.trailer->gvwr, 10000 * kPound);
    const Applies made = built_from(*layout.trailer, "1998-02");
    if (built_from(*layout.trailer, "1953-01") == Applies::no) return Applies::no;
    return both(heavy, made == Applies::yes ? made : Applies::not_known);
}
Applies carries_animals(const Layout& layout, const Place&) {
    return yes_if(kind_among(layout, {"stock", "horse", "cattle", "animal"}));
}

Applies wheel_was_off(const Layout& layout, const Place& place) {
    return done(layout, Work::wheel_off, place);
}
Applies hub_was_opened(const Layout& layout, const Place& place) {
    return done(layout, Work::hub_opened, place);
}
Applies u_bolts_undone(const Layout& layout, const Place& place) {
    return done(layout, Work::u_bolts, place);
}
Applies hydraulics_opened(const Layout& layout, const Place& place) {
    return done(layout, Work::hydraulics_opened, place);
}
Applies heat_wanted(const Layout& layout, const Place&) {
    if (layout.job == nullptr) return Applies::no;
    const auto& readings = layout.job->all<Reading>();
    const bool read = std::any_of(readings.begin(), readings.end(), [](const Reading& r) {
        const ReadingSpec* spec = reading_spec(r.what);
        return spec != nullptr && spec->name == what::hub_temperature && r.taken == Taken::measured;
    });
    return yes_if(read || work_done_anywhere(*layout.job, Work::hub_opened) ||
                  work_done_anywhere(*layout.job, Work::brake_opened));
}
Applies driven_since_work(const Layout& layout, const Place&) {
    if (layout.job == nullptr) return Applies::no;
    const auto& events = layout.job->all<Event>();
    return yes_if(
        std::any_of(events.begin(), events.end(), [](const Event& event) { return event.kind == EventKind::driven; }));
}
Applies braking_in_doubt(const Layout& layout, const Place&) {
    if (layout.job == nullptr) return Applies::no;
    return yes_if(bad_look(*layout.job, PointId::brk_works) || bad_look(*layout.job, PointId::brk_drive));
}
Applies weighed(const Layout& layout, const Place&) {
    if (layout.job == nullptr) return Applies::no;
    const auto& readings = layout.job->all<Reading>();
    return yes_if(std::any_of(readings.begin(), readings.end(), [](const Reading& r) {
        return r.taken == Taken::measured &&
               (r.what == what::axle_weight || r.what == what::wheel_weight || r.what == what::tongue_weight);
    }));
}
bool by_record(AppliesRule rule) {
    constexpr std::array<AppliesRule, 8> kRules{wheel_was_off,     hub_was_opened,   u_bolts_undone, hydraulics_opened,
                                                driven_since_work, braking_in_doubt, heat_wanted,    weighed};
    return std::find(kRules.begin(), kRules.end(), rule) != kRules.end();
}

}  // namespace cotter::applies
