// See customer_view.h.
#include "app/views/customer_view.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/quote/answer.h"
#include "core/quote/exact.h"
#include "core/quote/totals.h"

namespace cotter {

namespace {

bool holds(const std::vector<int>& lines, int line) {
    return std::find(lines.begin(), lines.end(), line) != lines.end();
}

void add_why(const Job& job, const QuoteLine& line, CustomerLine& out) {
    for (const Id<Need>& id : line.needs) {
        const Need* need = job.find(id);
        if (need == nullptr) continue;
        for (const Id<Finding>& finding : need->findings) {
            const Finding* f = job.find(finding);
            if (f == nullptr) continue;
            const std::string words = fmt::format("{}: {}", upper_first(f->component), f->defect);
            if (std::find(out.why.begin(), out.why.end(), words) == out.why.end()) out.why.push_back(words);
            out.grade = out.grade ? std::max(*out.grade, f->grade) : f->grade;
        }
    }
}

LineAnswerNow answer_now(const AnswerDraft& draft, const LineAnswer& given) {
    if (holds(draft.accepted, given.line->number)) return LineAnswerNow::yes;
    if (holds(draft.declined, given.line->number)) return LineAnswerNow::no;
    if (given.accepted()) return LineAnswerNow::yes;
    return given.declined() ? LineAnswerNow::no : LineAnswerNow::open;
}

void add_lines(const Job& job, const Quote& quote, CustomerView& view) {
    std::vector<QuoteLine> yes;
    for (const LineAnswer& given : answers_to(job, quote)) {
        const QuoteLine& line = *given.line;
        if (line.kind == LineKind::core) continue;
        CustomerLine row{line.number, upper_first(line.text), {}, {}, range_words(line.low, line.high), {}};
        add_why(job, line, row);
        row.answer = answer_now(view.answer, given);
        if (row.answer == LineAnswerNow::yes) yes.push_back(line);
        if (row.answer == LineAnswerNow::no && row.grade == Grade::do_not_tow)
            view.danger = "Do not tow: " + row.why[0];
        if (given.decision != nullptr)
            view.last = fmt::format("Answered by {}, {}, {} {}", given.decision->name, name_of(given.decision->channel),
                                    day_words(given.decision->at), clock_words(given.decision->at));
        view.lines.push_back(std::move(row));
    }
    const auto sum = totals_of(yes, quote.taxes.empty() ? std::string{} : quote.taxes[0].name);
    if (!yes.empty() && sum) view.said_yes = price_words(sum->total_low, sum->total_high, quote.currency);
}

void erase(std::vector<int>& lines, int line) {
    std::erase(lines, line);
}

}  // namespace

CustomerView customer_view(const Session& session) {
    const Job& job = session.job();
    CustomerView view;
    const Quote* quote = quote_at(job, session.route().record);
    view.there = quote != nullptr;
    view.chrome = chrome_of(session, "Your trailer", trailer_words(job));
    view.chrome.saved.clear();
    if (!view.there) return view;
    view.quote = quote->id;
    view.drafts = session.drafts();
    const bool begun = view.drafts.answer && view.drafts.answer->quote == quote->id.text();
    if (begun) view.answer = *view.drafts.answer;
    view.answer.quote = quote->id.text();
    if (!begun)
        if (const Visit* visit = job.only<Visit>()) view.answer.name = visit->customer;
    add_lines(job, *quote, view);
    for (const QuoteTax& tax : quote->taxes)
        view.tax += fmt::format("{}{} {} %: {}", view.tax.empty() ? "" : ", ", tax.name, tax.percent.text(),
                                range_words(tax.low, tax.high));
    view.total = price_words(quote->total_low, quote->total_high, quote->currency);
    if (quote->cores > 0) view.deposits = money_text(quote->cores) + " until the old parts are back";
    if (quote->expires) view.valid = quote->expires->text();
    view.draft = quote->state == QuoteState::drafted;
    view.can_answer = quote->state == QuoteState::offered;
    return view;
}

AnswerDraft with_line(AnswerDraft draft, int line, bool yes) {
    std::vector<int>& to = yes ? draft.accepted : draft.declined;
    const bool back = holds(to, line);
    erase(draft.accepted, line);
    erase(draft.declined, line);
    if (!back) to.insert(std::upper_bound(to.begin(), to.end(), line), line);
    return draft;
}

AnswerDraft with_all(AnswerDraft draft, const CustomerView& view, bool yes) {
    draft.accepted.clear();
    draft.declined.clear();
    for (const CustomerLine& line : view.lines) (yes ? draft.accepted : draft.declined).push_back(line.number);
    return draft;
}

}  // namespace cotter
