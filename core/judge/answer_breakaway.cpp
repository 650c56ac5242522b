// Breakaway: the pull, fifteen minutes by the clock, the battery.
//
// Which wheels must hold (49 CFR 393.43(d)): on a trailer with fewer than three axles every wheel with a required
// brake; on one with three or more those that the device acts on, and it acts on at least one axle.
#include <algorithm>

#include "core/base/decimal.h"
#include "core/judge/answer_rules.h"
#include "core/judge/gross_bands.h"

namespace cotter::answering {

namespace {

constexpr std::int64_t kFifteen = 15 * 60;
const AnswerSource kLaw{RestsOn::law, "49 CFR 393.43(d)", Evidence::read};

const WheelHeld* wheel_in(const BreakawayTest& test, const Place& corner) {
    for (const WheelHeld& w : test.wheels)
        if (corner_only(w.place) == corner) return &w;
    return nullptr;
}

bool acts_on_one_axle(const Scene& scene, const BreakawayTest& test) {
    for (int axle = 1; axle <= static_cast<int>(scene.trailer->axles.size()); ++axle) {
        const WheelHeld* left = wheel_in(test, Place::corner(axle, Side::left));
        const WheelHeld* right = wheel_in(test, Place::corner(axle, Side::right));
        if (left != nullptr && right != nullptr && left->at_start == Held::holds && right->at_start == Held::holds)
            return true;
    }
    return false;
}

// Must this wheel hold in this test? With three axles or more a wheel that turns may be one it does not act on.
bool must_hold(const Scene& scene, const BreakawayTest& test, const Place& corner) {
    if (scene.trailer->axles.size() < 3) return true;
    const Place mate = Place::corner(corner.axle, corner.side == Side::left ? Side::right : Side::left);
    const WheelHeld* other = wheel_in(test, mate);
    return !acts_on_one_axle(scene, test) || (other != nullptr && other->at_start == Held::holds);
}

void judge_pull(const Scene& scene, const BreakawayTest& test, const Place& corner, Reply& r) {
    const WheelHeld* wheel = wheel_in(test, corner);
    const Held held = wheel != nullptr ? wheel->at_start : Held::not_tried;
    const Held back = wheel != nullptr ? wheel->pin_back : Held::not_tried;
    if (held == Held::not_tried)
        r.verdicts.push_back(open(fact(FactId::wheel_not_tried)));
    else if (held == Held::turns && must_hold(scene, test, corner))
        r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::pull_turns), kLaw));
    else if (held == Held::turns)
        r.verdicts.push_back(told(Grade::serviceable, fact(FactId::pull_not_acted_on), kLaw));
    else
        r.verdicts.push_back(told(Grade::serviceable, fact(FactId::pull_holds), kLaw));
    if (!test.ended) {
        r.verdicts.push_back(open(fact(FactId::test_running)));
        return;
    }
    if (!test.pin_in_again) r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::pin_left_out), kLaw));
    if (back == Held::holds) r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::wheel_stays_braked), kLaw));
    if (back == Held::not_tried && held != Held::not_tried)
        r.verdicts.push_back(open(fact(FactId::wheel_not_tried_back)));
}

void judge_end(const Scene& scene, const BreakawayTest& test, Reply& r) {
    std::int64_t axles = 0;
    for (const Place& corner : scene.trailer->corners()) {
        const Axle* axle = scene.axle(corner);
        if (axle == nullptr || !is_braked(axle->brake)) continue;
        const WheelHeld* wheel = wheel_in(test, corner);
        const Held start = wheel != nullptr ? wheel->at_start : Held::not_tried;
        const Held end = wheel != nullptr ? wheel->at_end : Held::not_tried;
        if (start == Held::turns && !must_hold(scene, test, corner)) continue;
        axles += corner.side == Side::left ? 1 : 0;
        if (end == Held::turns) r.verdicts.push_back(told(Grade::do_not_tow, fact(FactId::wheel_let_go, corner), kLaw));
        if (end == Held::not_tried) r.verdicts.push_back(open(fact(FactId::wheel_not_tried_at_end, corner)));
    }
    const std::int64_t held = test.ended->unix_s - test.started.unix_s;
    if (held < kFifteen)
        r.verdicts.push_back(open(fact(FactId::test_stopped, figure(static_cast<double>(held), "min", 0))));
    if (r.verdicts.empty()) {
        r.verdicts.push_back(told(Grade::serviceable, fact(FactId::held_fifteen), kLaw));
        if (axles < static_cast<std::int64_t>(scene.trailer->axles.size()))
            r.notes.push_back(fact(FactId::held_axles, axles, static_cast<std::int64_t>(scene.trailer->axles.size())));
    }
}

template <class F>
void each_test(const Scene& scene, F f) {
    if (scene.trailer == nullptr) return;
    for (const Sitting& s : scene.sittings)
        for (const BreakawayTest& test : s.job->all<BreakawayTest>())
            if (test.at.unix_s <= scene.question->as_of.unix_s + 86400) f(s, test);
}

bool under_load(std::string_view where) {
    return where.find("min") != std::string_view::npos;
}

// 15 minutes held with every wheel outrank what the battery reads at rest: it then warns.
Verdict of_volts(const Measure& m) {
    const bool load = under_load(m.where);
    const Grade grade = load ? bands::battery_load(m.si) : bands::battery_rest(m.si);
    return told(grade, fact(load ? FactId::battery_loaded : FactId::battery_resting, m.amount(), Entered(m.where)),
                grade == Grade::do_not_tow ? own_band() : practice("12.6 V is full, 12.2 V half, of 12 V lead-acid"));
}

}  // namespace

void away_pull(const Scene& scene, const Ask& ask, Replies& out) {
    each_test(scene, [&](const Sitting& s, const BreakawayTest& test) {
        Reply r = reply_at(s, test.at, test.by, test.id.uuid);
        judge_pull(scene, test, ask.place, r);
        out.push_back(std::move(r));
    });
}

void away_15(const Scene& scene, const Ask&, Replies& out) {
    each_test(scene, [&](const Sitting& s, const BreakawayTest& test) {
        Reply r = reply_at(s, test.at, test.by, test.id.uuid);
        if (!test.ended)
            r.verdicts.push_back(open(fact(FactId::test_running)));
        else
            judge_end(scene, test, r);
        out.push_back(std::move(r));
    });
}

void away_batt(const Scene& scene, const Ask&, Replies& out) {
    for (const Sitting& s : scene.sittings) {
        Measures list = measures_anywhere(s, what::battery_volts);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r))
            for (const Measure* m : list) r.verdicts.push_back(of_volts(*m));
        out.push_back(std::move(r));
    }
}

}  // namespace cotter::answering
