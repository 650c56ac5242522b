// An owner's look: what it can answer, when a mechanic last opened each corner, and what may be said of both.
//
// Older packets hold an owner's walk as steps that were marked done. Such a mark counts as a look where its step asks
// about one point and nothing else; what it shares with others, or what takes a measure, stays not answered.
#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/judge/answering.h"

namespace cotter::answering {

namespace {

struct WalkStep {
    std::string_view step;
    PointId point;
    std::string_view component;  // of the finding that a bad answer made
};
constexpr std::array kWalk{
    WalkStep{"O1", PointId::tire_face, "tyre"},        WalkStep{"O3", PointId::wheel_nuts, "wheel nuts"},
    WalkStep{"O4", PointId::hub_leak, "hub cap"},      WalkStep{"O5", PointId::hub_oil, "hub oil"},
    WalkStep{"P4", PointId::act_level, "brake fluid"}, WalkStep{"P6", PointId::load_safe, "load"},
    WalkStep{"P7", PointId::brk_drive, "brakes"},
};

bool found_bad(const Job& job, const StepMark& mark, std::string_view component) {
    const auto& all = job.all<Finding>();
    return std::any_of(all.begin(), all.end(), [&](const Finding& f) {
        return f.place == mark.place && ascii_lower(f.component) == component;
    });
}

}  // namespace

void marks_of(const Scene& scene, const Ask& ask, Replies& out) {
    const auto step =
        std::find_if(kWalk.begin(), kWalk.end(), [&](const WalkStep& w) { return w.point == ask.point->id; });
    if (step == kWalk.end()) return;
    for (const Sitting& s : scene.sittings) {
        if (!s.job->all<Look>().empty()) continue;
        for (const StepMark& m : s.job->all<StepMark>()) {
            const bool here = ask.place.is_corner() ? m.place == ask.place : !m.place.is_corner();
            if (m.step != step->step || !m.procedure.starts_with("owner") || m.word != StepWord::done || !here)
                continue;
            if (m.answer.value_or(StepAnswer::looks_good) != StepAnswer::looks_good) continue;
            if (found_bad(*s.job, m, step->component)) continue;
            Reply r = reply_at(s, m.at, m.by, m.id.uuid);
            r.facet = Facet::look;
            r.reach = Reach::outside;
            r.verdicts.push_back(told(Grade::serviceable, fact(FactId::looks_good), source_of(ask.point->law)));
            out.push_back(std::move(r));
        }
    }
}

namespace {

// When a corner was last opened: the newest visit of a mechanic that answered what takes the wheel off there.
std::optional<Date> opened_at(const Scene& scene, const Place& corner) {
    std::optional<Date> out;
    for (const Sitting& s : scene.sittings) {
        if (s.owner || !s.accepted) continue;
        const auto take = [&](const Instant& at) { out = std::max(out.value_or(at.local_date()), at.local_date()); };
        for (const LookAt& l : s.looks)
            if (l.look->reach == Reach::wheel_off && corner_only(l.look->place) == corner) take(l.look->at);
        for (const Measure& m : s.values) {
            const TradePoint* p = point_of_reading(m.spec->name);
            if (p != nullptr && p->reach == Reach::wheel_off && corner_only(m.place) == corner) take(m.reading->at);
        }
    }
    for (const Done& d : scene.works) {
        const Sitting& s = scene.sittings[d.sitting];
        if (d.work == Work::wheel_off && d.place == corner && s.accepted && !s.owner)
            out = std::max(out.value_or(d.at.local_date()), d.at.local_date());
    }
    return out;
}

}  // namespace

std::optional<Date> last_opened(const Scene& scene) {
    std::optional<Date> oldest;
    if (scene.trailer == nullptr) return oldest;
    for (const Place& corner : scene.trailer->corners()) {
        const auto at = opened_at(scene, corner);
        if (!at) return std::nullopt;
        oldest = std::min(oldest.value_or(*at), *at);
    }
    return oldest;
}

namespace {

bool owners_point(const PointAnswer& a) {
    return !a.point || point(*a.point).reach == Reach::outside;
}

Fact outside_sentence(const TowAnswer& out) {
    return out.opened ? fact(FactId::from_outside, *out.opened) : fact(FactId::from_outside_never);
}

}  // namespace

void owners_outcome(const Scene& scene, TowAnswer& out) {
    const bool air = scene.trailer != nullptr && std::any_of(scene.trailer->axles.begin(), scene.trailer->axles.end(),
                                                             [](const Axle& a) { return is_air(a.brake); });
    const bool outside_done =
        std::none_of(out.open.begin(), out.open.end(), [&](std::size_t i) { return owners_point(out.points[i]); });
    if (air) {
        out.outcome = TowOutcome::cannot_tell;
        out.first = fact(FactId::owner_air);
    } else if (out.outcome == TowOutcome::nothing_against) {
        out.outcome = TowOutcome::nothing_from_outside;
        out.first = outside_sentence(out);
    } else if (outside_done) {
        out.first = outside_sentence(out);
    }
}

}  // namespace cotter::answering
