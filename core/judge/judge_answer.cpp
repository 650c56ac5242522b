// From answers to grounds.
#include "core/judge/judge_answer.h"

#include <algorithm>
#include <array>

#include "core/judge/judge_words.h"
#include "core/judge/values.h"

namespace cotter {

namespace {

struct Leaf {
    std::string_view starts;  // of a point's id
    std::string_view component;
};
constexpr std::array kLeaves{Leaf{"tire", "tyre"},      Leaf{"wheel", "wheel"},     Leaf{"hub", "hub"},
                             Leaf{"act", "hydraulics"}, Leaf{"away", "breakaway"},  Leaf{"cpl", "coupling"},
                             Leaf{"lamp", "lights"},    Leaf{"susp", "suspension"}, Leaf{"frame", "frame"},
                             Leaf{"load", "load"},      Leaf{"plate", "plate"},     Leaf{"use", "plate"}};

std::string leaf_of(const PointAnswer& a) {
    if (!a.point) return "finding";
    const std::string_view id = name_of(*a.point);
    for (const Leaf& leaf : kLeaves)
        if (id.starts_with(leaf.starts)) return std::string(leaf.component);
    return "brake";
}

LimitMark mark_of(RestsOn rests_on) {
    if (rests_on == RestsOn::practice || rests_on == RestsOn::shop) return LimitMark::c;
    return rests_on == RestsOn::own || rests_on == RestsOn::physics ? LimitMark::b : LimitMark::a;
}

bool of_axle(const PointAnswer& a) {
    return a.point && point(*a.point).spot == Spot::axle;
}

// The gravest that the answer makes of this record; nothing: the answer does not rest on it.
std::optional<Grade> grade_of_record(const TowAnswer& tow, const Uuid& record) {
    std::optional<Grade> out;
    for (const PointAnswer& a : tow.points)
        if (a.known && a.record == record) out = std::max(out.value_or(a.grade), a.grade);
    return out;
}

bool said_already(const std::vector<Ground>& reasons, const PointAnswer& a) {
    return !a.record.nil() && std::any_of(reasons.begin(), reasons.end(), [&](const Ground& g) {
        return g.record == a.record && g.grade == a.grade && corner_of(g.place) == corner_of(a.place);
    });
}

}  // namespace

Ground ground_of(const PointAnswer& a, const LawSetting& setting) {
    Ground g;
    g.place = corner_of(a.place);
    g.axle = of_axle(a) ? a.place.axle : 0;
    g.component = leaf_of(a);
    g.subject = a.point ? std::string(point(*a.point).title) : "finding";
    g.grade = a.grade;
    g.says = english(a.fact);
    g.source = source_line(a.source, setting);
    if (g.source.empty()) g.source = a.by.empty() ? "as entered" : "recorded by " + a.by;
    g.mark = mark_of(a.source.rests_on);
    for (const Fact& step : a.steps) g.steps.push_back(english(step));
    for (const Fact& also : a.also) g.steps.push_back(english(also));
    g.record = a.record;
    return g;
}

Unknown unknown_of(const PointAnswer& a) {
    Unknown u;
    u.place = corner_of(a.place);
    u.axle = of_axle(a) ? a.place.axle : 0;
    u.component = leaf_of(a);
    u.subject = a.point ? std::string(point(*a.point).title) : "finding";
    u.because = english(a.fact);
    u.essential = a.essential;
    if (a.point && (*a.point <= PointId::plate_cpl || a.fact.id == FactId::placard_missing)) u.lacks = Lack::placard;
    if (a.point && a.fact.id == FactId::no_limit && !point(*a.point).readings.empty()) {
        u.lacks = Lack::makers_figure;
        u.subject = point(*a.point).readings.front();  // the reading that the figure bounds
    }
    return u;
}

void agree_with(const Job& job, const TowAnswer& tow, std::vector<Ground>& reasons, std::vector<Unknown>& unknowns) {
    const LawSetting setting = law_setting(job);
    const Grade worst = tow.worst.empty() ? Grade::watch : tow.points[tow.worst.front()].grade;
    for (Ground& g : reasons) {
        if (job.find(Id<Finding>{g.record}) != nullptr) continue;  // as somebody graded it
        const Grade most = g.record.nil() ? worst : grade_of_record(tow, g.record).value_or(Grade::watch);
        g.grade = std::min(g.grade, std::max(most, Grade::watch));
    }
    for (const PointAnswer& a : tow.points)
        if (a.known && !said_already(reasons, a)) reasons.push_back(ground_of(a, setting));
    // What the engine says of a point not known stands for the plain "not measured".
    std::erase_if(unknowns, [](const Unknown& u) { return u.because == words::not_measured(); });
    for (Unknown& u : unknowns) u.essential = false;
    for (const PointAnswer& a : tow.points)
        if (!a.known && a.point && (a.essential || point(*a.point).importance != Importance::optional))
            unknowns.push_back(unknown_of(a));
}

}  // namespace cotter
