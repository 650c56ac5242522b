// States and answers.
#include "core/quote/answer.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

#include "core/quote/totals.h"
#include "core/survey/quote_rules.h"

namespace cotter {

namespace {

bool wants_answer(const QuoteLine& line) {
    return line.kind != LineKind::core;
}

const Decision* last_answer(const Job& job, const Quote& quote, int line) {
    const Decision* last = nullptr;
    for (const Decision& decision : job.all<Decision>()) {
        const auto& lines = decision.lines;
        if (decision.quote != quote.id || std::find(lines.begin(), lines.end(), line) == lines.end()) continue;
        if (last == nullptr || last->at.unix_s <= decision.at.unix_s) last = &decision;
    }
    return last;
}

bool replaced(const Quote& quote) {
    return quote.state == QuoteState::changed;
}

std::set<Id<Need>> accepted_needs(const Job& job) {
    std::set<Id<Need>> out;
    for (const Quote& quote : job.all<Quote>()) {
        if (replaced(quote)) continue;
        for (const LineAnswer& answer : answers_to(job, quote))
            if (answer.accepted()) out.insert(answer.line->needs.begin(), answer.line->needs.end());
    }
    return out;
}

// Findings behind a declined line that are bad and not settled by work.
std::vector<const Finding*> open_findings(const Job& job, const QuoteLine& line, const std::set<Id<Need>>& accepted) {
    std::vector<const Finding*> out;
    for (const Id<Need>& id : line.needs) {
        const Need* need = job.find(id);
        if (need == nullptr || accepted.contains(id)) continue;
        for (const Id<Finding>& finding_id : need->findings) {
            const Finding* finding = job.find(finding_id);
            const bool listed = std::find(out.begin(), out.end(), finding) != out.end();  // two needs may share one
            if (finding != nullptr && !listed && finding->outcome != Outcome::repaired &&
                (finding->grade == Grade::repair || finding->grade == Grade::do_not_tow))
                out.push_back(finding);
        }
    }
    return out;
}

}  // namespace

Result<Quote> offered(const Quote& draft, const Instant& at) {
    if (draft.state != QuoteState::drafted)
        return fail(Errc::refused, "the quote was offered already", draft.name, "make a new version of it");
    if (draft.lines.empty()) return fail(Errc::refused, "the quote has no lines", draft.name);
    if (draft.expires && *draft.expires < at.local_date())
        return fail(Errc::refused, "the quote's last day is past", draft.expires->text(), "enter a later one");
    Quote quote = draft;
    quote.offered_at = at;
    quote.fingerprint = quote_fingerprint(quote);
    quote.state = QuoteState::offered;
    return quote;
}

Result<std::vector<Change>> next_version(const Job& job, const Quote& old, const Id<Quote>& fresh,
                                         const QuoteStamp& stamp) {
    if (old.state == QuoteState::drafted)
        return fail(Errc::refused, "the quote is still a draft", old.name, "change the draft itself");
    if (old.state != QuoteState::offered)
        return fail(Errc::refused, "the quote was replaced or is done", old.name, "change its newest version");
    if (job.find(fresh) != nullptr) return fail(Errc::refused, "there is such a quote already", fresh.text());
    Quote before = old;
    before.state = QuoteState::changed;
    Quote next = old;
    next.id = fresh;
    next.version = old.version + 1;
    next.replaces = old.id;
    next.state = QuoteState::drafted;
    next.offered_at.reset();
    next.fingerprint.clear();
    next.at = stamp.at;
    next.by = stamp.by;
    return std::vector<Change>{Put{before, {}}, Put{next, {}}};
}

Result<Quote> done(const Job& job, const Quote& quote) {
    const auto answers = answers_to(job, quote);
    if (quote.state != QuoteState::offered ||
        std::none_of(answers.begin(), answers.end(), [](const LineAnswer& a) { return a.accepted(); }))
        return fail(Errc::refused, "nothing of the quote was accepted", quote.name, "take the answer down first");
    Quote out = quote;
    out.state = QuoteState::done;
    return out;
}

std::vector<LineAnswer> answers_to(const Job& job, const Quote& quote) {
    std::vector<LineAnswer> out;
    for (const QuoteLine& line : quote.lines) out.push_back({&line, last_answer(job, quote, line.number)});
    return out;
}

Standing standing(const Job& job, const Quote& quote, const Date& today) {
    if (quote.state == QuoteState::drafted) return Standing::drafted;
    if (quote.state == QuoteState::changed) return Standing::changed;
    if (quote.state == QuoteState::done) return Standing::done;
    int accepted = 0;
    int declined = 0;
    int all = 0;
    for (const LineAnswer& answer : answers_to(job, quote)) {
        if (!wants_answer(*answer.line)) continue;
        ++all;
        accepted += answer.accepted() ? 1 : 0;
        declined += answer.declined() ? 1 : 0;
    }
    if (accepted == all) return Standing::accepted;
    if (accepted > 0) return Standing::part_accepted;
    if (declined > 0) return Standing::declined;
    return quote.expires && *quote.expires < today ? Standing::expired : Standing::offered;
}

Result<AcceptedTotal> accepted_total(const Job& job, const Quote& quote) {
    std::vector<QuoteLine> lines;
    std::set<Id<Offer>> offers;
    for (const LineAnswer& answer : answers_to(job, quote)) {
        if (!answer.accepted() || answer.line->kind == LineKind::core) continue;
        lines.push_back(*answer.line);
        if (answer.line->offer) offers.insert(*answer.line->offer);
    }
    for (const QuoteLine& line : quote.lines)
        if (line.kind == LineKind::core && line.offer && offers.contains(*line.offer)) lines.push_back(line);
    COTTER_ASSIGN(const Totals totals, totals_of(lines, ""));
    return AcceptedTotal{totals.total_low, totals.total_high, totals.cores};
}

std::vector<DeclinedLine> declined_lines(const Job& job) {
    std::vector<DeclinedLine> out;
    const auto accepted = accepted_needs(job);
    for (const Quote& quote : job.all<Quote>()) {
        if (replaced(quote)) continue;
        for (const LineAnswer& answer : answers_to(job, quote)) {
            if (!answer.declined()) continue;
            DeclinedLine line{&quote, answer.line, answer.decision, open_findings(job, *answer.line, accepted),
                              Grade::repair};
            if (line.findings.empty()) continue;
            for (const Finding* finding : line.findings) line.worst = std::max(line.worst, finding->grade);
            out.push_back(std::move(line));
        }
    }
    return out;
}

std::string declined_text(const DeclinedLine& d) {
    std::string why;
    for (const Finding* finding : d.findings)
        why += fmt::format("{}{}, {}", why.empty() ? "" : "; ", finding->component, finding->defect);
    return fmt::format("Line {}, {}: declined by {}, {}, {}. {}: {}.", d.line->number, d.line->text, d.decision->name,
                       d.decision->at.local_date().text(), name_of(d.decision->channel),
                       d.worst == Grade::do_not_tow ? "Do not tow" : "Repair", why);
}

}  // namespace cotter
