// The whole answer: asks, replies, what they come to, and the outcome.
#include "core/judge/answer.h"

#include <algorithm>

#include "core/judge/answer_rules.h"

namespace cotter {

namespace answering {

namespace {

Applies either(Applies a, Applies b) {
    if (a == Applies::yes || b == Applies::yes) return Applies::yes;
    return a == Applies::not_known || b == Applies::not_known ? Applies::not_known : Applies::no;
}

bool after_work(const TradePoint& p) {
    return p.importance == Importance::essential_after_work || p.id == PointId::wheel_seat;
}

// Work of an earlier visit asks for its answers until they are given; as it was found, this visit's had not begun.
Ask ask_at(const Scene& scene, const TradePoint& p, const Place& place) {
    Layout layout = scene.layout;
    if (after_work(p) && scene.question->state == State::found) layout.job = nullptr;
    Ask ask{&p, place, importance_at(p, layout, place), p.applies(layout, place)};
    if (!after_work(p)) return ask;
    for (const Sitting& s : scene.sittings) {
        if (s.current || scene.trailer == nullptr) continue;
        const Layout then{scene.trailer, s.job->only<Visit>(), s.job};
        ask.applies = either(ask.applies, p.applies(then, place));
        if (p.essential_when != nullptr && p.essential_when(then, place) != Applies::no)
            ask.importance = Importance::essential;
    }
    return ask;
}

std::vector<Place> every_place(const Scene& scene, const TradePoint& p) {
    TradePoint always = p;
    always.applies = [](const Layout&, const Place&) { return Applies::yes; };
    return places_of(always, scene.layout);
}

std::vector<Answered> asks_of(const Scene& scene) {
    std::vector<Answered> out;
    for (const TradePoint& p : all_points())
        for (const Place& place : every_place(scene, p)) {
            Ask ask = ask_at(scene, p, place);
            if (ask.applies != Applies::no) out.push_back({ask, {}});
        }
    return out;
}

// Sums are made twice when there are records of unaccepted signers: with them, they may only forbid.
void reply_late(Scene& scene, Answered& a) {
    const Rule rule = rule_of(a.ask.point->id);
    rule(scene, a.ask, a.replies);
    const bool all =
        std::all_of(scene.sittings.begin(), scene.sittings.end(), [](const Sitting& s) { return s.accepted; });
    if (all) return;
    scene.trusting = false;
    rule(scene, a.ask, a.replies);
    scene.trusting = true;
}

void reply_all(Scene& scene, std::vector<Answered>& all) {
    for (Answered& a : all) {
        looks_of(scene, a.ask, a.replies);
        marks_of(scene, a.ask, a.replies);
        const Rule rule = rule_of(a.ask.point->id);
        if (computed_late(a.ask.point->id))
            reply_late(scene, a);
        else if (rule != nullptr)
            rule(scene, a.ask, a.replies);
    }
}

PointAnswer outside_table(const FoundReply& found) {
    const Verdict& v = found.reply.verdicts[0];
    PointAnswer a;
    a.place = found.place;
    a.grade = *v.grade;
    a.known = true;
    a.fact = v.fact;
    a.source = v.source;
    a.at = found.reply.at;
    a.by = found.reply.by;
    a.reach = found.reply.reach;
    a.accepted = found.reply.accepted;
    a.record = found.reply.record;
    a.visit = found.reply.sitting->job->id();
    return a;
}

// Work's answers that were given once and ran out by time alone are no longer asked for.
void let_go(const Ask& ask, PointAnswer& a) {
    if (ask.point->importance == Importance::essential_after_work && !a.known && a.ran_out) a.essential = false;
}

void settle_all(const Scene& scene, std::vector<Answered>& all, TowAnswer& out) {
    std::vector<FoundReply> found = findings_of(scene, all);
    std::vector<PointAnswer> others;
    for (const FoundReply& f : found) {
        const auto home = std::find_if(all.begin(), all.end(), [&](const Answered& a) {
            return f.point && a.ask.point->id == *f.point && a.ask.place == f.place;
        });
        if (home == all.end() || f.watch_only)
            others.push_back(outside_table(f));
        else
            home->replies.push_back(f.reply);
        if (home != all.end() && f.watch_only) others.back().point = f.point;
    }
    for (const Answered& a : all) {
        out.points.push_back(settle(scene, a.ask, a.replies));
        PointAnswer& answer = out.points.back();
        if (!answer.known && a.replies.empty() && a.ask.applies == Applies::not_known)
            answer.fact = fact(FactId::applies_not_known);
        let_go(a.ask, answer);
    }
    out.points.insert(out.points.end(), others.begin(), others.end());
}

PointAnswer layout_missing(const Scene& scene) {
    PointAnswer a;
    a.point = PointId::plate_axles;
    a.place = Place::at(Station::trailer);
    a.essential = true;
    a.fact = fact(scene.trailer == nullptr ? FactId::no_trailer : FactId::axles_not_entered);
    return a;
}

}  // namespace

}  // namespace answering

const PointAnswer* TowAnswer::reason() const {
    if (!worst.empty()) return &points[worst.front()];
    return open.empty() ? nullptr : &points[open.front()];
}

TowAnswer answer_towing(const TowQuestion& question) {
    answering::Scene scene = answering::scene_of(question);
    TowAnswer out;
    out.as_of = question.as_of;
    if (scene.trailer == nullptr || scene.trailer->axles.empty())
        out.points.push_back(answering::layout_missing(scene));
    std::vector<answering::Answered> all = answering::asks_of(scene);
    answering::reply_all(scene, all);
    answering::settle_all(scene, all, out);
    answering::conclude(scene, out);
    return out;
}

TowAnswer answer_towing(const Job& job, std::span<const EarlierVisit> earlier, std::span<const Limit> limits,
                        const Instant& as_of, State state) {
    return answer_towing(TowQuestion{job, earlier, limits, as_of, state});
}

}  // namespace cotter
