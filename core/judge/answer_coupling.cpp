// Coupling: ratings, the ball's size, wear that only a reading can condemn.
#include <algorithm>

#include "core/judge/answer_rules.h"

namespace cotter::answering {

namespace {

const AnswerSource kRating{RestsOn::maker, "the rating on the label", Evidence::read};

void judge_rating(const Scene& scene, const char* what, const Amount& rating, const std::optional<Gross>& gross,
                  Reply& r) {
    const Amount& gvwr = *scene.trailer->gvwr;
    const double rated = rating.si();
    if (gross && gross->kg > rated * (1 + 1e-9))
        r.verdicts.push_back(told(Grade::do_not_tow,
                                  fact(FactId::coupling_over, Entered(what), rating, figure(gross->kg, "[lb_av]", 0)),
                                  kRating));
    else if (gvwr.si() > rated * (1 + 1e-9))
        r.verdicts.push_back(told(Grade::repair, fact(FactId::coupling_under, Entered(what), rating, gvwr), kRating));
    else
        r.verdicts.push_back(told(Grade::serviceable, fact(FactId::coupling_rated, Entered(what), rating), kRating));
}

bool same_size(const Amount& a, const Amount& b) {
    return std::abs(a.si() - b.si()) < 0.0004;
}

}  // namespace

void cpl_rate(const Scene& scene, const Ask&, Replies& out) {
    if (scene.trailer == nullptr) return;
    const auto gross = gross_weighed(scene);
    Reply r = reply_from(scene, {gross ? &*gross->newest : nullptr});
    r.reach = Reach::wheel_off;
    const bool lower_only = !gross;
    if (lower_only) r.until.reset();
    if (!scene.trailer->coupler_rating || !scene.trailer->gvwr) {
        r.verdicts.push_back(
            open(fact(FactId::axle_not_known, Entered(scene.trailer->gvwr ? "coupler rating" : "GVWR"))));
        out.push_back(std::move(r));
        return;
    }
    judge_rating(scene, "coupler", *scene.trailer->coupler_rating, gross, r);
    const auto& tow = scene.visit != nullptr ? scene.visit->tow : std::optional<TowVehicle>();
    if (tow && tow->ball_rating) judge_rating(scene, "ball", *tow->ball_rating, gross, r);
    if (tow && tow->hitch_rating) judge_rating(scene, "hitch", *tow->hitch_rating, gross, r);
    // What stands on labels does not run out; a weight that does is only a reason against it.
    if (is_good(r)) r.until.reset();
    out.push_back(std::move(r));
}

void cpl_fit(const Scene& scene, const Ask& ask, Replies& out) {
    if (scene.trailer == nullptr || !scene.trailer->ball_size) return;
    const Amount& wanted = *scene.trailer->ball_size;
    for (const Sitting& s : scene.sittings) {
        const Visit* visit = s.job->only<Visit>();
        if (visit != nullptr && visit->tow && visit->tow->ball_size) {
            Reply r = reply_at(s, s.opened, visit->technician, visit->id.uuid);
            const bool same = same_size(*visit->tow->ball_size, wanted);
            r.verdicts.push_back(
                told(same ? Grade::serviceable : Grade::do_not_tow,
                     fact(same ? FactId::ball_fits : FactId::ball_differs, *visit->tow->ball_size, wanted),
                     source_of(ask.point->law)));
            out.push_back(std::move(r));
        }
        for (const Measure* m : measures(s, what::ball_measured, ask.place)) {
            if (m->fault) continue;
            Reply r = reply_of(s, {m});
            const bool same = std::abs(m->si - wanted.si()) < 0.0008;
            r.verdicts.push_back(told(same ? Grade::serviceable : Grade::do_not_tow,
                                      fact(same ? FactId::ball_fits : FactId::ball_differs, m->amount(), wanted),
                                      source_of(ask.point->law)));
            out.push_back(std::move(r));
        }
    }
}

// Readings beside a look: beyond a figure they forbid, within it they prove nothing.
void worn_by_reading(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings)
        for (const std::string_view name : ask.point->readings)
            for (const Measure* m : measures(s, name, ask.place)) {
                if (m->fault) continue;
                Reply r = reply_of(s, {m});
                hold_against(scene, s, {name, ask.place, m->si, m->step_si, m->amount()}, r.verdicts);
                if (r.verdicts.empty()) continue;
                out.push_back(std::move(r));
            }
}

}  // namespace cotter::answering
