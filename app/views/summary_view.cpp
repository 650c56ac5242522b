// See summary_view.h.
#include "app/views/summary_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/place_text.h"

namespace cotter {

namespace {

// The answer without the word it begins with: that stands above it.
std::string reason_alone(const Summary& s) {
    for (const std::string_view begin : {"Do not tow: ", "Not before repair: ", "Cannot tell: "})
        if (s.answer.starts_with(begin)) return upper_first(s.answer.substr(begin.size()));
    return s.answer;
}

std::string lower_first(std::string text) {
    const bool name = text.size() > 1 && text[1] >= 'A' && text[1] <= 'Z';  // "DOT 4" stays
    if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z' && !name) text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

// A finding says its subject itself.
std::string said_of(const ReasonItem& reason) {
    const bool named = lower_first(reason.says).starts_with(lower_first(reason.subject));
    return named ? upper_first(reason.says) : fmt::format("{}: {}", reason.subject, reason.says);
}

std::string under_of(const Judgement& node, SideWords words) {
    const auto reasons = reasons_of(node, words);
    if (!reasons.empty() && reasons.front().grade > Grade::serviceable) return said_of(reasons.front());
    const auto unknowns = unknowns_of(node, words);
    if (!unknowns.empty() && (unknowns.front().essential || reasons.empty()))
        return fmt::format("cannot tell: {}, {}", lower_first(unknowns.front().subject), unknowns.front().because);
    if (reasons.empty()) return "nothing recorded";
    return fmt::format("nothing against it in {}", count_words(reasons.size(), "thing seen", "things seen"));
}

JudgedPlace place_of(const Judgement& node, const Place& place, int axle, SideWords words) {
    JudgedPlace out;
    out.label = judged_words(place, axle, words);
    out.under = under_of(node, words);
    if (const std::size_t n = node.unknown_count(); n > 0) out.value = fmt::format("{} not known", n);
    out.grade = node.grade;
    out.route = {Screen::judgement, place, axle > 0 ? fmt::format("axle {}", axle) : std::string{}};
    return out;
}

// The node without the parts that have rows of their own, graded by what is left.
template <class Gone>
Judgement without(Judgement node, const Gone& gone) {
    std::erase_if(node.parts, gone);
    node.grade.reset();
    for (const Ground& r : node.reasons) node.grade = std::max(node.grade.value_or(r.grade), r.grade);
    for (const Judgement& part : node.parts)
        if (part.grade) node.grade = std::max(node.grade.value_or(*part.grade), *part.grade);
    return node;
}

// Corners and stations; an axle or the trailer as a whole only when something is said about it.
void add_places(const Judgement& tree, SideWords words, std::vector<JudgedPlace>& out) {
    const Judgement whole = without(tree, [&](const Judgement& p) { return p.axle > 0 || !(p.place == tree.place); });
    for (const Judgement& part : tree.parts) {
        if (part.axle == 0 && part.place == tree.place) continue;
        if (part.axle == 0) {
            out.push_back(place_of(part, part.place, 0, words));
            continue;
        }
        const Judgement axle = without(part, [](const Judgement& p) { return p.axle == 0; });
        for (const Judgement& corner : part.parts)
            if (corner.axle == 0) out.push_back(place_of(corner, corner.place, 0, words));
        if (!axle.parts.empty()) out.push_back(place_of(axle, tree.place, part.axle, words));
    }
    if (!whole.parts.empty()) out.push_back(place_of(whole, tree.place, 0, words));
}

std::string mm(double value) {
    return fmt::format("{:.1f} mm", value);
}

ForecastItem forecast_item(const Forecast& f, SideWords words) {
    ForecastItem item;
    item.title = fmt::format("{}: {}{}{}", place_words(f.place, words), f.what, f.where.empty() ? "" : ", ", f.where);
    item.says = upper_first(f.says);
    item.source = f.source.empty() ? f.limit : fmt::format("{}; {}", f.limit, f.source);
    item.steps = f.steps;
    item.limit = f.limit_mm;
    double top = f.limit_mm;
    for (const ForecastPoint& p : f.points) {
        item.points.push_back({p.way, p.thickness});
        top = std::max(top, p.thickness);
    }
    item.top = mm(top);
    item.bottom = "limit " + mm(f.limit_mm);
    item.first = f.points.front().date.text();
    item.last = f.points.back().date.text();
    if (f.answer != WearAnswer::told) return item;
    const double now = f.points.back().way;
    item.end = now + f.life.left;
    item.end_early = now + f.life.plan;
    item.end_late = now + f.life.left + 2 * f.life.u;
    item.ends = fmt::format("in {:.0f} to {:.0f} {}", f.life.plan, f.life.left + 2 * f.life.u, f.way_unit);
    return item;
}

void add_forecasts(const Summary& s, SideWords words, SummaryView& view) {
    for (const Forecast& f : s.forecasts) {
        if (f.points.size() >= 2 && f.answer == WearAnswer::told)
            view.forecasts.push_back(forecast_item(f, words));
        else
            view.not_foretold.push_back(fmt::format("{}, {}: {}", place_words(f.place, words), f.what, f.says));
    }
}

std::string inspection_words(const Session& session) {
    const InspectionState state = inspection_gaps(session.job(), session.judge().reg().inspection);
    if (session.job().only<Inspection>() == nullptr) return "not begun";
    return fmt::format("{} of {} items answered", state.answered, state.wanted);
}

}  // namespace

std::string_view towing_word(Towing towing) {
    switch (towing) {
        case Towing::no:
            return "Do not tow";
        case Towing::after_repair:
            return "Not before repair";
        case Towing::cannot_tell:
            return "Cannot tell";
        case Towing::nothing_against:
            return "Nothing found against it";
        case Towing::from_outside:
            break;
    }
    return "Nothing found from outside";
}

std::string towing_question(const Summary& summary) {
    return fmt::format("May it be towed? {}", towing_word(summary.towing));
}

SummaryView summary_view(const Session& session) {
    const SideWords words = session.settings().sides;
    const Summary& s = session.summary();
    SummaryView view;
    view.chrome = chrome_of(session, "May it be towed?", trailer_words(session.job()));
    view.towing = s.towing;
    view.word = towing_word(s.towing);
    view.answer = in_words(reason_alone(s), words);
    view.caveat = s.caveat;
    view.trouble = session.judge().trouble();
    for (const Ground& g : s.first) view.reasons.push_back(reason_item(g, words));
    add_places(s.now, words, view.places);
    for (const Unknown& u : s.unknowns)
        if (view.unknowns.size() < kMostUnknown) view.unknowns.push_back(unknown_item(u, words));
    view.more_unknown = s.unknowns.size() - view.unknowns.size();
    add_forecasts(s, words, view);
    for (const VisitLeft& v : session.judge().visits(session.job(), session.now()))
        view.visits.push_back({v.date.text(), std::string(towing_word(v.towing)), in_words(v.answer, words)});
    if (const Job* last = session.last_visit()) view.since = "with " + last->only<Visit>()->opened.local_date().text();
    view.inspection = inspection_words(session);
    return view;
}

}  // namespace cotter
