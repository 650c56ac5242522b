// Running gear and load: alignment, the rear guard, weights against ratings, the tongue.
#include <algorithm>
#include <cmath>

#include "core/judge/answer_rules.h"
#include "core/judge/gross_bands.h"

namespace cotter::answering {

namespace {

const AnswerSource kLabel{RestsOn::maker, "the rating on the label", Evidence::read};

const Measure* at_where(const Measures& list, std::string_view where) {
    for (const Measure* m : list)
        if (m->where == where && !m->fault) return m;
    return nullptr;
}

Verdict against_rating(double kg, double step, const Amount& rating) {
    const Amount shown = figure(kg, "[lb_av]", 0);
    if (over(kg, rating.si())) return told(Grade::do_not_tow, fact(FactId::weight_over, shown, rating), kLabel);
    if (over(kg + step, rating.si())) return told(Grade::watch, fact(FactId::weight_near, shown, rating), kLabel);
    return told(Grade::serviceable, fact(FactId::weight_good, shown, rating), kLabel);
}

// The four measures of a guard, and both of its ends: 0 to 100 mm inside the side, never outside it.
void judge_guard(const Scene& scene, const Sitting& s, const Ask& ask, Reply& r) {
    for (const std::string_view name : {what::guard_height, what::guard_rear, what::guard_member, what::guard_side}) {
        Measures list = measures(s, name, ask.place);
        if (list.empty()) list = measures_anywhere(s, name);
        const bool side = name == what::guard_side;
        if (list.empty() || (side && (at_where(list, "left") == nullptr || at_where(list, "right") == nullptr)))
            r.verdicts.push_back(open(fact(FactId::part_not_measured, Entered(name))));
        for (const Measure* m : list) {
            if (m->fault)
                r.verdicts.push_back(open(fact(*m->fault, m->amount())));
            else if (hold_against(scene, s, {name, ask.place, m->si, m->step_si, m->amount()}, r.verdicts).figures == 0)
                r.verdicts.push_back(open(fact(FactId::no_limit, m->amount())));
        }
    }
}

}  // namespace

void susp_align(const Scene& scene, const Ask& ask, Replies& out) {
    const AnswerSource usual = practice("left and right within two steps of the tape");
    for (const Sitting& s : scene.sittings) {
        Reply r;
        for (const std::string_view name : {what::axle_spacing, what::axle_offset}) {
            Measures list = measures_anywhere(s, name);
            std::erase_if(list, [&](const Measure* m) {
                const int axle = m->axle != 0 ? m->axle : m->place.axle;
                return axle != 0 && axle != ask.place.axle;
            });
            const Measure *left = at_where(list, "left"), *right = at_where(list, "right");
            if (left == nullptr || right == nullptr) continue;
            if (r.verdicts.empty()) r = reply_of(s, list);
            const double apart = std::abs(left->si - right->si), step = std::max(left->step_si, right->step_si);
            const bool off = apart > 2 * step * (1 + 1e-9);
            r.verdicts.push_back(
                told(off ? Grade::watch : Grade::serviceable,
                     fact(off ? FactId::axle_askew : FactId::axle_square, left->amount(), right->amount()), usual));
        }
        for (const Measure* m : measures_anywhere(s, what::tracking)) {
            if (r.verdicts.empty()) r = reply_of(s, {m});
            if (!m->fault)
                hold_against(scene, s, {what::tracking, ask.place, m->si, m->step_si, m->amount()}, r.verdicts);
        }
        if (!r.verdicts.empty()) out.push_back(std::move(r));
    }
}

void frame_guard(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        Measures any;
        for (const std::string_view name : ask.point->readings)
            for (const Measure* m : measures_anywhere(s, name)) any.push_back(m);
        if (any.empty()) continue;
        Reply r = reply_of(s, any);
        judge_guard(scene, s, ask, r);
        out.push_back(std::move(r));
    }
}

// Loaded, its weight must be known: then every axle and the tongue were weighed.
void load_known(const Scene& scene, const Ask&, Replies& out) {
    if (scene.visit == nullptr) return;
    const Sitting& now = scene.current();
    Reply r = reply_at(now, now.opened, scene.visit->technician, scene.visit->id.uuid);
    const auto gross = gross_weighed(scene);
    if (gross) {
        r.until = gross->newest->until;
        r.at = gross->newest->reading->at;
        r.verdicts.push_back(told(Grade::serviceable, fact(FactId::load_weighed, figure(gross->kg, "[lb_av]", 0))));
    } else if (scene.visit->load == Load::empty) {
        r.verdicts.push_back(told(Grade::serviceable, fact(FactId::load_empty)));
    } else {
        r.verdicts.push_back(
            open(fact(scene.visit->load == Load::loaded ? FactId::load_not_weighed : FactId::load_not_said)));
        r.absent = scene.visit->load == Load::unknown;
    }
    out.push_back(std::move(r));
}

void load_gross(const Scene& scene, const Ask&, Replies& out) {
    if (scene.trailer == nullptr) return;
    std::vector<Weighed> axles;
    std::vector<Verdict> verdicts;
    for (int axle = 1; axle <= static_cast<int>(scene.trailer->axles.size()); ++axle) {
        const auto weight = axle_weighed(scene, axle);
        if (!weight) continue;
        axles.push_back(*weight);
        if (const auto& gawr = scene.layout.axle(axle)->gawr)
            verdicts.push_back(against_rating(weight->kg, weight->step, *gawr));
    }
    const auto gross = gross_weighed(scene);
    if (axles.empty() && !tongue_weighed(scene)) return;
    Reply r = reply_from(scene, {axles.empty() ? nullptr : &axles.front(), gross ? &*gross->newest : nullptr});
    r.reach = Reach::wheel_off;
    if (gross && scene.trailer->gvwr)
        verdicts.push_back(against_rating(gross->kg, gross->step, *scene.trailer->gvwr));
    else
        verdicts.push_back(open(fact(FactId::gross_not_known)));
    r.verdicts = std::move(verdicts);
    out.push_back(std::move(r));
}

void load_tongue(const Scene& scene, const Ask&, Replies& out) {
    const auto tongue = tongue_weighed(scene);
    if (!tongue || scene.trailer == nullptr) return;
    Reply r = reply_from(scene, {&*tongue});
    const auto gross = gross_weighed(scene);
    const CouplerKind coupler = scene.trailer->coupler;
    const bool high = coupler == CouplerKind::gooseneck_ball || coupler == CouplerKind::kingpin;
    if (tongue->kg <= 0) {
        r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::tongue_lifts, tongue->shown), own_band()));
    } else if (!gross) {
        r.verdicts.push_back(open(fact(FactId::gross_not_known)));
    } else {
        const double share = tongue->kg / gross->kg;
        const Grade grade = bands::tongue_share(share, high);
        r.verdicts.push_back(told(grade,
                                  fact(grade == Grade::serviceable ? FactId::tongue_good : FactId::tongue_unusual,
                                       tongue->shown, figure(share, "%", 1)),
                                  practice(high ? "15 to 25 % on a gooseneck or kingpin" : "10 to 15 % on a ball")));
    }
    out.push_back(std::move(r));
}

}  // namespace cotter::answering
