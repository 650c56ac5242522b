// What the trailer is: plate and layout. What was said to be not known is an answer, and never a good one.
#include <algorithm>

#include "core/judge/answer_rules.h"
#include "core/trailer/vin.h"

namespace cotter::answering {

namespace {

Verdict missing() {
    return open(fact(FactId::not_entered));
}

// A slip of the unit or of a digit is asked about, never judged by.
Verdict amount_between(const std::optional<Amount>& amount, double least, double most) {
    if (!amount) return missing();
    if (!(amount->si() >= least && amount->si() <= most)) return open(fact(FactId::implausible, *amount));
    return told(Grade::serviceable, fact(FactId::plate_amount, *amount));
}

Verdict vin_verdict(const Trailer& t) {
    if (t.vin.empty()) return missing();
    if (!t.vin_nonstandard && check_vin(t.vin).verdict != VinVerdict::ok) return open(fact(FactId::vin_wrong, t.vin));
    return told(Grade::serviceable, fact(FactId::plate_text, t.vin));
}

Verdict text_verdict(const std::string& text) {
    return text.empty() ? missing() : told(Grade::serviceable, fact(FactId::plate_text, text));
}

// One axle of a trailer may be rated above the whole; it is looked at twice all the same.
Verdict gawr_verdict(const Trailer& t, const Axle& axle) {
    Verdict v = amount_between(axle.gawr, 50, 20000);
    if (v.grade && t.gvwr && axle.gawr->si() > t.gvwr->si() * (1 + 1e-9))
        return told(Grade::watch, fact(FactId::gawr_above_gvwr, *axle.gawr, *t.gvwr));
    return v;
}

Verdict placard_verdict(const Scene& scene, const Trailer& t, const Axle& axle, const Place& place) {
    const auto& pressure = axle.tire_pressure ? axle.tire_pressure : t.tyre_pressure;
    const std::string& size = axle.tire_size.empty() ? t.tyre_size : axle.tire_size;
    if (!pressure) {
        const auto table = makers_figures(scene, scene.current(), what::pressure_cold, place);
        if (!table.empty()) return told(Grade::serviceable, fact(FactId::plate_amount, table.front()->value));
    }
    Verdict v = amount_between(pressure, 14 * kPsi, 160 * kPsi);
    if (v.grade && size.empty()) return open(fact(FactId::axle_not_known, Entered("tire size on the placard")));
    return v;
}

Verdict axle_verdict(const Axle& axle) {
    const auto unknown = [](const char* what) { return open(fact(FactId::axle_not_known, Entered(what))); };
    if (axle.brake == BrakeKind::not_known) return unknown("brake");
    if (axle.brake == BrakeKind::air_untyped) return unknown("kind of air brake");
    if (axle.hub == HubKind::not_known) return unknown("hub");
    if (axle.fastening == Fastening::not_known) return unknown("wheel fastening");
    if (axle.suspension == Suspension::not_known) return unknown("suspension");
    return told(Grade::serviceable, fact(FactId::plate_text, Entered(name_of(axle.brake))));
}

bool fits_actuation(BrakeKind brake, Actuation act) {
    using enum Actuation;
    if (brake == BrakeKind::not_known) return true;
    if (is_hydraulic(brake))
        return act == surge || act == electric_over_hydraulic || act == air_over_hydraulic ||
               act == vacuum_over_hydraulic;
    if (is_air(brake)) return act == air;
    if (brake == BrakeKind::electric_drum) return act == electric;
    return brake == BrakeKind::overrun ? act == overrun : true;
}

Verdict actuation_verdict(const Trailer& t) {
    if (!t.actuation) return missing();
    const Entered named(name_of(*t.actuation));
    if (*t.actuation == Actuation::other) return open(fact(FactId::axle_not_known, Entered("way of applying")));
    const bool braked = std::any_of(t.axles.begin(), t.axles.end(), [](const Axle& a) { return is_braked(a.brake); });
    for (const Axle& axle : t.axles)
        if (!fits_actuation(axle.brake, *t.actuation))
            return open(fact(FactId::actuation_contradicts, named, Entered(name_of(axle.brake))));
    if (!braked && !t.axles.empty() && *t.actuation != Actuation::none)
        return open(fact(FactId::actuation_contradicts, named, Entered("none")));
    return told(Grade::serviceable, fact(FactId::plate_text, named));
}

Verdict plate_verdict(const Scene& scene, const Ask& ask) {
    const Trailer& t = *scene.trailer;
    const Axle* axle = scene.axle(ask.place);
    switch (ask.point->id) {
        case PointId::plate_id:
            return vin_verdict(t);
        case PointId::plate_built:
            return text_verdict(t.built);
        case PointId::plate_gvwr:
            return amount_between(t.gvwr, 50, 60000);
        case PointId::plate_act:
            return actuation_verdict(t);
        case PointId::plate_cpl:
            return t.coupler == CouplerKind::not_known
                       ? missing()
                       : told(Grade::serviceable, fact(FactId::plate_text, Entered(name_of(t.coupler))));
        default:
            break;
    }
    if (axle == nullptr) return missing();
    if (ask.point->id == PointId::plate_gawr) return gawr_verdict(t, *axle);
    if (ask.point->id == PointId::plate_axle) return text_verdict(axle->model);
    return ask.point->id == PointId::plate_tire ? placard_verdict(scene, t, *axle, ask.place) : axle_verdict(*axle);
}

}  // namespace

void plate_rule(const Scene& scene, const Ask& ask, Replies& out) {
    if (scene.trailer == nullptr) return;
    const Sitting& now = scene.current();
    Reply r = reply_at(now, now.opened, scene.visit != nullptr ? scene.visit->technician : std::string_view());
    r.reach = Reach::wheel_off;  // a plate is read, whoever reads it
    r.record = scene.trailer->id.uuid;
    const auto& unknown = scene.trailer->not_known;
    if (std::find(unknown.begin(), unknown.end(), name_of(ask.point->id)) != unknown.end()) {
        r.verdicts.push_back(open(fact(FactId::said_not_known)));
    } else {
        r.verdicts.push_back(plate_verdict(scene, ask));
        if (r.verdicts[0].grade) r.verdicts[0].source = source_of(law_at(*ask.point, scene.layout));
        r.absent = r.verdicts[0].fact.id == FactId::not_entered;
    }
    out.push_back(std::move(r));
}

void use_duty(const Scene& scene, const Ask&, Replies& out) {
    if (scene.visit == nullptr) return;
    const Sitting& now = scene.current();
    Reply r = reply_at(now, now.opened, scene.visit->technician, scene.visit->id.uuid);
    r.absent = scene.visit->duty == Duty::not_said || scene.visit->region.empty();
    r.verdicts.push_back(
        r.absent ? missing() : told(Grade::serviceable, fact(FactId::plate_text, Entered(name_of(scene.visit->duty)))));
    out.push_back(std::move(r));
}

void use_tow(const Scene& scene, const Ask&, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        const Visit* visit = s.job->only<Visit>();
        for (const Measure* m : measures_anywhere(s, what::tow_vehicle_rating)) {
            Reply r = reply_of(s, {m});
            r.verdicts.push_back(m->fault ? open(fact(*m->fault, m->amount()))
                                          : told(Grade::serviceable, fact(FactId::plate_amount, m->amount())));
            out.push_back(std::move(r));
        }
        if (visit == nullptr || !visit->tow || !visit->tow->gvwr) continue;
        Reply r = reply_at(s, s.opened, visit->technician, visit->id.uuid);
        r.verdicts.push_back(amount_between(visit->tow->gvwr, 300, 50000));
        out.push_back(std::move(r));
    }
}

}  // namespace cotter::answering
