// Findings as people graded them, readings against limits of their own name, and what is missing.
#include <algorithm>
#include <fmt/format.h>
#include <map>

#include "core/base/text.h"
#include "core/judge/judge_words.h"
#include "core/judge/judging.h"
#include "core/trade/asked.h"

namespace cotter {

namespace {

// The leaf of the tree that a finding's component belongs to.
std::string component_of_finding(const std::string& named) {
    const std::string text = ascii_lower(named);
    const auto has = [&](std::string_view word) { return text.find(word) != std::string::npos; };
    if (has("tyre") || has("tread") || has("sidewall")) return "tyre";
    if (has("hub") || has("seal") || has("bearing") || has("spindle")) return "hub";
    if (has("nut") || has("stud") || has("wheel") || has("rim")) return "wheel";
    if (has("hose") || has("line") || has("fluid") || has("reservoir") || has("actuator")) return "hydraulics";
    if (has("pad") || has("rotor") || has("caliper") || has("drum") || has("shoe") || has("magnet") || has("pin"))
        return "brake";
    if (has("breakaway") || has("battery")) return "breakaway";
    if (has("cap")) return "hub";
    return named;
}

// Computed figures and records of use are no readings to hold against a limit themselves.
bool bare(std::string_view name) {
    return name == what::rotor_cut || name == what::pad_when_new || name == what::run_since ||
           name == what::run_total || name == what::hub_temperature || name == what::tyre_date ||
           name == what::pressure_hold || name == what::battery_volts;
}

Subject subject_of(const Value& v) {
    return {v.place,           v.axle, std::string(component_of(v.what)), v.what, v.si, v.step_si, v.text(), {}, {},
            v.reading->id.uuid};
}

struct Wanted {
    std::string_view name;
    bool essential;
};

// The measured readings that the points at this corner call for.
std::vector<Wanted> wanted_at(const Bench& bench, const Place& corner) {
    std::vector<Wanted> out;
    const Layout layout = layout_of(bench.job);
    for (const WantedReading& wanted : readings_wanted(layout, corner)) {
        if (!wanted.missing) continue;
        const TradePoint* point = point_of_reading(wanted.spec->name);
        const bool essential = point != nullptr && importance_at(*point, layout, wanted.place) == Importance::essential;
        out.push_back({wanted.spec->name, essential});
    }
    return out;
}

void want(Bench& bench, const Place& place, const Wanted& wanted) {
    if (!bench.values.of(wanted.name, place).empty()) return;
    for (Unknown& u : bench.values.unknowns)  // explained already: it only has to be known as essential
        if (corner_of(u.place) == place && u.subject == wanted.name) {
            u.essential = u.essential || wanted.essential;
            return;
        }
    bench.cannot_tell({place,
                       0,
                       std::string(component_of(wanted.name)),
                       std::string(wanted.name),
                       words::not_measured(),
                       {},
                       wanted.essential});
}

}  // namespace

void judge_findings(Bench& bench) {
    for (const Finding& f : bench.job.all<Finding>()) {
        if (bench.state == State::now && f.outcome == Outcome::repaired) continue;
        Ground r;
        r.place = corner_of(f.place);
        r.component = component_of_finding(f.component);
        r.subject = f.component;
        r.grade = f.grade;
        r.says = fmt::format("{}: {}", f.component, f.defect);
        if (f.outcome == Outcome::deferred || f.outcome == Outcome::declined)
            r.says += fmt::format(" ({})", name_of(f.outcome));
        r.source = words::person(f.by);
        r.mark = LimitMark::a;  // a person answers for it
        r.todo = f.todo;
        r.record = f.id.uuid;
        bench.tell(std::move(r));
    }
}

void judge_inspection(Bench& bench) {
    for (const InspectionAnswer& a : bench.job.all<InspectionAnswer>()) {
        if (a.answer != Answer::not_ok) continue;
        Ground r = plain_reason(Place::at(Station::trailer), "periodic inspection", "item " + a.item, Grade::repair,
                                fmt::format("item {} is not OK: {}", a.item, a.remark),
                                words::source(SourceKind::law, "49 CFR part 396, Appendix A, " + a.item), LimitMark::a);
        r.record = a.id.uuid;
        bench.tell(std::move(r));
    }
}

void judge_plain_readings(Bench& bench) {
    // The least and the most of each place and name: all other points lie between.
    std::map<std::tuple<Place, int, std::string>, std::pair<const Value*, const Value*>> ends;
    for (const Value& v : bench.values.all) {
        const ReadingSpec* known = reading_spec(v.what);
        if (bare(known == nullptr ? std::string_view(v.what) : known->name)) continue;
        auto [it, fresh] = ends.try_emplace({v.place, v.axle, v.what}, &v, &v);
        if (v.si < it->second.first->si) it->second.first = &v;
        if (v.si > it->second.second->si) it->second.second = &v;
    }
    for (const auto& [key, end] : ends) {
        const auto before = bench.reasons.size();
        hold_against_limits(bench, subject_of(*end.first));
        if (end.first == end.second) continue;
        // Upper limits look at the other end.
        const auto lower = [&](const Ground& r) {
            const auto it = std::find_if(bench.limits.begin(), bench.limits.end(),
                                         [&](const Limit& l) { return l.id == r.limit_id; });
            return it != bench.limits.end() && is_lower(it->bound);
        };
        const auto start = bench.reasons.begin() + static_cast<std::ptrdiff_t>(before);
        bench.reasons.erase(std::remove_if(start, bench.reasons.end(), [&](const Ground& r) { return !lower(r); }),
                            bench.reasons.end());
        const auto middle = bench.reasons.size();
        const auto unknowns = bench.unknowns.size();
        hold_against_limits(bench, subject_of(*end.second));
        bench.unknowns.resize(unknowns);  // the same contradictions again
        const auto half = bench.reasons.begin() + static_cast<std::ptrdiff_t>(middle);
        bench.reasons.erase(std::remove_if(half, bench.reasons.end(), lower), bench.reasons.end());
    }
}

void judge_missing(Bench& bench) {
    for (const Place& corner : bench.corners())
        if (const Axle* axle = bench.axle_of(corner)) {
            if (is_air(axle->brake))
                bench.cannot_tell({corner, 0, "brake", "brake", "air brakes are outside what Cotter judges",
                                   "have them looked at by someone qualified for them", true});
            for (const Wanted& wanted : wanted_at(bench, corner)) want(bench, corner, wanted);
        }
    if (bench.corners().empty())
        bench.cannot_tell({Place::at(Station::trailer), 0, "trailer", "axles", "the axles are not recorded",
                           "enter the axles and their brakes", true});
}

}  // namespace cotter
