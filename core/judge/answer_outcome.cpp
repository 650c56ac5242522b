// The outcome: the first of five that fits, and the owner's look, which can never say more than 'from outside'.
#include <algorithm>

#include "core/judge/answering.h"

namespace cotter::answering {

namespace {

bool standing(const PointAnswer& a, Grade grade) {
    return a.known && a.grade == grade;
}

Danger danger_of(const PointAnswer& a) {
    return a.point ? point(*a.point).danger : Danger::rest;
}

void sort_out(TowAnswer& out) {
    const auto all = [&](auto which) {
        std::vector<std::size_t> list;
        for (std::size_t i = 0; i < out.points.size(); ++i)
            if (which(out.points[i])) list.push_back(i);
        return list;
    };
    out.worst = all([](const PointAnswer& a) { return standing(a, Grade::do_not_tow); });
    if (out.worst.empty()) out.worst = all([](const PointAnswer& a) { return standing(a, Grade::repair); });
    out.open = all([](const PointAnswer& a) { return !a.known && a.essential; });
    out.wanted = all([](const PointAnswer& a) {
        return !a.known && !a.essential && a.point && point(*a.point).importance != Importance::optional;
    });
    out.watch = all([](const PointAnswer& a) { return standing(a, Grade::watch); });
    const auto by_danger = [&](std::size_t a, std::size_t b) {
        return danger_of(out.points[a]) < danger_of(out.points[b]);
    };
    std::stable_sort(out.open.begin(), out.open.end(), by_danger);
    std::stable_sort(out.worst.begin(), out.worst.end(), by_danger);
    out.essential_open = out.open.size();
}

void count(TowAnswer& out) {
    for (const PointAnswer& a : out.points) {
        if (!a.point || (!a.essential && point(*a.point).importance == Importance::optional)) continue;
        if (a.source.rests_on == RestsOn::person && a.grade == Grade::watch) continue;  // beside the point's own answer
        ++out.of;
        out.looked_at += a.known ? 1 : 0;
    }
}

void ends_first(TowAnswer& out) {
    for (const PointAnswer& a : out.points)
        if (a.known && a.until && *a.until > out.as_of)
            if (!out.runs_out || *a.until < *out.runs_out) out.runs_out = *a.until;
}

// Only what keeps for a trip or a visit has run out: the check before this trip is due, nothing else.
bool only_trip_due(const TowAnswer& out) {
    return !out.open.empty() && std::all_of(out.open.begin(), out.open.end(), [&](std::size_t i) {
        return out.points[i].ran_out && out.points[i].each_trip;
    });
}

}  // namespace

void conclude(const Scene& scene, TowAnswer& out) {
    sort_out(out);
    count(out);
    ends_first(out);
    out.opened = last_opened(scene);
    out.from_outside = scene.current().owner;
    if (!out.worst.empty()) {
        const bool never = out.points[out.worst.front()].grade == Grade::do_not_tow;
        out.outcome = never ? TowOutcome::do_not_tow : TowOutcome::not_before_repair;
        return;
    }
    out.outcome = out.open.empty() ? TowOutcome::nothing_against : TowOutcome::cannot_tell;
    out.trip_check_due = out.outcome == TowOutcome::cannot_tell && only_trip_due(out);
    if (out.from_outside) owners_outcome(scene, out);
    if (out.trip_check_due) out.first = fact(FactId::trip_check_due);
}

}  // namespace cotter::answering
