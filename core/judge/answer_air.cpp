// Air brakes: chambers, strokes, linings, leaks.
//
// Method for the stroke limit: the figure that somebody read in the table of 49 CFR 393.47(e); else the limit marked on
// a type that the table does not list, or 80 % of its marked stroke; else the table as remembered, which may forbid and
// permits nothing. A chamber whose stroke class was not read is judged as standard, never guessed long.
#include <algorithm>
#include <array>

#include "core/judge/answer_rules.h"
#include "core/judge/gross_bands.h"

namespace cotter::answering {

namespace {

constexpr double kDrumLining = 0.25 * kInch, kDiscLining = 0.125 * kInch, kScribe = kInch / 16;

struct StrokeRow {
    ChamberFamily family;
    std::string_view size;
    double standard, longer;  // in; 0: not remembered
};
constexpr std::array kRemembered{
    StrokeRow{ChamberFamily::clamp, "6", 1.25, 0},        StrokeRow{ChamberFamily::clamp, "9", 1.375, 0},
    StrokeRow{ChamberFamily::clamp, "12", 1.375, 1.75},   StrokeRow{ChamberFamily::clamp, "16", 1.75, 2},
    StrokeRow{ChamberFamily::clamp, "20", 1.75, 2},       StrokeRow{ChamberFamily::clamp, "24", 1.75, 2},
    StrokeRow{ChamberFamily::clamp, "30", 2, 2.5},        StrokeRow{ChamberFamily::clamp, "36", 2.25, 0},
    StrokeRow{ChamberFamily::piston, "30", 2.25, 0},      StrokeRow{ChamberFamily::bolt, "A", 1.375, 0},
    StrokeRow{ChamberFamily::bolt, "B", 1.75, 0},         StrokeRow{ChamberFamily::bolt, "C", 1.75, 0},
    StrokeRow{ChamberFamily::bolt, "D", 1.25, 0},         StrokeRow{ChamberFamily::bolt, "E", 1.375, 0},
    StrokeRow{ChamberFamily::bolt, "F", 2.25, 0},         StrokeRow{ChamberFamily::bolt, "G", 2, 0},
    StrokeRow{ChamberFamily::rotochamber, "9", 1.5, 0},   StrokeRow{ChamberFamily::rotochamber, "12", 1.5, 0},
    StrokeRow{ChamberFamily::rotochamber, "16", 2, 0},    StrokeRow{ChamberFamily::rotochamber, "20", 2, 0},
    StrokeRow{ChamberFamily::rotochamber, "24", 2, 0},    StrokeRow{ChamberFamily::rotochamber, "30", 2.25, 0},
    StrokeRow{ChamberFamily::rotochamber, "36", 2.75, 0}, StrokeRow{ChamberFamily::rotochamber, "50", 3, 0},
};

std::optional<double> remembered_m(const Chamber& c, bool longer) {
    for (const StrokeRow& row : kRemembered)
        if (row.family == c.family && row.size == c.size) {
            const double inches = longer ? row.longer : row.standard;
            return inches > 0 ? std::optional(inches * kInch) : std::nullopt;
        }
    return std::nullopt;
}

struct StrokeLimit {
    std::optional<double> m;
    AnswerSource source;
    bool standard = false;  // judged as standard for want of the class
};

StrokeLimit limit_of(const Chamber& c) {
    const AnswerSource table{RestsOn::law, "49 CFR 393.47(e)", Evidence::read};
    const AnswerSource item{RestsOn::law, "49 CFR part 396, Appendix A, 1a(5)(b)", Evidence::read};
    const bool unread = c.stroke == StrokeClass::not_read;
    const auto standard = remembered_m(c, false);
    StrokeLimit out;
    if (c.table_limit) {
        out = {c.table_limit->si(), table, false};
    } else if (c.marked_limit) {
        return {c.marked_limit->si(), item, false};
    } else if (c.rated_stroke && !standard) {
        return {c.rated_stroke->si() * 0.8, item, false};
    } else {
        out = {remembered_m(c, c.stroke == StrokeClass::long_stroke),
               {RestsOn::law, "49 CFR 393.47(e)", Evidence::memory},
               unread};
    }
    if (unread && standard && out.m && *out.m > *standard * (1 + 1e-9))
        out = {standard, {RestsOn::law, "49 CFR 393.47(e)", Evidence::memory}, true};
    return out;
}

const Chamber* chamber_in(const Scene& scene, const Sitting& s, const Place& corner) {
    const Chamber *first = nullptr, *last = nullptr;
    for (const Chamber& c : s.job->all<Chamber>()) {
        if (corner_only(c.place) != corner) continue;
        if (first == nullptr || c.at < first->at) first = &c;
        if (last == nullptr || !(c.at < last->at)) last = &c;
    }
    return s.current && scene.question->state == State::found ? first : last;
}

const Chamber* newest_chamber(const Scene& scene, const Sitting& upto, const Place& corner) {
    for (auto s = scene.sittings.rbegin(); s != scene.sittings.rend(); ++s)
        if (s->accepted || s->index == upto.index)
            if (const Chamber* c = chamber_in(scene, *s, corner)) return c;
    return nullptr;
}

// Strokes count at 80 to 90 psi in the tanks.
std::optional<double> tanks_psi(const Sitting& s) {
    std::optional<double> out;
    for (const Measure* m : measures_anywhere(s, what::tank_pressure))
        if (!m->fault) out = m->si / kPsi;
    return out;
}

void judge_stroke(const Scene& scene, const Ask& ask, const Sitting& s, const Measure& m, Reply& r) {
    const Chamber* chamber = newest_chamber(scene, s, ask.place);
    const auto tanks = tanks_psi(s);
    if (chamber == nullptr) {
        r.verdicts.push_back(open(fact(FactId::chamber_not_read)));
        return;
    }
    const StrokeLimit limit = limit_of(*chamber);
    if (!limit.m) {
        r.verdicts.push_back(open(fact(FactId::stroke_no_limit, m.amount(), chamber->size), limit.source));
        return;
    }
    const Amount most = figure(*limit.m, m.reading->unit, m.reading->unit == "[in_i]" ? 3 : 1);
    const bool beyond = m.si > *limit.m * (1 + 1e-9);
    if (!tanks || *tanks < 80 - 0.01 || *tanks > 90 + 0.01) {
        if (beyond && tanks && *tanks < 80)
            r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::stroke_over, m.amount(), most), limit.source));
        else
            r.verdicts.push_back(open(fact(FactId::stroke_pressure)));
        return;
    }
    if (beyond)
        r.verdicts.push_back(told(
            Grade::do_not_tow,
            fact(limit.standard ? FactId::stroke_over_standard : FactId::stroke_over, m.amount(), most), limit.source));
    else if (limit.source.evidence == Evidence::memory)
        r.verdicts.push_back(
            open(fact(FactId::memory_permits_nothing, m.amount(), Bound::at_most, most), limit.source));
    else
        r.verdicts.push_back(told(m.si + m.step_si > *limit.m * (1 + 1e-9) ? Grade::watch : Grade::serviceable,
                                  fact(FactId::within, m.amount(), Bound::at_most, most), limit.source));
}

void judge_wedge(const Measure& m, Reply& r) {
    const bool beyond = m.si > kScribe * (1 + 1e-9);
    r.verdicts.push_back(
        told(beyond ? Grade::do_not_tow : Grade::serviceable,
             fact(beyond ? FactId::beyond : FactId::within, m.amount(), Bound::at_most, *make_amount("1/16", "[in_i]")),
             {RestsOn::law, "49 CFR 393.47(f)", Evidence::partly}));
}

}  // namespace

void air_kind(const Scene& scene, const Ask& ask, Replies& out) {
    for (const Sitting& s : scene.sittings)
        if (const Chamber* c = chamber_in(scene, s, ask.place)) {
            Reply r = reply_at(s, c->at, c->by, c->id.uuid);
            const bool read = c->family != ChamberFamily::not_known && !c->size.empty();
            r.verdicts.push_back(
                read ? told(Grade::serviceable, fact(FactId::plate_text, c->size), source_of(ask.point->law))
                     : open(fact(FactId::chamber_not_read)));
            if (c->stroke == StrokeClass::not_read) r.notes.push_back(fact(FactId::stroke_class_not_read));
            out.push_back(std::move(r));
        }
}

void air_stroke(const Scene& scene, const Ask& ask, Replies& out) {
    const Axle* axle = scene.axle(ask.place);
    const bool wedge = axle != nullptr && axle->brake == BrakeKind::air_wedge;
    const std::string_view name = wedge ? what::wedge_movement : what::push_rod_stroke;
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, name, ask.place, out);
        Measures list = measures(s, name, ask.place);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r)) {
            const Measure& most = **std::max_element(list.begin(), list.end(), thinner);
            wedge ? judge_wedge(most, r) : judge_stroke(scene, ask, s, most, r);
        }
        out.push_back(std::move(r));
    }
}

void air_pair(const Scene& scene, const Ask& ask, Replies& out) {
    const Chamber* sides[2] = {};
    bool accepted = scene.current().accepted;
    for (const Sitting& s : scene.sittings)
        for (const Side side : {Side::left, Side::right})
            if (scene.usable(s))
                if (const Chamber* c = chamber_in(scene, s, Place::corner(ask.place.axle, side))) {
                    sides[static_cast<std::size_t>(side)] = c;
                    accepted = accepted && s.accepted;
                }
    if (sides[0] == nullptr || sides[1] == nullptr || sides[0]->size.empty() || sides[1]->size.empty()) return;
    Reply r = reply_from(scene, {});
    r.accepted = r.accepted && accepted;
    r.at = std::max(sides[0]->at, sides[1]->at);
    r.by = sides[0]->by;
    const AnswerSource law = source_of(ask.point->law);
    const auto &a = sides[0]->slack_length, &b = sides[1]->slack_length;
    if (sides[0]->size != sides[1]->size || sides[0]->family != sides[1]->family)
        r.verdicts.push_back(told(Grade::repair, fact(FactId::chambers_differ, sides[0]->size, sides[1]->size), law));
    if (a && b && std::abs(a->si() - b->si()) > 0.002)
        r.verdicts.push_back(told(Grade::repair, fact(FactId::slacks_differ, *a, *b), law));
    if (!a || !b) r.verdicts.push_back(open(fact(FactId::slack_not_measured)));
    if (r.verdicts.empty()) r.verdicts.push_back(told(Grade::serviceable, fact(FactId::chambers_alike), law));
    out.push_back(std::move(r));
}

void air_lining(const Scene& scene, const Ask& ask, Replies& out) {
    const Axle* axle = scene.axle(ask.place);
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, what::air_lining, ask.place, out);
        Measures list = measures(s, what::air_lining, ask.place);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r)) {
            const Measure& thin = **std::min_element(list.begin(), list.end(), thinner);
            const bool known = axle != nullptr && axle->brake != BrakeKind::air_untyped;
            const double least = axle != nullptr && axle->brake == BrakeKind::air_disc ? kDiscLining : kDrumLining;
            const Amount shown = *make_amount(least == kDiscLining ? "1/8" : "1/4", "[in_i]");
            const AnswerSource law = source_of(ask.point->law);
            const bool beyond = thin.si < least * (1 - 1e-9), near = thin.si - thin.step_si < least * (1 - 1e-9);
            if (!known)
                r.verdicts.push_back(open(fact(FactId::axle_not_known, Entered("kind of air brake"))));
            else
                r.verdicts.push_back(told(beyond ? Grade::do_not_tow
                                          : near ? Grade::watch
                                                 : Grade::serviceable,
                                          fact(beyond ? FactId::beyond
                                               : near ? FactId::close
                                                      : FactId::within,
                                               thin.amount(), Bound::at_least, shown),
                                          law));
            if (list.size() < 2) r.verdicts.push_back(open(few(list.size(), 2)));
        }
        out.push_back(std::move(r));
    }
    doubt_regrown(scene, ask, what::air_lining, Work::linings_renewed, out);
}

void air_leak(const Scene& scene, const Ask& ask, Replies& out) {
    const AnswerSource rate{RestsOn::practice, "3 psi released and 4 psi applied in a minute, a combination",
                            Evidence::partly};
    for (const Sitting& s : scene.sittings) {
        Measures list = measures(s, what::air_drop, ask.place);
        if (list.empty()) list = measures_anywhere(s, what::air_drop);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r))
            for (const Measure* m : list) {
                const Grade grade = bands::air_leak(m->si / kPsi, m->where.find("applied") != std::string_view::npos);
                r.verdicts.push_back(told(grade, fact(FactId::air_drop, m->amount(), Entered(m->where)),
                                          grade == Grade::repair ? own_band() : rate));
            }
        if (list.size() < 2 && !r.absent) r.verdicts.push_back(open(few(list.size(), 2)));
        out.push_back(std::move(r));
    }
}

}  // namespace cotter::answering
