// Sources by duty and place, and the sentence of an answer.
#include <algorithm>
#include <fmt/format.h>

#include "core/judge/fact_english.h"
#include "core/judge/judge_words.h"
#include "core/judge/state_rules.h"

namespace cotter {

namespace {

constexpr double kPound = 0.45359237;

std::string_view flag(Evidence evidence) {
    if (evidence == Evidence::partly) return " (section seen in part)";
    return evidence == Evidence::memory ? " (wording not verified)" : "";
}

std::string counted(const TowAnswer& a) {
    return fmt::format("{} of {} points", a.looked_at, a.of);
}

std::string reason_line(const PointAnswer& p, const LawSetting& setting) {
    const std::string source = source_line(p.source, setting);
    return source.empty() ? english(p) : fmt::format("{} ({})", english(p), source);
}

std::string against(const TowAnswer& a, std::string_view word, const LawSetting& setting) {
    std::string out = fmt::format("{}: {}.{}", word, reason_line(*a.reason(), setting),
                                  and_more(a.worst.size() - 1, "more reason", "more reasons"));
    if (a.outcome == TowOutcome::not_before_repair && a.essential_open > 0)
        out += fmt::format(" And {} essential {} not known.", a.essential_open,
                           a.essential_open == 1 ? "point" : "points");
    return out;
}

std::string cannot_tell(const TowAnswer& a) {
    const std::size_t more = a.open.empty() ? 0 : a.open.size() - (a.first ? 0 : 1);
    const std::string because =
        a.first || a.reason() == nullptr ? (a.first ? english(*a.first) : "") : english(*a.reason());
    return fmt::format("Cannot tell: {}.{}", because, and_more(more, "more thing not known", "more things not known"));
}

std::string nothing(const TowAnswer& a) {
    std::string out = a.outcome == TowOutcome::nothing_from_outside && a.first
                          ? english(*a.first)
                          : std::string(name_of(TowOutcome::nothing_against));
    out[0] = 'N';
    out += fmt::format(", {}.", counted(a));
    if (!a.watch.empty()) {
        out += fmt::format(" Watch: {}.", english(a.points[a.watch.front()]));
        out += and_more(a.watch.size() - 1, "more to watch", "more to watch");
    }
    if (!a.wanted.empty()) out += fmt::format(" Not known, and not essential: {}.", a.wanted.size());
    return out;
}

}  // namespace

LawSetting law_setting(const Job& job) {
    LawSetting out;
    const Visit* visit = job.only<Visit>();
    const Trailer* trailer = job.only<Trailer>();
    if (visit == nullptr) return out;
    if (is_foreign(visit->region)) out.foreign = visit->region;
    double rated = trailer != nullptr && trailer->gvwr ? trailer->gvwr->si() : 0;
    if (visit->tow && visit->tow->gvwr) rated += visit->tow->gvwr->si();
    out.binds = visit->duty == Duty::carrier && visit->interstate && rated >= 10001 * kPound * (1 - 1e-9);
    return out;
}

std::string source_line(const AnswerSource& s, const LawSetting& setting) {
    const std::string cited = s.text + std::string(flag(s.evidence));
    switch (s.rests_on) {
        case RestsOn::record:
            return {};
        case RestsOn::person:
            return words::person(s.text);
        case RestsOn::law:
            if (!setting.foreign.empty()) return "No rule entered for " + setting.foreign;
            return setting.binds ? "Law: " + cited
                                 : fmt::format("Reference (binds commercial trailers): {}; your state decides", cited);
        case RestsOn::build:
            return setting.foreign.empty() ? "Rule for makers: " + cited : "No rule entered for " + setting.foreign;
        case RestsOn::state_inspection:
            return setting.foreign.empty() ? "For state inspections: " + cited
                                           : "No rule entered for " + setting.foreign;
        case RestsOn::state_law:
            return setting.foreign.empty() ? "State law: " + cited : "No rule entered for " + setting.foreign;
        case RestsOn::stamped:
            return "Stamped: " + cited;
        case RestsOn::maker:
            return "Maker: " + cited;
        case RestsOn::shop:
            return fmt::format("Shop: {}; {}", cited, words::kConfirm);
        case RestsOn::practice:
            return fmt::format("Common practice: {}; {}", cited, words::kConfirm);
        case RestsOn::physics:
            return "By definition: " + cited;
        case RestsOn::own:
            break;
    }
    return "Gross band: far beyond what is usual";
}

std::string english(const PointAnswer& a) {
    const std::string what = english(a.fact);
    if (!a.point) return fmt::format("{}, {}", words::place(a.place), what);
    const TradePoint& p = point(*a.point);
    const std::string where = p.spot == Spot::axle ? fmt::format("axle {}", a.place.axle) : words::place(a.place);
    return fmt::format("{}, {}: {}", where, p.title, what);
}

std::string and_more(std::size_t n, std::string_view one, std::string_view many) {
    return n == 0 ? std::string() : fmt::format(" And {} {}.", n, n == 1 ? one : many);
}

std::string english(const TowAnswer& a, const LawSetting& setting) {
    switch (a.outcome) {
        case TowOutcome::do_not_tow:
            return against(a, "Do not tow", setting);
        case TowOutcome::not_before_repair:
            return against(a, "Not before repair", setting);
        case TowOutcome::cannot_tell:
            return cannot_tell(a);
        case TowOutcome::nothing_against:
        case TowOutcome::nothing_from_outside:
            break;
    }
    return nothing(a);
}

}  // namespace cotter
