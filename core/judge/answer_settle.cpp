// What all replies to a point at a place come to.
//
// Method: in the order in which they were given, each side of an answer (a look, a measure) by itself. A bad reply
// stands until a good one of the same side replaces it, given by somebody accepted, who could see as far as the point
// asks and, where a mechanic gave the bad one, by a mechanic. What cannot be told replaces what was good, and closes
// nothing bad. Of good replies the newest that has not ended counts.
#include <algorithm>
#include <tuple>

#include "core/judge/answering.h"

namespace cotter::answering {

namespace {

int rank(const Reply& r) {
    return r.sitting->owner ? 0 : 1;
}

bool may_permit(const Ask& ask, const Reply& r) {
    return r.accepted && r.reach >= ask.point->reach;
}

bool given_before(const Reply* a, const Reply* b) {
    const auto key = [](const Reply& r) { return std::tuple(r.sitting->index, r.stage, r.at); };
    return key(*a) < key(*b);
}

using Those = std::vector<const Reply*>;

struct OneSide {
    Those standing;                  // bad, and not replaced
    Those good;                      // since the last that could not be told
    const Reply* unclear = nullptr;  // the newest reply cannot be told
    const Reply* absent = nullptr;
    const Reply* barred = nullptr;  // would be good, but may not permit
};

void take(const Ask& ask, const Reply& r, OneSide& side) {
    if (r.absent) {
        side.absent = &r;
        return;
    }
    const bool permits = may_permit(ask, r);
    if (is_bad(r)) {
        if (permits) {
            std::erase_if(side.standing, [&](const Reply* s) { return rank(*s) <= rank(r) && !s->any_facet; });
            side.good.clear();
            side.unclear = nullptr;
        }
        side.standing.push_back(&r);
        return;
    }
    if (!permits) {
        if (is_good(r)) side.barred = &r;
        return;
    }
    if (!is_good(r)) {
        side.unclear = &r;
        side.good.clear();
        return;
    }
    side.unclear = nullptr;
    side.good.push_back(&r);
    // A finding is closed by a later visit; in its own visit its outcome says whether it is.
    std::erase_if(side.standing,
                  [&](const Reply* s) { return rank(*s) <= rank(r) && (!s->any_facet || s->sitting != r.sitting); });
}

struct Counting {
    const Reply* reply = nullptr;
    std::optional<Ending> ending;  // of the reply that counts: in the future; else of the newest that has ended
    const Reply* ended = nullptr;
};

Counting newest_counting(const Scene& scene, const Ask& ask, const Those& good) {
    Counting out;
    for (auto r = good.rbegin(); r != good.rend(); ++r) {
        const auto ending = ending_of(scene, ask, **r);
        if (!ending || ending->at > scene.question->as_of) {
            out.reply = *r;
            out.ending = ending;
            return out;
        }
        if (out.ended == nullptr) {
            out.ended = *r;
            out.ending = ending;
        }
    }
    return out;
}

void fill(PointAnswer& a, const Reply& r) {
    const Verdict& v = governing(r);
    a.fact = v.fact;
    a.steps = v.steps;
    a.source = v.source;
    a.grade = v.grade.value_or(Grade::serviceable);
    a.at = r.at;
    a.by = r.by;
    a.reach = r.reach;
    a.accepted = r.accepted;
    a.record = r.record;
    a.visit = r.sitting->job->id();
    a.also = r.notes;
    for (const Verdict& other : r.verdicts)
        if (&other != &v && other.grade && *other.grade > Grade::serviceable) a.also.push_back(other.fact);
}

// Why there is no good answer, when nothing bad stands.
void tell_open(const OneSide& side, const Counting& counting, PointAnswer& a) {
    a.known = false;
    if (side.unclear != nullptr) {
        fill(a, *side.unclear);
    } else if (counting.ended != nullptr) {
        fill(a, *counting.ended);
        a.fact = counting.ending->because;
        a.also.clear();
        a.ran_out = counting.ending->by_use;
    } else if (side.absent != nullptr) {
        fill(a, *side.absent);
    } else if (side.barred != nullptr) {
        fill(a, *side.barred);
        a.fact = fact(side.barred->accepted ? FactId::needs_more_reach : FactId::signer_not_accepted);
        a.also.clear();
    }
    a.grade = Grade::serviceable;
}

PointAnswer of_side(const Scene& scene, const Ask& ask, const OneSide& side) {
    PointAnswer a;
    a.point = ask.point->id;
    a.place = ask.place;
    if (!side.standing.empty()) {
        fill(a, **std::max_element(side.standing.begin(), side.standing.end(),
                                   [](const Reply* x, const Reply* y) { return *grade_of(*x) < *grade_of(*y); }));
        a.known = true;
        return a;
    }
    const Counting counting = newest_counting(scene, ask, side.good);
    if (counting.reply == nullptr) {
        tell_open(side, counting, a);
        const Keeps keeps = counting.ended != nullptr ? keeps_of(ask, *counting.ended) : ask.point->keeps;
        a.each_trip = keeps == Keeps::trip || keeps == Keeps::visit;
        return a;
    }
    fill(a, *counting.reply);
    a.known = true;
    if (counting.ending) a.until = counting.ending->at;
    return a;
}

bool bad(const PointAnswer& a) {
    return a.known && a.grade >= Grade::repair;
}

// Two sides of one point: the worse one when either is bad; what it takes otherwise.
PointAnswer of_both(PointAnswer look, PointAnswer measure, Takes needs, const OneSide& looked,
                    const OneSide& measured) {
    if (bad(look) || bad(measure)) {
        const bool by_look = bad(look) && (!bad(measure) || look.grade >= measure.grade);
        PointAnswer out = by_look ? std::move(look) : measure;
        if (by_look && bad(measure)) out.also.push_back(measure.fact);
        return out;
    }
    if (needs == Takes::look) {
        if (look.known && measure.known && measure.grade > look.grade) look.also.push_back(measure.fact);
        return look;
    }
    if (needs == Takes::measure) return measure;
    if (needs == Takes::either && look.known != measure.known) {
        // The other side is not known: that counts when somebody said so later.
        const OneSide& other = look.known ? measured : looked;
        PointAnswer& known = look.known ? look : measure;
        PointAnswer& unknown = look.known ? measure : look;
        return other.unclear != nullptr && other.unclear->at > known.at ? unknown : known;
    }
    if (look.known != measure.known) return look.known ? measure : look;
    if (!look.known) return look.fact.id == FactId::not_asked ? measure : look;
    PointAnswer& worse = look.grade > measure.grade ? look : measure;
    PointAnswer& other = &worse == &look ? measure : look;
    if (other.grade == Grade::watch) worse.also.push_back(other.fact);
    if (needs == Takes::both && other.until && (!worse.until || *other.until < *worse.until)) worse.until = other.until;
    return worse;
}

// What is bad at a point that either side answers: a later visit's good answer of any side closes it. Not of a hub's
// oil, where a level says nothing of its color.
bool closed_elsewhere(const Ask& ask, const Reply& bad, const Replies& replies) {
    if (ask.point->id == PointId::hub_oil) return false;
    return std::any_of(replies.begin(), replies.end(), [&](const Reply& r) {
        return r.sitting->index > bad.sitting->index && !r.absent && is_good(r) && may_permit(ask, r) &&
               rank(bad) <= rank(r);
    });
}

}  // namespace

PointAnswer settle(const Scene& scene, const Ask& ask, const Replies& replies) {
    Those in_order;
    for (const Reply& r : replies) in_order.push_back(&r);
    std::stable_sort(in_order.begin(), in_order.end(), given_before);
    OneSide look, measure;
    const Takes needs = takes(scene, ask.point->id);
    for (const Reply* r : in_order) {
        if (needs == Takes::either && is_bad(*r) && closed_elsewhere(ask, *r, replies)) continue;
        if (r->any_facet)
            take(ask, *r, needs == Takes::look || needs == Takes::both ? look : measure);
        else
            take(ask, *r, r->facet == Facet::look ? look : measure);
    }
    PointAnswer out = of_both(of_side(scene, ask, look), of_side(scene, ask, measure), needs, look, measure);
    out.essential = ask.importance == Importance::essential;
    return out;
}

}  // namespace cotter::answering
