// Discs and drums: linings, rotors, drums, runout; left against right; a measured stop; adjusters.
#include <algorithm>

#include "core/judge/answer_rules.h"

namespace cotter::answering {

namespace {

constexpr double kLawLining = 0.0015875;  // 1/16 in
constexpr std::size_t kLeastRound = 4;    // points round a rotor or drum

bool is_edge(const Measure& m) {
    return m.where.find("thinnest") != std::string_view::npos || m.where.find("edge") != std::string_view::npos;
}

void need_figure(const Bounds& held, const Measure& m, Reply& r) {
    if (!held.firm) r.verdicts.push_back(open(fact(FactId::no_limit, m.amount())));
}

void need_side(const Measures& pads, std::string_view side, Reply& r) {
    const bool there =
        std::any_of(pads.begin(), pads.end(), [&](const Measure* m) { return m->where.starts_with(side); });
    if (!there) r.verdicts.push_back(open(fact(FactId::part_not_measured, Entered(side) + " pad")));
}

// A rotor or drum: the worst of its points against its own figure, which somebody must have read.
void judge_round(const Scene& scene, const Ask& ask, std::string_view name, bool thickness, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, name, ask.place, out);
        Measures points = measures(s, name, ask.place);
        if (points.empty()) continue;
        Reply r = reply_of(s, points);
        if (!take_faults(points, r)) {
            const auto [least, most] = std::minmax_element(points.begin(), points.end(), thinner);
            const Measure& worst = thickness ? **least : **most;
            const Bounds held =
                hold_against(scene, s, {name, ask.place, worst.si, worst.step_si, worst.amount()}, r.verdicts);
            need_figure(held, worst, r);
            if (points.size() < kLeastRound) r.verdicts.push_back(open(few(points.size(), kLeastRound)));
            const double variation = (*most)->si - (*least)->si;
            constexpr double kRound = 0.010 * 0.0254;
            if (!thickness && variation > kRound * (1 + 1e-9))
                r.verdicts.push_back(told(Grade::watch,
                                          fact(FactId::out_of_round, figure(variation, worst.reading->unit, 3)),
                                          practice("out of round over 0.010 in")));
            if (thickness && points.size() < 8) r.notes.push_back(fact(FactId::variation_not_told));
        }
        out.push_back(std::move(r));
    }
    doubt_regrown(scene, ask, name, Work::brake_opened, out, thickness);
}

std::optional<double> thinnest_at(const Scene& scene, std::string_view name, const Place& corner,
                                  std::string_view side = {}) {
    for (auto s = scene.sittings.rbegin(); s != scene.sittings.rend(); ++s) {
        std::optional<double> out;
        for (const Measure* m : measures(*s, name, corner))
            if (!m->fault && !is_edge(*m) && m->where.starts_with(side)) out = std::min(out.value_or(1), m->si);
        if (out) return out;
    }
    return std::nullopt;
}

void compare(const std::optional<double>& a, const std::optional<double>& b, FactId id, Reply& r) {
    if (!a || !b) return;
    const double apart = std::abs(*a - *b);
    const bool far = apart > 0.002 * (1 + 1e-9);
    r.verdicts.push_back(told(far ? Grade::watch : Grade::serviceable,
                              fact(far ? id : FactId::pair_alike, figure(apart, "mm", 1)),
                              practice("linings more than 2 mm apart have a cause")));
}

}  // namespace

void disc_pad(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::pad_thickness, ask.place, out);
        Measures pads = measures(s, what::pad_thickness, ask.place);
        if (pads.empty()) continue;
        Reply r = reply_of(s, pads);
        if (!take_faults(pads, r)) {
            const Measure& thin = **std::min_element(pads.begin(), pads.end(), thinner);
            need_figure(hold_against(scene, s, {what::pad_thickness, ask.place, thin.si, thin.step_si, thin.amount()},
                                     r.verdicts),
                        thin, r);
            need_side(pads, "inner", r);
            need_side(pads, "outer", r);
        }
        out.push_back(std::move(r));
    }
    doubt_regrown(scene, ask, what::pad_thickness, Work::linings_renewed, out);
    end_at_forecast(scene, ask, what::pad_thickness, kLawLining, out);
}

// The law reads a lining at the shoe's center; what its edge has worn to is taper.
void drum_shoe(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::lining_thickness, ask.place, out);
        Measures all = measures(s, what::lining_thickness, ask.place);
        if (all.empty()) continue;
        Reply r = reply_of(s, all);
        if (!take_faults(all, r)) {
            Measures centers, edges;
            for (const Measure* m : all) (is_edge(*m) ? edges : centers).push_back(m);
            if (centers.size() < 2) r.verdicts.push_back(open(fact(FactId::shoe_center_missing)));
            if (!centers.empty()) {
                const Measure& thin = **std::min_element(centers.begin(), centers.end(), thinner);
                need_figure(
                    hold_against(scene, s, {what::lining_thickness, ask.place, thin.si, thin.step_si, thin.amount()},
                                 r.verdicts),
                    thin, r);
            }
            const auto edge = std::min_element(edges.begin(), edges.end(), thinner);
            if (edge != edges.end() && (*edge)->si < kLawLining)
                r.verdicts.push_back(told(Grade::watch, fact(FactId::shoe_taper, (*edge)->amount()),
                                          practice("an edge thinner than the shoe's center: taper")));
        }
        out.push_back(std::move(r));
    }
    doubt_regrown(scene, ask, what::lining_thickness, Work::linings_renewed, out);
    end_at_forecast(scene, ask, what::lining_thickness, kLawLining, out);
}

void disc_rotor(const Scene& scene, const Ask& ask, Replies& out) {
    judge_round(scene, ask, what::rotor_thickness, true, out);
}

void drum_drum(const Scene& scene, const Ask& ask, Replies& out) {
    judge_round(scene, ask, what::drum_diameter, false, out);
}

// The dial sees runout and hub play together: the truth lies between the reading less the play and the reading.
void disc_runout(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        Measures list = measures(s, what::rotor_runout, ask.place), play = measures(s, what::end_play, ask.place);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        std::erase_if(play, [](const Measure* m) { return m->fault.has_value(); });
        if (!take_faults(list, r)) {
            const Measure& read = **std::max_element(list.begin(), list.end(), thinner);
            const auto figures = makers_figures(scene, s, what::rotor_runout, ask.place);
            const Measure* loose = play.empty() ? nullptr : *std::max_element(play.begin(), play.end(), thinner);
            if (loose == nullptr || loose->si > read.si) {
                r.verdicts.push_back(open(fact(FactId::runout_play, read.amount())));
            } else if (figures.empty()) {
                r.verdicts.push_back(open(fact(FactId::no_limit, read.amount())));
            } else {
                const Limit& most = *figures.front();
                const bool beyond = stand_of(most, read.si - loose->si, 0) == Stand::beyond;
                const bool good = stand_of(most, read.si, 0) != Stand::beyond;
                const Fact says = fact(FactId::runout_between, figure(read.si - loose->si, read.reading->unit, 4),
                                       read.amount(), most.value);
                r.verdicts.push_back(beyond || good
                                         ? told(beyond ? most.beyond : Grade::serviceable, says, source_of(most))
                                         : open(says, source_of(most)));
            }
        }
        out.push_back(std::move(r));
    }
}

void brk_pair(const Scene& scene, const Ask& ask, Replies& out) {
    const Place left = Place::corner(ask.place.axle, Side::left), right = Place::corner(ask.place.axle, Side::right);
    Reply r = reply_from(scene, {});
    for (const std::string_view name : {what::pad_thickness, what::lining_thickness, what::air_lining}) {
        compare(thinnest_at(scene, name, left), thinnest_at(scene, name, right), FactId::pair_sides, r);
        if (name != what::pad_thickness) continue;
        for (const Place& corner : {left, right})
            compare(thinnest_at(scene, name, corner, "inner"), thinnest_at(scene, name, corner, "outer"),
                    FactId::pair_pads, r);
    }
    if (!r.verdicts.empty()) out.push_back(std::move(r));
}

// 49 CFR 393.52(d): 40 ft from 20 mph, 35 ft behind a tow vehicle with two axles when the trailer is rated up to
// 3,000 lb; or 43.5 % of gross weight.
void brk_stop(const Scene& scene, const Ask& ask, Replies& out) {
    const AnswerSource law{RestsOn::law, "49 CFR 393.52(d)", Evidence::partly};
    const bool light = scene.trailer != nullptr && scene.trailer->gvwr &&
                       scene.trailer->gvwr->si() <= 3000 * kPound * (1 + 1e-9) && scene.visit != nullptr &&
                       scene.visit->tow && scene.visit->tow->axles == 2;
    const Amount most = *make_amount(light ? "35" : "40", "[ft_i]"), least = *make_amount("43.5", "%");
    for (const Sitting& s : scene.sittings)
        for (const std::string_view name : {what::stop_distance, what::brake_force})
            for (const Measure* m : measures(s, name, ask.place)) {
                const bool stop = name == what::stop_distance;
                const Amount& figure = stop ? most : least;
                Reply r = reply_of(s, {m});
                const bool beyond = stop ? m->si > figure.si() * (1 + 1e-9) : m->si < figure.si() * (1 - 1e-9);
                if (m->fault)
                    r.verdicts.push_back(open(fact(*m->fault, m->amount())));
                else
                    r.verdicts.push_back(told(beyond ? Grade::do_not_tow : Grade::serviceable,
                                              fact(beyond ? FactId::beyond : FactId::within, m->amount(),
                                                   stop ? Bound::at_most : Bound::at_least, figure),
                                              law));
                out.push_back(std::move(r));
            }
}

// 49 CFR 393.53(b): air-braked vehicles built from 20 October 1994 need automatic adjusters.
void brk_adjust(const Scene& scene, const Ask& ask, Replies& out) {
    const Axle* axle = scene.axle(ask.place);
    if (axle == nullptr || scene.trailer == nullptr || !is_air(axle->brake)) return;
    const std::string& built = scene.trailer->built;
    const bool due = built.size() == 7 ? built >= "1994-11" : built >= "1995";
    const AnswerSource law{RestsOn::law, "49 CFR 393.53(b)", Evidence::read};
    const auto judge = [&](Reply& r) {
        if (built.empty())
            r.verdicts.push_back(open(fact(FactId::adjuster_date_missing), law));
        else if (due)
            r.verdicts.push_back(told(Grade::repair, fact(FactId::adjuster_manual, built), law));
    };
    for (Reply& look : out)
        if (governing(look).fact == fact(FactId::entry, EntryOf{PointId::brk_adjust, "manual"})) judge(look);
    for (const Sitting& s : scene.sittings)
        for (const Chamber& c : s.job->all<Chamber>()) {
            if (corner_only(c.place) != ask.place || c.slack == SlackAdjuster::not_known) continue;
            Reply r = reply_at(s, c.at, c.by, c.id.uuid);
            if (c.slack == SlackAdjuster::manual) judge(r);
            if (r.verdicts.empty()) r.verdicts.push_back(told(Grade::serviceable, fact(FactId::adjuster_good), law));
            out.push_back(std::move(r));
        }
}

}  // namespace cotter::answering
