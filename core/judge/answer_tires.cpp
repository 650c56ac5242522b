// Tires: what the sidewall says, tread, cold pressure, age, duals.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/judge/answer_rules.h"
#include "core/judge/gross_bands.h"
#include "core/judge/tyres.h"
#include "core/trailer/tyre_date.h"

namespace cotter::answering {

namespace {

const AnswerSource kItem10b{RestsOn::law, "49 CFR part 396, Appendix A, 10b", Evidence::partly};
const AnswerSource kItem10c{RestsOn::law, "49 CFR part 396, Appendix A, 10c", Evidence::partly};

bool is_dual(const Scene& scene, const Place& wheel) {
    const Axle* axle = scene.axle(wheel);
    return axle != nullptr && axle->wheels == Wheels::dual;
}

bool differs(const Sidewall& a, const Sidewall& b) {
    const bool size = !a.size.empty() && !b.size.empty() && a.size != b.size;
    return size || (a.type != TireType::not_known && b.type != TireType::not_known && a.type != b.type);
}

void judge_sidewall(const Scene& scene, const Ask& ask, const Sidewall& tire, Reply& reply) {
    const bool dual = is_dual(scene, ask.place);
    const bool rated = dual ? tire.index_dual > 0 || tire.max_dual : tire.index_single > 0 || tire.max_single;
    const auto missing = [&](bool there, const char* what) {
        if (!there) reply.verdicts.push_back(open(fact(FactId::sidewall_missing, Entered(what))));
    };
    missing(!tire.size.empty(), "size");
    missing(tire.type != TireType::not_known, "type");
    missing(rated, dual ? "load index or largest load as a dual" : "load index or largest load");
    missing(tire.max_pressure.has_value(), "largest cold pressure");
    if (tire.not_for_highway)
        reply.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::not_for_highway), kItem10b));
    if (tire.speed_limit)
        reply.verdicts.push_back(told(Grade::repair, fact(FactId::speed_limited, *tire.speed_limit), kItem10c));
    for (const Place& mate : wheels_of_axle(scene, ask.place.axle)) {
        const auto other = newest_sidewall(scene, mate);
        if (mate != ask.place && other && differs(tire, *other->tire))
            reply.verdicts.push_back(told(Grade::repair, fact(FactId::tire_mixed, mate, other->tire->size), kItem10b));
    }
    if (reply.verdicts.empty())
        reply.verdicts.push_back(
            told(Grade::serviceable, fact(FactId::tire_read, tire.size), source_of(ask.point->law)));
}

// 2.1 of the points: three grooves that differ by two steps of the gauge or more tell a cause, never a grade.
std::optional<FactId> tread_cause(const Measures& grooves) {
    std::array<const Measure*, 3> at{};
    for (const Measure* m : grooves)
        for (std::size_t i = 0; i < 3; ++i)
            if (m->where.starts_with(std::array{"inner", "middle", "outer"}[i])) at[i] = m;
    if (at[0] == nullptr || at[2] == nullptr) return std::nullopt;
    const double step = std::max({at[0]->step_si, at[2]->step_si, 1e-4}) * 2 * (1 - 1e-9);
    const double inner = at[0]->si, outer = at[2]->si;
    if (std::abs(inner - outer) >= step) return FactId::tread_one_shoulder;
    if (at[1] == nullptr) return std::nullopt;
    const double middle = at[1]->si;
    if (middle - inner >= step && middle - outer >= step) return FactId::tread_both_shoulders;
    if (inner - middle >= step && outer - middle >= step) return FactId::tread_middle;
    return std::nullopt;
}

// The highest reading among the other wheels of the trailer, of this visit: a mate to compare a tire with.
std::optional<double> fullest_mate(const Sitting& sitting, const Place& wheel) {
    std::optional<double> out;
    for (const Measure* m : measures_anywhere(sitting, what::pressure_cold))
        if (!m->fault && m->place != wheel && m->place.is_corner()) out = std::max(out.value_or(0), m->si);
    return out;
}

std::optional<Amount> placard_at(const Scene& scene, const Place& wheel) {
    const Axle* axle = scene.axle(wheel);
    if (axle != nullptr && axle->tire_pressure) return axle->tire_pressure;
    return scene.trailer != nullptr ? scene.trailer->tyre_pressure : std::nullopt;
}

void judge_placard(const Sitting& sitting, const Measure& m, const Amount& placard, Reply& reply) {
    const AnswerSource law{RestsOn::law, "49 CFR 393.75, pressure paragraph", Evidence::partly};
    const double wanted = placard.si(), step = std::max(m.step_si, kPsi * 0.5);
    const std::int64_t percent = std::llround(m.si / wanted * 100);
    const Grade band = bands::cold_pressure(m.si, wanted);
    const Visit* visit = sitting.job->only<Visit>();
    const bool empty = visit != nullptr && visit->load == Load::empty;
    if (band == Grade::do_not_tow)
        reply.verdicts.push_back(told(band, fact(FactId::pressure_flat, m.amount(), percent, placard), own_band()));
    else if (band == Grade::repair)
        reply.verdicts.push_back(told(band, fact(FactId::pressure_run_low, m.amount(), percent, placard),
                                      {RestsOn::law, "29 CFR 1910.177", Evidence::partly}));
    else if (m.si <= wanted - step * (1 - 1e-9))
        reply.verdicts.push_back(
            told(empty ? Grade::watch : Grade::repair, fact(FactId::pressure_low, m.amount(), placard), law));
    else
        reply.verdicts.push_back(told(Grade::serviceable, fact(FactId::pressure_good, m.amount(), placard), law));
}

void judge_pressure(const Scene& scene, const Ask& ask, const Sitting& sitting, const Measure& m, Reply& reply) {
    const auto sidewall = newest_sidewall(scene, ask.place);
    const std::optional<Amount> most = sidewall ? sidewall->tire->max_pressure : std::nullopt;
    if (most && m.si >= most->si() + std::max(m.step_si, kPsi * 0.5) * (1 - 1e-9))
        reply.verdicts.push_back(told(Grade::repair, fact(FactId::pressure_over_most, m.amount(), *most),
                                      {RestsOn::stamped, "sidewall", Evidence::read}));
    if (const auto placard = placard_at(scene, ask.place)) {
        judge_placard(sitting, m, *placard, reply);
        return;
    }
    double reference = most ? most->si() : 0;
    if (const auto mate = fullest_mate(sitting, ask.place)) reference = std::max(reference, *mate);
    if (bands::cold_pressure_unplaced(m.si, reference) == Grade::do_not_tow)
        reply.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::pressure_flat_unplaced, m.amount()), own_band()));
    else
        reply.verdicts.push_back(open(fact(FactId::placard_missing)));
}

void judge_hot(const Scene& scene, const Ask& ask, const Sitting& sitting, const Measure& m, Reply& reply) {
    const auto rated = rating_at(scene, ask.place);
    const auto placard = placard_at(scene, ask.place);
    const bool tells = tells_cold_pressure(m.where) || tells_cold_pressure(m.reading->note);
    if (!tells || !rated || !rated->rating.kg || !placard) {
        reply.verdicts.push_back(open(fact(FactId::pressure_hot, m.amount())));
        reply.absent = true;  // it says nothing against a cold reading
        return;
    }
    const double cold = cold_estimate_psi(m.si / kPsi, *rated->rating.kg / kPound) * kPsi;
    Measure estimated = m;
    estimated.si = cold;
    judge_placard(sitting, estimated, *placard, reply);
}

void judge_age(const Scene& scene, const std::string& code, Reply& reply) {
    const AnswerSource years{RestsOn::practice, "trailer tires: 3 to 6 years", Evidence::memory};
    if (code.size() == 3) {
        reply.verdicts.push_back(told(Grade::watch, fact(FactId::tire_before_2000, code), years));
        return;
    }
    const auto week = tyre_week(code);
    if (!week) {
        reply.verdicts.push_back(open(fact(FactId::date_code_wrong, code)));
        return;
    }
    const double age = tyre_age_years(*week, scene.question->as_of.local_date());
    if (age < -0.02)
        reply.verdicts.push_back(open(fact(FactId::date_code_future, code)));
    else
        reply.verdicts.push_back(told(age > 6 ? Grade::watch : Grade::serviceable,
                                      fact(FactId::tire_made, week->first, figure(age, "1", 1)), years));
}

}  // namespace

void tire_id(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings)
        if (const Sidewall* tire = sidewall_in(scene, s, ask.place)) {
            Reply r = reply_at(s, tire->at, tire->by, tire->id.uuid);
            judge_sidewall(scene, ask, *tire, r);
            out.push_back(std::move(r));
        }
}

void tire_tread(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::tread_depth, ask.place, out);
        Measures grooves = measures(s, what::tread_depth, ask.place);
        if (grooves.empty()) continue;
        Reply r = reply_of(s, grooves);
        if (!take_faults(grooves, r)) {
            const Measure& thin = **std::min_element(grooves.begin(), grooves.end(), thinner);
            hold_against(scene, s, {what::tread_depth, ask.place, thin.si, thin.step_si, thin.amount()}, r.verdicts);
            if (grooves.size() < 2) r.verdicts.push_back(open(few(grooves.size(), 2)));
            if (const auto cause = tread_cause(grooves)) r.notes.push_back(fact(*cause));
        }
        out.push_back(std::move(r));
    }
    doubt_regrown(scene, ask, what::tread_depth, Work::tire_changed, out);
}

void tire_press(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::pressure_cold, ask.place, out);
        for (const std::string_view name : {what::pressure_cold, what::pressure_hot}) {
            Measures list = measures(s, name, ask.place);
            if (list.empty()) continue;
            Reply r = reply_of(s, list);
            if (!take_faults(list, r)) {
                const Measure& low = **std::min_element(list.begin(), list.end(), thinner);
                name == what::pressure_cold ? judge_pressure(scene, ask, s, low, r) : judge_hot(scene, ask, s, low, r);
            }
            out.push_back(std::move(r));
        }
    }
}

void tire_age(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        for (const Measure* m : measures(s, what::tyre_date, ask.place)) {
            Reply r = reply_of(s, {m});
            judge_age(scene, m->point->value.text(), r);
            out.push_back(std::move(r));
        }
        const Sidewall* tire = sidewall_in(scene, s, ask.place);
        if (tire == nullptr || tire->date_code.empty()) continue;
        Reply r = reply_at(s, tire->at, tire->by, tire->id.uuid);
        judge_age(scene, tire->date_code, r);
        out.push_back(std::move(r));
    }
}

void tire_dual(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        Measures both = measures(s, what::dual_diameters, ask.place);
        if (both.empty()) continue;
        Reply r = reply_of(s, both);
        if (!take_faults(both, r)) {
            const auto [least, most] = std::minmax_element(both.begin(), both.end(), thinner);
            const double apart = (*most)->si - (*least)->si;
            if (both.size() < 2)
                r.verdicts.push_back(open(few(both.size(), 2)));
            else
                hold_against(scene, s, {what::dual_difference, ask.place, apart, 0, figure(apart, "[in_i]", 2)},
                             r.verdicts);
            if (r.verdicts.empty()) r.verdicts.push_back(open(fact(FactId::not_judged)));
        }
        out.push_back(std::move(r));
    }
}

}  // namespace cotter::answering
