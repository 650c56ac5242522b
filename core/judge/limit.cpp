// Limits: reading, checking, comparing.
#include "core/judge/limit.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

#include "core/judge/judge_words.h"
#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

// The texts of a register.
struct Register {
    std::vector<Limit> limits;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("limits", s.limits);
    }
};

bool makers(SourceKind kind) {
    return kind == SourceKind::maker || kind == SourceKind::stamped;
}

LimitMark firmest(SourceKind kind) {
    if (kind == SourceKind::practice || kind == SourceKind::shop) return LimitMark::c;
    return kind == SourceKind::physics ? LimitMark::b : LimitMark::a;
}

std::vector<std::string> problems_of_limit(const Limit& l) {
    std::vector<std::string> out;
    const auto need = [&](bool good, std::string_view what) {
        if (!good) out.push_back(fmt::format("{}: {}", l.id, what));
    };
    const Unit* unit = find_unit(l.value.unit);
    need(!l.id.empty() && !l.what.empty(), "id or reading is missing");
    need(!l.source.text.empty(), "no limit without its source");
    need(unit != nullptr, "the unit is not known");
    need(l.mark == firmest(l.source.kind), "mark and kind of source do not go together");
    need(l.mark == LimitMark::a || l.beyond <= Grade::watch, "a figure that is only practice must never fail anything");
    need(l.source.kind != SourceKind::state_law || l.beyond <= Grade::watch, "a state's rule only warns elsewhere");
    need(l.source.kind != SourceKind::maker || !l.source.page.empty(), "a maker's figure needs its page");
    need(l.source.kind != SourceKind::stamped || l.source.shot, "a stamped figure needs its photo");
    need(unit == nullptr || unit->quantity != Quantity::torque || makers(l.source.kind),
         "a torque comes from the maker's document and is never guessed");
    need(!l.entered_by.empty(), "who entered it is missing");
    need(l.checked.has_value() == (l.evidence != Evidence::memory),
         "a source that was read has the day of it, one from memory has none");
    return out;
}

}  // namespace

bool is_lower(Bound bound) {
    return bound == Bound::at_least || bound == Bound::more_than;
}

std::string limit_text(const Limit& limit) {
    const std::string figure = fmt::format("{} {}", name_of(limit.bound), limit.value.text());
    return limit.measured.empty() ? figure : figure + ", " + limit.measured;
}

std::string source_text(const Limit& limit) {
    const LimitSource& s = limit.source;
    return words::source(s.kind, s.page.empty() ? s.text : s.text + ", page " + s.page);
}

Stand stand_of(const Limit& limit, double si, double step_si) {
    const double bound = limit.value.si();
    const double grain = 1e-9 * std::max({std::abs(bound), std::abs(si), 1e-12});  // of the arithmetic
    const double over = is_lower(limit.bound) ? si - bound : bound - si;
    const bool open = limit.bound == Bound::more_than || limit.bound == Bound::less_than;
    if (open ? !(over > grain) : !(over >= -grain)) return Stand::beyond;  // a NaN is beyond too
    return step_si > 0 && over < step_si - grain ? Stand::close : Stand::good;
}

std::vector<std::string> limit_problems(std::span<const Limit> limits) {
    std::vector<std::string> out;
    std::set<std::string> seen;
    for (const Limit& limit : limits) {
        auto some = problems_of_limit(limit);
        std::move(some.begin(), some.end(), std::back_inserter(out));
        if (!seen.insert(limit.id).second) out.push_back(limit.id + ": the id is there twice");
    }
    return out;
}

Result<std::vector<Limit>> parse_limits(std::string_view text) {
    COTTER_ASSIGN(const Json json, parse_json(text));
    COTTER_ASSIGN(Register r, fields_from_json<Register>(json));
    if (const auto problems = limit_problems(r.limits); !problems.empty())
        return fail(Errc::refused, "a limit cannot be used", problems.front(), "mend the register");
    return std::move(r.limits);
}

Limit limit_of(const MakerLimit& figure) {
    const bool stamped = figure.origin == FigureOrigin::stamped;
    Limit l;
    l.id = figure.id.text();
    l.what = figure.what;
    l.bound = figure.bound;
    l.value = figure.value;
    l.measured = figure.where;
    l.axle_model = figure.axle_model;
    l.axle = figure.axle;
    l.part = figure.part;
    l.source = {stamped ? SourceKind::stamped : SourceKind::maker,
                stamped && figure.document.empty() ? words::on_the_casting() : figure.document, figure.page,
                figure.shot};
    l.mark = LimitMark::a;
    l.evidence = Evidence::read;
    l.beyond = stamped ? Grade::do_not_tow : Grade::repair;
    l.checked = figure.at.local_date();
    l.entered_by = figure.by;
    l.note = figure.note;
    return l;
}

std::vector<MakerLimit> remembered_limits(const std::string& axle_model, std::span<const Job> earlier) {
    std::vector<MakerLimit> out;
    if (axle_model.empty()) return out;
    for (const Job& job : earlier)
        for (const MakerLimit& figure : job.all<MakerLimit>()) {
            if (figure.axle_model != axle_model) continue;
            const auto same = std::find_if(out.begin(), out.end(), [&](const MakerLimit& other) {
                return other.what == figure.what && is_lower(other.bound) == is_lower(figure.bound) &&
                       other.part == figure.part;
            });
            if (same == out.end())
                out.push_back(figure);
            else if (same->at < figure.at)
                *same = figure;
        }
    return out;
}

}  // namespace cotter
