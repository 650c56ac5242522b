// A value against every figure that bounds it: law, makers, practice.
#include <algorithm>
#include <cmath>

#include "core/judge/answering.h"

namespace cotter::answering {

namespace {

template <class T>
bool allows(const std::vector<T>& wanted, T is) {
    return wanted.empty() || std::find(wanted.begin(), wanted.end(), is) != wanted.end();
}

bool fits(const Limit& l, std::string_view name, const Axle* axle, int number) {
    if (l.what != name || (l.axle != 0 && l.axle != number)) return false;
    if (axle == nullptr) return l.brakes.empty() && l.hubs.empty() && l.axle_model.empty();
    return allows(l.brakes, axle->brake) && allows(l.hubs, axle->hub) &&
           (l.axle_model.empty() || l.axle_model == axle->model);
}

bool from_maker(const Limit& l) {
    return l.source.kind == SourceKind::maker || l.source.kind == SourceKind::stamped;
}

bool same_figure(const Limit& a, const Limit& b) {
    const double x = a.value.si(), y = b.value.si();
    return std::abs(x - y) <= 1e-6 * std::max(std::abs(x), std::abs(y));
}

// Two makers' figures for the same part that cannot both hold.
bool contradict(const Limit& a, const Limit& b) {
    if (&a == &b || !from_maker(a) || !from_maker(b) || a.part != b.part) return false;
    if (is_lower(a.bound) == is_lower(b.bound)) return !same_figure(a, b);
    const Limit &low = is_lower(a.bound) ? a : b, &high = is_lower(a.bound) ? b : a;
    return low.value.si() > high.value.si() && !same_figure(a, b);
}

std::vector<const Limit*> figures_on(const Scene& scene, const Sitting& sitting, std::string_view name,
                                     const Place& place) {
    std::vector<const Limit*> out;
    const Axle* axle = scene.axle(place);
    const auto take = [&](const std::vector<Limit>& list) {
        for (const Limit& l : list)
            if (fits(l, name, axle, place.axle) && l.use == LimitUse::operate) out.push_back(&l);
    };
    take(scene.limits);
    take(scene.own_limits[sitting.index]);
    return out;
}

// Practice stands back where a maker's figure bounds the same side.
void drop_practice(std::vector<const Limit*>& figures) {
    const auto all = figures;
    std::erase_if(figures, [&](const Limit* l) {
        return l->mark == LimitMark::c && std::any_of(all.begin(), all.end(), [&](const Limit* m) {
                   return from_maker(*m) && is_lower(m->bound) == is_lower(l->bound);
               });
    });
}

Verdict verdict_of(const Limit& l, Stand stand, const Holding& value) {
    if (stand == Stand::beyond)
        return told(l.beyond,
                    fact(l.mark == LimitMark::c ? FactId::beyond_usual : FactId::beyond, value.shown, l.bound, l.value),
                    source_of(l));
    if (l.evidence == Evidence::memory && l.mark == LimitMark::a)
        return open(fact(FactId::memory_permits_nothing, value.shown, l.bound, l.value), source_of(l));
    if (stand == Stand::close)
        return told(Grade::watch, fact(FactId::close, value.shown, l.bound, l.value), source_of(l));
    return told(Grade::serviceable, fact(FactId::within, value.shown, l.bound, l.value), source_of(l));
}

}  // namespace

std::vector<const Limit*> makers_figures(const Scene& scene, const Sitting& sitting, std::string_view name,
                                         const Place& place) {
    std::vector<const Limit*> out = figures_on(scene, sitting, name, place);
    std::erase_if(out, [](const Limit* l) { return !from_maker(*l); });
    return out;
}

// A reading beyond every one of figures that contradict each other is beyond; else nobody can tell.
Bounds hold_against(const Scene& scene, const Sitting& sitting, const Holding& value, std::vector<Verdict>& out) {
    std::vector<const Limit*> figures = figures_on(scene, sitting, value.what, value.place);
    drop_practice(figures);
    Bounds held;
    for (const Limit* l : figures) {
        ++held.figures;
        held.firm = held.firm || l->mark == LimitMark::a;
        const Stand stand = stand_of(*l, value.si, value.step_si);
        const auto other =
            std::find_if(figures.begin(), figures.end(), [&](const Limit* m) { return contradict(*l, *m); });
        if (other == figures.end())
            out.push_back(verdict_of(*l, stand, value));
        else if (stand == Stand::beyond && stand_of(**other, value.si, value.step_si) == Stand::beyond)
            out.push_back(verdict_of(*l, stand, value));
        else
            out.push_back(open(fact(FactId::figures_contradict, l->value, (*other)->value), source_of(*l)));
    }
    return held;
}

}  // namespace cotter::answering
