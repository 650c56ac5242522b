// The load on a tire against its rating: by the wheel's weight, the axle's, or the axle's rating.
#include <algorithm>

#include "core/judge/answer_rules.h"

namespace cotter::answering {

namespace {

const AnswerSource kLoad{RestsOn::law, "49 CFR 393.75(g)", Evidence::read};
const AnswerSource kBuild{RestsOn::build, "49 CFR 571.120 S5.1.2", Evidence::read};
constexpr std::string_view kPounds = "[lb_av]";

// On one tire, kg. Inside a step of the scale nobody can say that it is not over.
void judge_weight(const Weighed& w, double on_tire, double step, double rating, Reply& reply) {
    const Amount carried = figure(on_tire, kPounds, 0), most = figure(rating, kPounds, 0);
    if (over(on_tire, rating))
        reply.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::tire_over, carried, most, w.shown), kLoad));
    else if (over(on_tire + step, rating))
        reply.verdicts.push_back(told(Grade::watch, fact(FactId::tire_near, carried, most, w.shown), kLoad));
    else
        reply.verdicts.push_back(told(Grade::serviceable, fact(FactId::tire_carries, carried, most), kLoad));
}

// Somebody saw a lower load limit written on the trailer: a look at this point that names it.
bool limit_written(const Scene& scene) {
    for (const Sitting& s : scene.sittings) {
        if (!s.accepted) continue;
        for (const LookAt& at : s.looks)
            if (at.point == PointId::tire_load)
                for (const LookItem& item : at.look->items)
                    if (item.item == "limit-written" && item.result == LookResult::good) return true;
    }
    return false;
}

void judge_rating_of_axle(const Scene& scene, const Amount& gawr, double rating, int tires, bool weighed_within,
                          Reply& reply) {
    const double carries = rating * tires;
    const Amount all = figure(carries, kPounds, 0);
    if (!over(gawr.si(), carries))
        reply.verdicts.push_back(told(Grade::serviceable, fact(FactId::tires_carry_axle, all, gawr), kBuild));
    else if (weighed_within && limit_written(scene))
        reply.verdicts.push_back(told(Grade::watch, fact(FactId::tires_under_axle_limited, all, gawr), kBuild));
    else
        reply.verdicts.push_back(told(Grade::repair, fact(FactId::tires_under_axle, all, gawr), kBuild));
}

}  // namespace

void tire_load(const Scene& scene, const Ask& ask, Replies& out) {
    const Axle* axle = scene.axle(ask.place);
    const auto tire = rating_at(scene, ask.place);
    if (axle == nullptr || !tire) return;
    const bool dual = axle->wheels == Wheels::dual;
    const int tires = dual ? 4 : 2;
    const auto wheel = wheel_weighed(scene, ask.place), on_axle = axle_weighed(scene, ask.place.axle);
    Reply r = reply_from(scene, {wheel ? &*wheel : nullptr, on_axle ? &*on_axle : nullptr});
    if (r.by.empty()) {
        r.by = tire->by;
        r.at = tire->at;
        r.record = tire->record;
    }
    r.accepted = r.accepted && tire->sitting->accepted;
    const TireRating& rating = tire->rating;
    if (!rating.kg) {
        r.verdicts.push_back(open(rating.because));
    } else {
        if (wheel) judge_weight(*wheel, wheel->kg / (dual ? 2 : 1), wheel->step, *rating.kg, r);
        if (on_axle) judge_weight(*on_axle, on_axle->kg / tires, on_axle->step / tires, *rating.kg, r);
        const bool within = on_axle && !over(on_axle->kg, *rating.kg * tires);
        if (axle->gawr) judge_rating_of_axle(scene, *axle->gawr, *rating.kg, tires, within, r);
        if (r.verdicts.empty()) r.verdicts.push_back(open(fact(FactId::load_unknown)));
    }
    out.push_back(std::move(r));
}

}  // namespace cotter::answering
