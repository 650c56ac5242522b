// Linings against each other, rotors and drums.
#include <algorithm>
#include <fmt/format.h>

#include "core/judge/disc.h"
#include "core/judge/judge_words.h"
#include "core/judge/judging.h"
#include "core/trade/reading_names.h"

namespace cotter {

namespace {

using words::number;

std::string mm(double si, int digits = 1) {
    return number(si * 1000, digits) + " mm";
}

const Value* thinnest(const std::vector<const Value*>& values, int pad = -1) {
    const Value* out = nullptr;
    for (const Value* v : values)
        if ((pad < 0 || inner_or_outer(*v) == pad) && (out == nullptr || v->si < out->si)) out = v;
    return out;
}

double mean_of(const std::vector<const Value*>& values, int pad) {
    double sum = 0;
    int n = 0;
    for (const Value* v : values)
        if (inner_or_outer(*v) == pad) sum += v->si, ++n;
    return n == 0 ? -1 : sum / n;
}

std::optional<double> when_new(const Bench& bench, const Place& corner) {
    auto values = bench.values.of(what::pad_when_new, corner);
    if (values.empty()) values = bench.values.of(what::pad_when_new, Place::at(Station::trailer));
    return values.empty() ? std::nullopt : std::optional(values.front()->si);
}

std::vector<std::string> imbalance_steps(const Imbalance& i, std::optional<double> fresh, const char* one,
                                         const char* other, double a, double b) {
    std::vector<std::string> out{fmt::format("{} {}, {} {}: {} apart", one, mm(a), other, mm(b), mm(i.difference))};
    if (fresh && i.percent)
        out.push_back(fmt::format("worn from {}: {} and {}, imbalance {} %", mm(*fresh), mm(i.worn_one),
                                  mm(i.worn_other), number(*i.percent, 0)));
    return out;
}

void inner_against_outer(Bench& bench, const Place& corner) {
    const auto values = bench.values.of(what::pad_thickness, corner);
    const double inner = mean_of(values, 0), outer = mean_of(values, 1);
    if (values.empty()) return;
    if (inner < 0 || outer < 0) {
        bench.cannot_tell({corner, 0, "brake", std::string(what::pad_imbalance),
                           inner < 0 ? "the inner pad was not measured" : "the outer pad was not measured",
                           "measure both pads", false});
        return;
    }
    const auto fresh = when_new(bench, corner);
    const Imbalance i = imbalance_of(fresh, inner, outer);
    hold_against_limits(bench, {corner, 0, "brake", std::string(what::pad_imbalance), i.difference, 0, mm(i.difference),
                                imbalance_steps(i, fresh, "inner", "outer", inner, outer),
                                inner < outer ? "inner pad worn more: the caliper does not float on its pins, or its "
                                                "piston does not draw back"
                                              : "outer pad worn more: the caliper sticks on its pins after release",
                                values.front()->reading->id.uuid});
}

void left_against_right(Bench& bench, int axle, std::string_view name) {
    const Place left = Place::corner(axle, Side::left), right = Place::corner(axle, Side::right);
    const auto a = bench.values.of(name, left), b = bench.values.of(name, right);
    if (a.empty() && b.empty()) return;
    if (a.empty() || b.empty()) {
        bench.cannot_tell({left, axle, "brake", std::string(what::axle_imbalance),
                           fmt::format("the {} side has no reading to compare with", a.empty() ? "left" : "right"),
                           "measure both sides", false});
        return;
    }
    const double l = thinnest(a)->si, r = thinnest(b)->si;
    const auto fresh = when_new(bench, left);
    const Imbalance i = imbalance_of(fresh, l, r);
    hold_against_limits(bench, {left,
                                axle,
                                "brake",
                                std::string(what::axle_imbalance),
                                i.difference,
                                0,
                                mm(i.difference),
                                imbalance_steps(i, fresh, "left", "right", l, r),
                                fmt::format("{} side worn more: look at hose, line, adjuster and for oil on it",
                                            l < r ? "left" : "right"),
                                {}});
}

Ring ring_at(const std::vector<const Value*>& values) {
    std::vector<double> points;
    for (const Value* v : values) points.push_back(v->si);
    return ring_of(points);
}

std::optional<double> highest_lower_limit(Bench& bench, std::string_view name, const Place& corner) {
    std::optional<double> out;
    for (const Limit* l : bench.limits_at(name, corner))
        if (is_lower(l->bound) && l->mark == LimitMark::a) out = std::max(out.value_or(0), l->value.si());
    return out;
}

void judge_cut(Bench& bench, const Place& corner, const Ring& ring) {
    const auto cuts = bench.values.of(what::rotor_cut, corner);
    if (cuts.empty()) return;
    const RotorLimits limits{highest_lower_limit(bench, what::rotor_thickness, corner),
                             highest_lower_limit(bench, what::rotor_machine_to, corner)};
    const RotorPlan plan = plan_rotor(ring, cuts.front()->si, limits);
    if (plan.answer == RotorAnswer::no_limit) {
        bench.cannot_tell({corner, 0, "brake", std::string(what::rotor_machine_to),
                           "the thinnest allowed after machining is not entered",
                           "enter the maker's figure with its source", false, Lack::makers_figure});
        return;
    }
    const std::string sum =
        fmt::format("{} − 2 × {} = {}", mm(ring.least, 2), mm(cuts.front()->si, 2), mm(plan.after_cut, 2));
    hold_against_limits(bench, {corner,
                                0,
                                "brake",
                                std::string(what::rotor_machine_to),
                                plan.after_cut,
                                0,
                                mm(plan.after_cut, 2),
                                {sum},
                                "replace the rotors of the axle instead of cutting",
                                {}});
}

void judge_rotor(Bench& bench, const Place& corner) {
    const auto values = bench.values.of(what::rotor_thickness, corner);
    if (values.empty()) return;
    const Ring ring = ring_at(values);
    if (!highest_lower_limit(bench, what::rotor_thickness, corner))
        bench.cannot_tell({corner, 0, "brake", std::string(what::rotor_thickness),
                           "the discard thickness of this rotor is not entered",
                           "read the figure cast into the rotor and photograph it", false, Lack::makers_figure});
    judge_cut(bench, corner, ring);
    if (values.size() < 8) {
        bench.cannot_tell({corner,
                           0,
                           "brake",
                           std::string(what::rotor_variation),
                           fmt::format("{} points; eight round one circle are needed", values.size()),
                           {},
                           false});
        return;
    }
    hold_against_limits(bench,
                        {corner,
                         0,
                         "brake",
                         std::string(what::rotor_variation),
                         ring.variation,
                         0,
                         mm(ring.variation, 2),
                         {fmt::format("{} − {} = {}", mm(ring.most, 2), mm(ring.least, 2), mm(ring.variation, 2))},
                         "",
                         values.front()->reading->id.uuid});
}

void judge_runout(Bench& bench, const Place& corner) {
    const auto runout = bench.values.of(what::rotor_runout, corner);
    if (runout.empty()) return;
    const auto play = bench.values.of(what::end_play, corner);
    if (play.empty()) {
        bench.cannot_tell({corner, 0, "brake", std::string(what::rotor_runout),
                           "end play adds straight to runout and was not measured", "measure end play first", false});
        return;
    }
    const Value* most = *std::max_element(play.begin(), play.end(), [](auto* a, auto* b) { return a->si < b->si; });
    Ground r = plain_reason(corner, "brake", std::string(what::rotor_runout), Grade::watch,
                            fmt::format("{} runout with {} end play: up to {} of it may be play",
                                        runout.front()->text(), most->amount.text(), most->amount.text()),
                            words::source(SourceKind::physics, "axial play adds to the dial's reading"), LimitMark::b);
    if (most->si * 4 < runout.front()->si || runout.front()->si * 4 < most->si) r.grade = Grade::serviceable;
    r.todo = "take the play out or allow for it, then turn the rotor one stud and read again";
    bench.tell(std::move(r));
}

void judge_drum(Bench& bench, const Place& corner) {
    const auto values = bench.values.of(what::drum_diameter, corner);
    if (values.empty()) return;
    const auto limits = bench.limits_at(what::drum_diameter, corner);
    if (limits.empty())
        bench.cannot_tell({corner, 0, "brake", std::string(what::drum_diameter),
                           "the largest diameter of this drum is not entered",
                           "read the figure cast into the drum and photograph it", false, Lack::makers_figure});
    if (values.size() < 4) return;
    const Ring ring = ring_at(values);
    hold_against_limits(bench,
                        {corner,
                         0,
                         "brake",
                         std::string(what::drum_out_of_round),
                         ring.variation,
                         0,
                         mm(ring.variation, 2),
                         {fmt::format("{} − {} = {}", mm(ring.most, 2), mm(ring.least, 2), mm(ring.variation, 2))},
                         "",
                         {}});
}

}  // namespace

void judge_linings(Bench& bench) {
    for (const Place& corner : bench.corners()) inner_against_outer(bench, corner);
    const int axles = bench.trailer == nullptr ? 0 : static_cast<int>(bench.trailer->axles.size());
    for (int axle = 1; axle <= axles; ++axle) {
        left_against_right(bench, axle, what::pad_thickness);
        left_against_right(bench, axle, what::lining_thickness);
    }
}

void judge_rotors(Bench& bench) {
    for (const Place& corner : bench.corners()) {
        judge_rotor(bench, corner);
        judge_runout(bench, corner);
        judge_drum(bench, corner);
    }
}

}  // namespace cotter
