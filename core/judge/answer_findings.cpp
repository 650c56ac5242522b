// Findings as people graded them. An open one stands; a repaired one leaves 'now' only when what the work opened again
// has a later good answer. Items of a periodic inspection that are not OK stand like findings that call for repair.
#include <algorithm>

#include "core/base/text.h"
#include "core/judge/answering.h"
#include "core/judge/finding_point.h"

namespace cotter::answering {

namespace {

bool later_than_finding(const Reply& r, const Sitting& sitting, const Finding& f) {
    if (r.sitting->index != sitting.index) return r.sitting->index > sitting.index;
    return r.staged ? r.stage == Stage::after : r.at > f.at;
}

bool answered_since(const Answered& a, const Sitting& sitting, const Finding& f) {
    return std::any_of(a.replies.begin(), a.replies.end(), [&](const Reply& r) {
        return !r.absent && r.accepted && r.reach >= a.ask.point->reach && is_good(r) &&
               later_than_finding(r, sitting, f);
    });
}

// What a look or a test must answer: sums follow by themselves, and hubs are hot only once it was driven.
bool asked_again(const Ask& ask) {
    if (computed_late(ask.point->id)) return false;
    return ask.point->id != PointId::hub_heat || ask.importance == Importance::essential;
}

struct Reopened {
    bool any = false;
    const Answered* missing = nullptr;
};

Reopened reopened_by(const Finding& f, const Sitting& sitting, const std::vector<Answered>& answered) {
    Reopened out;
    for (const Work work : works_shown_by(f)) {
        const Place where = work == Work::hydraulics_opened ? Place::at(Station::trailer) : corner_only(f.place);
        for (const Answered& a : answered) {
            if (!opens_again(work, a.ask.point->id) || !concerns(where, a.ask.place, a.ask.point->spot)) continue;
            if (!asked_again(a.ask)) continue;
            out.any = true;
            if (out.missing == nullptr && !answered_since(a, sitting, f)) out.missing = &a;
        }
    }
    return out;
}

// The answer that the finding belongs to; nullptr: none on this trailer.
const Answered* home_of(const Finding& f, const std::vector<Answered>& answered) {
    for (const PointId id : points_of_finding(f.component, f.defect)) {
        const Answered* near = nullptr;
        for (const Answered& a : answered) {
            if (a.ask.point->id != id) continue;
            if (a.ask.place == f.place) return &a;
            const bool alone = a.ask.point->spot != Spot::corner && a.ask.point->spot != Spot::wheel &&
                               a.ask.point->spot != Spot::axle;
            if (near == nullptr && (alone || corner_only(a.ask.place) == corner_only(f.place))) near = &a;
        }
        if (near != nullptr) return near;
    }
    return nullptr;
}

Fact says(const Finding& f) {
    if (f.outcome == Outcome::deferred || f.outcome == Outcome::declined)
        return fact(FactId::finding_left, f.component, f.defect, f.outcome);
    return fact(FactId::finding, f.component, f.defect);
}

FoundReply stands(const Finding& f, const Sitting& sitting, const Answered* home, Fact what) {
    FoundReply out;
    if (home != nullptr) out.point = home->ask.point->id;
    out.place = home != nullptr ? home->ask.place : f.place;
    out.reply = reply_at(sitting, f.at, f.by, f.id.uuid);
    out.reply.any_facet = true;
    out.reply.finding = f.id;
    out.reply.verdicts.push_back(told(f.grade, std::move(what), {RestsOn::person, f.by, Evidence::read}));
    out.watch_only = f.grade < Grade::repair;
    return out;
}

// The look that made a finding goes with it.
void drop_looks(const Finding& f, const Sitting& sitting, std::vector<Answered>& answered) {
    for (Answered& a : answered)
        std::erase_if(a.replies, [&](const Reply& r) {
            return r.sitting == &sitting && r.finding == f.id && r.stage == Stage::before;
        });
}

// A finding outside the table is closed by a later word on the same component at the same place.
bool said_again(const Scene& scene, const Sitting& sitting, const Finding& f) {
    for (const Sitting& s : scene.sittings) {
        if (s.index <= sitting.index || !s.accepted || (s.owner && !sitting.owner)) continue;
        for (const Finding& other : s.job->all<Finding>())
            if (other.place == f.place && ascii_lower(other.component) == ascii_lower(f.component)) return true;
    }
    return false;
}

void take_finding(const Scene& scene, const Sitting& sitting, const Finding& f, std::vector<Answered>& answered,
                  std::vector<FoundReply>& out) {
    constexpr std::int64_t kDay = 86400;
    if (f.grade == Grade::serviceable || f.at.unix_s > scene.question->as_of.unix_s + kDay) return;
    const Answered* home = home_of(f, answered);
    const bool as_found = sitting.current && scene.question->state == State::found;
    if (home == nullptr && said_again(scene, sitting, f)) return;
    if (f.outcome != Outcome::repaired || as_found) {
        out.push_back(stands(f, sitting, home, says(f)));
        return;
    }
    const Reopened again = reopened_by(f, sitting, answered);
    const Answered* missing = again.missing;
    if (!again.any && home != nullptr && asked_again(home->ask) && !answered_since(*home, sitting, f)) missing = home;
    if (missing == nullptr || f.grade < Grade::repair) {
        drop_looks(f, sitting, answered);
        return;
    }
    out.push_back(stands(f, sitting, home,
                         missing == home ? fact(FactId::repaired_not_seen, f.component, f.defect)
                                         : fact(FactId::repaired_not_proved, f.component, f.defect,
                                                missing->ask.point->id, missing->ask.place)));
}

void take_inspection(const Sitting& sitting, std::vector<FoundReply>& out) {
    for (const InspectionAnswer& a : sitting.job->all<InspectionAnswer>()) {
        std::erase_if(out, [&](const FoundReply& r) {
            return r.reply.verdicts[0].fact.id == FactId::inspection_item &&
                   r.reply.verdicts[0].fact.args[0] == FactArg(Entered(a.item)) && sitting.accepted;
        });
        if (a.answer != Answer::not_ok) continue;
        FoundReply r;
        r.place = Place::at(Station::trailer);
        r.reply = reply_at(sitting, a.at, a.by, a.id.uuid);
        r.reply.verdicts.push_back(told(Grade::repair, fact(FactId::inspection_item, a.item, a.remark),
                                        {RestsOn::law, "49 CFR part 396, Appendix A, " + a.item, Evidence::partly}));
        out.push_back(std::move(r));
    }
}

}  // namespace

std::vector<FoundReply> findings_of(const Scene& scene, std::vector<Answered>& answered) {
    std::vector<FoundReply> out;
    for (const Sitting& s : scene.sittings) {
        for (const Finding& f : s.job->all<Finding>()) take_finding(scene, s, f, answered, out);
        take_inspection(s, out);
    }
    return out;
}

}  // namespace cotter::answering
