// Must this axle have brakes? Federal rules bind carriers; for others the state decides (points of the table, 3.5).
#include <algorithm>

#include "core/judge/answer_rules.h"

namespace cotter::answering {

namespace {

constexpr double kLightLb = 3000;

struct Weight {
    std::optional<double> lb;  // gross as weighed, else the rating
    Amount shown;
    std::optional<Instant> until;
};

Weight weight_of(const Scene& scene) {
    if (const auto gross = gross_weighed(scene))
        return {gross->kg / kPound, figure(gross->kg, "[lb_av]", 0), gross->newest->until};
    if (scene.trailer != nullptr && scene.trailer->gvwr)
        return {scene.trailer->gvwr->si() / kPound, *scene.trailer->gvwr, {}};
    return {};
}

AnswerSource federal(std::string_view section, Evidence evidence = Evidence::read) {
    return {RestsOn::law, std::string(section), evidence};
}
AnswerSource of_state(const StateRule& rule) {
    return {RestsOn::state_law, std::string(rule.law.text), rule.law.evidence};
}

// A heavy trailer without any brake.
Verdict heavy_unbraked(const Scene& scene, const Weight& weight, bool carrier) {
    const StateRule* rule = scene.visit != nullptr ? state_rule(scene.visit->region) : nullptr;
    const bool entered = rule != nullptr && rule->brakes_above_lb > 0;
    if (!carrier && entered && !over(*weight.lb, rule->brakes_above_lb))
        return told(
            Grade::serviceable,
            fact(FactId::state_allows_unbraked, weight.shown, figure(rule->brakes_above_lb * kPound, "[lb_av]", 0)),
            of_state(*rule));
    if (!carrier && entered)
        return told(
            Grade::do_not_tow,
            fact(FactId::state_forbids_unbraked, weight.shown, figure(rule->brakes_above_lb * kPound, "[lb_av]", 0)),
            of_state(*rule));
    return told(Grade::do_not_tow, fact(FactId::brakes_required, weight.shown), federal("49 CFR 393.42(a)"));
}

// What rests on the tow vehicle may be at most 40 % of the weight on its own axles.
Verdict light_of_carrier(const Scene& scene, const Weight& weight) {
    const AnswerSource law = federal("49 CFR 393.42(b)(3)", Evidence::partly);
    const auto tongue = tongue_weighed(scene);
    const auto& tow = scene.visit != nullptr ? scene.visit->tow : std::optional<TowVehicle>();
    if (!tongue || !tow || !tow->axle_weights) return open(fact(FactId::tongue_for_brakes_unknown, weight.shown), law);
    const double share = tongue->kg / tow->axle_weights->si();
    const Amount percent = figure(share, "%", 0);
    if (over(share, 0.4))
        return told(Grade::do_not_tow, fact(FactId::tongue_wants_brakes, tongue->shown, percent), law);
    return told(Grade::serviceable, fact(FactId::tongue_needs_no_brakes, tongue->shown, percent), law);
}

Verdict light_unbraked(const Scene& scene, const Weight& weight, bool carrier) {
    if (carrier) return light_of_carrier(scene, weight);
    return told(Grade::watch,
                fact(FactId::state_decides_brakes, weight.shown, figure(first_brake_line_lb() * kPound, "[lb_av]", 0)));
}

// One axle without brakes beside a braked one, on a heavy trailer.
Verdict idler(const Scene& scene, const Weight& weight, bool carrier) {
    const AnswerSource all_wheels = federal("49 CFR 393.42(a)");
    if (carrier) return told(Grade::repair, fact(FactId::all_wheels_required, weight.shown), all_wheels);
    const StateRule* rule = scene.visit != nullptr ? state_rule(scene.visit->region) : nullptr;
    const double rating = scene.trailer->gvwr ? scene.trailer->gvwr->si() / kPound : *weight.lb;
    if (rule == nullptr || rule->idler == IdlerRule::not_entered)
        return open(fact(FactId::idler_state_unknown), all_wheels);
    const bool allowed = rule->idler == IdlerRule::allowed_under && rating < rule->idler_below_lb;
    if (!allowed) return told(Grade::repair, fact(FactId::all_wheels_required, weight.shown), of_state(*rule));
    return told(Grade::serviceable, fact(FactId::state_allows_idler, weight.shown), of_state(*rule));
}

Verdict need_of(const Scene& scene, const Axle& axle, const Weight& weight) {
    if (axle.brake == BrakeKind::not_known) return open(fact(FactId::axle_not_known, Entered("brake")));
    if (axle.brake != BrakeKind::none)
        return told(Grade::serviceable, fact(FactId::axle_braked, Entered(name_of(axle.brake))),
                    federal("49 CFR 393.42(a)"));
    if (!weight.lb) return open(fact(FactId::weight_for_brakes_unknown));
    const bool carrier = scene.visit != nullptr && scene.visit->duty == Duty::carrier;
    const auto& axles = scene.trailer->axles;
    const bool braked = std::any_of(axles.begin(), axles.end(), [](const Axle& a) { return is_braked(a.brake); });
    if (!over(*weight.lb, kLightLb)) return light_unbraked(scene, weight, carrier);
    return braked ? idler(scene, weight, carrier) : heavy_unbraked(scene, weight, carrier);
}

}  // namespace

void brk_need(const Scene& scene, const Ask& ask, Replies& out) {
    const Axle* axle = scene.axle(ask.place);
    if (axle == nullptr) return;
    const Weight weight = weight_of(scene);
    Reply r = reply_from(scene, {});
    r.verdicts.push_back(need_of(scene, *axle, weight));
    if (axle->brake == BrakeKind::none && weight.until) r.until = weight.until;
    out.push_back(std::move(r));
}

}  // namespace cotter::answering
