// What makes and holds the brakes' pressure: level, fluid, hold, line pressure, surge ratio, power.
#include <algorithm>

#include "core/base/decimal.h"
#include "core/judge/answer_rules.h"
#include "core/judge/gross_bands.h"
#include "core/judge/weights.h"

namespace cotter::answering {

namespace {

const AnswerSource kReservoir{RestsOn::law, "49 CFR part 396, Appendix A, 1j(1)", Evidence::memory};

// The minutes in "after 5 min"; nothing when there are none.
std::optional<double> minutes_in(std::string_view where) {
    const auto digit = where.find_first_of("0123456789");
    if (digit == std::string_view::npos || where.find("min") == std::string_view::npos) return std::nullopt;
    const std::string_view from = where.substr(digit);
    return read_double(from.substr(0, from.find_first_not_of("0123456789.")));
}

Verdict of_level(const LevelSeen& seen) {
    const Fact what = fact(FactId::level_seen, seen.mark);
    if (seen.mark == LevelMark::empty) return told(Grade::do_not_tow, what, kReservoir);
    if (seen.mark == LevelMark::below) return told(Grade::repair, what, kReservoir);
    if (seen.mark == LevelMark::not_seen) return open(what);
    return told(seen.mark == LevelMark::above ? Grade::watch : Grade::serviceable, what, kReservoir);
}

Verdict of_fill(const Measure& m) {
    if (m.si <= 0) return told(Grade::do_not_tow, fact(FactId::reservoir_empty), kReservoir);
    const bool low = m.si < 0.25 - 1e-9;
    return told(low ? Grade::repair : Grade::serviceable,
                fact(low ? FactId::beyond : FactId::within, m.amount(), Bound::at_least, *make_amount("1/4", "1")),
                kReservoir);
}

void judge_hold(const Measures& list, Reply& r) {
    const Measure *start = nullptr, *end = nullptr;
    for (const Measure* m : list) {
        if (m->where.starts_with("start")) start = m;
        const auto minutes = minutes_in(m->where);
        if (minutes && (end == nullptr || *minutes > *minutes_in(end->where))) end = m;
    }
    if (start != nullptr && start->si <= 0) {
        r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::hold_no_start), own_band()));
        return;
    }
    if (start == nullptr || end == nullptr) {
        r.verdicts.push_back(open(fact(FactId::part_not_measured,
                                       Entered(start == nullptr ? "pressure at the start" : "pressure at the end"))));
        return;
    }
    const double drop = (start->si - end->si) / start->si, minutes = *minutes_in(end->where);
    const Grade grade = bands::hold(start->si, drop);
    const Fact says = fact(FactId::hold_dropped, start->amount(), end->amount(), figure(drop, "%", 1),
                           figure(minutes * 60, "min", 0));
    if (minutes < 5 && grade < Grade::repair) {
        r.verdicts.push_back(open(fact(FactId::hold_too_short, figure(minutes * 60, "min", 0))));
        return;
    }
    r.verdicts.push_back(
        told(grade, says, grade >= Grade::repair ? own_band() : practice("5 % lost in 5 minutes after settling")));
}

// The label's pressure, when somebody entered it as the maker's figure; else what units for the brake's kind make.
double label_pascal(const Scene& scene, const Sitting& s, AnswerSource& source) {
    for (const Limit* l : makers_figures(scene, s, what::line_pressure, Place::at(Station::actuator))) {
        source = source_of(*l);
        return l->value.si();
    }
    const auto& axles = scene.trailer->axles;
    const bool disc =
        std::any_of(axles.begin(), axles.end(), [](const Axle& a) { return a.brake == BrakeKind::hydraulic_disc; });
    source = practice("units make about 1,000 psi for drums, 1,600 for discs");
    return (disc ? bands::kDiscPsi : bands::kDrumPsi) * kPsi;
}

// 49 CFR 393.48(d): trailer rating (its weight where that is more) against the tow vehicle's.
Verdict surge_ratio(const Scene& scene, double tow_kg) {
    const AnswerSource law{RestsOn::law, "49 CFR 393.48(d)", Evidence::read};
    const auto gross = gross_weighed(scene);
    if (!scene.trailer->gvwr) return open(fact(FactId::axle_not_known, Entered("GVWR")), law);
    const double rated = scene.trailer->gvwr->si(), kg = gross ? std::max(gross->kg, rated) : rated;
    const double most = surge_ratio_limit(kg / kPound), ratio = kg / tow_kg;
    if (most == 0) return told(Grade::do_not_tow, fact(FactId::surge_too_heavy, figure(kg, "[lb_av]", 0)), law);
    const bool over = ratio > most * (1 + 1e-9);
    return told(over ? Grade::do_not_tow : Grade::serviceable,
                fact(over ? FactId::surge_ratio_over : FactId::surge_ratio_good, figure(kg, "[lb_av]", 0),
                     figure(tow_kg, "[lb_av]", 0), figure(ratio, "1", 4), figure(most, "1", 2)),
                law);
}

std::optional<double> tow_rating(const Scene& scene, const Sitting& s) {
    const Visit* visit = s.job->only<Visit>();
    if (visit != nullptr && visit->tow && visit->tow->gvwr) return visit->tow->gvwr->si();
    for (const Measure* m : measures_anywhere(s, what::tow_vehicle_rating))
        if (!m->fault) return m->si;
    (void)scene;
    return std::nullopt;
}

}  // namespace

void act_level(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        const bool as_found = s.current && scene.question->state == State::found;
        for (const Level& level : s.job->all<Level>()) {
            if (level.fluid != "brake fluid" || level.place.is_corner()) continue;
            Reply r = reply_at(s, level.at, level.by, level.id.uuid);
            const bool after = level.after && !as_found;
            r.absent = level.taken != Taken::measured;
            r.staged = true;
            if (after) r.stage = Stage::after;
            r.verdicts.push_back(r.absent ? open(fact(FactId::not_taken, level.taken, level.reason))
                                          : of_level(after ? *level.after : level.before));
            out.push_back(std::move(r));
        }
        Measures list = measures(s, what::reservoir_fill, ask.place);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r)) r.verdicts.push_back(of_fill(**std::min_element(list.begin(), list.end(), thinner)));
        out.push_back(std::move(r));
    }
}

void act_fluid(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        Measures list = measures(s, what::fluid_moisture, ask.place);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r)) {
            const Measure& most = **std::max_element(list.begin(), list.end(), thinner);
            const bool wet = most.si >= 0.03 - 1e-9;
            r.verdicts.push_back(told(wet ? Grade::watch : Grade::serviceable,
                                      fact(wet ? FactId::beyond_usual : FactId::within, most.amount(), Bound::less_than,
                                           *make_amount("3", "%")),
                                      practice("fluid is changed at 3 % of moisture")));
        }
        out.push_back(std::move(r));
    }
}

void act_hold(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::pressure_hold, ask.place, out);
        Measures list = measures_anywhere(s, what::pressure_hold);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r)) judge_hold(list, r);
        out.push_back(std::move(r));
    }
}

void act_press(const Scene& scene, const Ask& ask, Replies& out) {
    if (scene.trailer == nullptr) return;
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::line_pressure, ask.place, out);
        Measures list = measures_anywhere(s, what::line_pressure);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r)) {
            const Measure& most = **std::max_element(list.begin(), list.end(), thinner);
            AnswerSource source;
            const double label = label_pascal(scene, s, source);
            const Grade grade = bands::line_pressure(most.si / label);
            r.verdicts.push_back(told(grade,
                                      fact(FactId::line_pressure_share, most.amount(), figure(most.si / label, "%", 0),
                                           figure(label, "[psi]", 0)),
                                      grade >= Grade::repair ? own_band() : source));
        }
        out.push_back(std::move(r));
    }
}

void act_surge(const Scene& scene, const Ask&, Replies& out) {
    if (scene.trailer == nullptr || scene.trailer->actuation != Actuation::surge) return;
    for (const Sitting& s : scene.sittings) {
        const auto tow = tow_rating(scene, s);
        if (!tow || !(*tow > 0)) continue;
        Reply r = reply_at(s, s.opened, {}, s.job->id().uuid);
        r.reach = Reach::wheel_off;  // two labels, whoever reads them
        r.keeps = Keeps::trip;
        r.verdicts.push_back(surge_ratio(scene, *tow));
        out.push_back(std::move(r));
    }
}

void act_power(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        Measures list = measures(s, what::actuator_volts, ask.place);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r)) {
            const Measure& least = **std::min_element(list.begin(), list.end(), thinner);
            r.verdicts.push_back(least.si <= 0.2
                                     ? told(Grade::do_not_tow, fact(FactId::unit_dead), own_band())
                                     : told(Grade::serviceable, fact(FactId::plate_amount, least.amount())));
        }
        out.push_back(std::move(r));
    }
}

}  // namespace cotter::answering
