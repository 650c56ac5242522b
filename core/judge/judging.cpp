// Limits that apply at a place, and values held against them.
#include "core/judge/judging.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "core/judge/judge_words.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

template <class T>
bool allows(const std::vector<T>& wanted, T is) {
    return wanted.empty() || std::find(wanted.begin(), wanted.end(), is) != wanted.end();
}

bool fits(const Limit& l, const Axle* axle, int number) {
    if (l.axle != 0 && l.axle != number) return false;
    if (axle == nullptr) return l.brakes.empty() && l.hubs.empty() && l.axle_model.empty();
    return allows(l.brakes, axle->brake) && allows(l.hubs, axle->hub) &&
           (l.axle_model.empty() || l.axle_model == axle->model);
}

bool from_maker(const Limit& l) {
    return l.source.kind == SourceKind::maker || l.source.kind == SourceKind::stamped;
}

std::string figure_text(const Limit& l) {
    return fmt::format("{} {} ({})", name_of(l.bound), l.value.text(), source_text(l));
}

// Two makers' figures of one direction that differ, or a lowest above a highest.
const Limit* contradiction(const Limit& l, const std::vector<const Limit*>& all) {
    for (const Limit* other : all) {
        if (other == &l || !from_maker(*other) || other->part != l.part) continue;
        const double a = l.value.si(), b = other->value.si();
        const double grain = 1e-6 * std::max(std::abs(a), std::abs(b));
        if (is_lower(l.bound) == is_lower(other->bound) ? std::abs(a - b) > grain
                                                        : (is_lower(l.bound) ? a > b + grain : b > a + grain))
            return other;
    }
    return nullptr;
}

}  // namespace

const Axle* Bench::axle_of(const Place& place, int axle) const {
    const int number = place.is_corner() ? place.axle : axle;
    if (trailer == nullptr || number < 1 || number > static_cast<int>(trailer->axles.size())) return nullptr;
    return &trailer->axles[static_cast<std::size_t>(number - 1)];
}

void Bench::cannot_tell(Unknown unknown) {
    const auto same = [&](const Unknown& u) {
        return u.place == unknown.place && u.axle == unknown.axle && u.subject == unknown.subject &&
               u.because == unknown.because;
    };
    if (std::none_of(unknowns.begin(), unknowns.end(), same)) unknowns.push_back(std::move(unknown));
}

std::vector<Place> Bench::corners() const {
    return trailer == nullptr ? std::vector<Place>{} : trailer->corners();
}

std::vector<const Limit*> Bench::limits_at(std::string_view name, const Place& place, int axle) {
    std::vector<const Limit*> out;
    const ReadingSpec* known = reading_spec(name);
    const int number = place.is_corner() ? place.axle : axle;
    for (const Limit& l : limits)
        if ((l.what == name || (known != nullptr && l.what == known->name)) && fits(l, axle_of(place, axle), number))
            out.push_back(&l);
    const auto all = out;
    std::erase_if(out, [&](const Limit* l) {
        if (!from_maker(*l))
            return l->mark == LimitMark::c && std::any_of(all.begin(), all.end(), [&](const Limit* m) {
                       return from_maker(*m) && is_lower(m->bound) == is_lower(l->bound);
                   });
        const Limit* other = contradiction(*l, all);
        if (other == nullptr) return false;
        if (l < other)
            cannot_tell({place, axle, std::string(component_of(name)), std::string(name),
                         fmt::format("two makers' figures contradict each other: {} and {}", figure_text(*l),
                                     figure_text(*other)),
                         "look both up again and take one out", false});
        return true;
    });
    return out;
}

std::size_t hold_against_limits(Bench& bench, const Subject& s) {
    const auto limits = bench.limits_at(s.what, s.place, s.axle);
    const bool inspecting = bench.job.only<Inspection>() != nullptr;
    for (const Limit* l : limits) {
        const Stand stand = stand_of(*l, s.si, s.step_si);
        Ground r{s.place,
                 s.axle,
                 s.component,
                 s.what,
                 Grade::serviceable,
                 words::against(stand, s.text, *l),
                 s.text,
                 limit_text(*l),
                 source_text(*l),
                 l->mark,
                 s.steps,
                 {},
                 l->id,
                 s.record};
        if (stand == Stand::close) r.grade = Grade::watch;
        if (stand == Stand::beyond) {
            r.grade = l->use == LimitUse::inspection && !inspecting ? Grade::watch : l->beyond;
            r.todo = s.todo;
            if (l->use == LimitUse::inspection) r.says += "; it would not pass a periodic inspection";
            if (l->mark == LimitMark::c && r.todo.empty()) r.todo = words::kConfirm;
        }
        bench.tell(std::move(r));
    }
    return limits.size();
}

Ground plain_reason(const Place& place, std::string component, std::string subject, Grade grade, std::string says,
                    std::string source, LimitMark mark) {
    Ground r;
    r.place = place;
    r.component = std::move(component);
    r.subject = std::move(subject);
    r.grade = mark == LimitMark::a ? grade : std::min(grade, Grade::watch);
    r.says = std::move(says);
    r.source = std::move(source);
    r.mark = mark;
    return r;
}

int inner_or_outer(const Value& value) {
    if (value.place.wheel != Wheel::only) return value.place.wheel == Wheel::inner ? 0 : 1;
    if (value.where.starts_with("inner")) return 0;
    return value.where.starts_with("outer") ? 1 : -1;
}

}  // namespace cotter
