// See quote_view.h.
#include "app/views/quote_view.h"

#include <fmt/format.h>

#include "core/quote/answer.h"
#include "core/quote/exact.h"
#include "core/quote/totals.h"

namespace cotter {

namespace {

QuoteLineRow row_of(const LineAnswer& answer) {
    const QuoteLine& line = *answer.line;
    QuoteLineRow row{line.number, upper_first(line.text), range_words(line.low, line.high), line.basis, {}};
    if (line.kind == LineKind::core) row.price += " deposit";
    if (const Decision* d = answer.decision)
        row.answer = fmt::format("{} by {}, {}, {} {}", upper_first(name_of(d->said)), d->name, name_of(d->channel),
                                 day_words(d->at), clock_words(d->at));
    return row;
}

void add_facts(const Job& job, QuoteView& view) {
    const Quote& q = view.quote;
    for (const QuoteTax& tax : q.taxes)
        view.facts.emplace_back(fmt::format("{} {} %", tax.name, tax.percent.text()), range_words(tax.low, tax.high));
    if (q.cores > 0) view.facts.emplace_back("Deposits until the old parts are back", money_text(q.cores));
    if (q.not_to_exceed) view.facts.emplace_back("Not to exceed", money_text(*q.not_to_exceed));
    if (q.expires) view.facts.emplace_back("Valid until", q.expires->text());
    if (!q.high_because.empty()) view.facts.emplace_back("The higher price, when", q.high_because);
    view.facts.emplace_back("Parts", ready_words(q.ready_days));
    const auto accepted = accepted_total(job, q);
    if (accepted && accepted->high > 0)
        view.facts.emplace_back("Said yes to", price_words(accepted->low, accepted->high, q.currency));
}

}  // namespace

QuoteView quote_view(const Session& session) {
    const Job& job = session.job();
    QuoteView view;
    const Quote* quote = quote_at(job, session.route().record);
    view.there = quote != nullptr;
    view.chrome = chrome_of(session, view.there ? quote_title(*quote) : "Quote", trailer_words(job));
    if (!view.there) return view;
    view.quote = *quote;
    view.standing = upper_first(name_of(standing(job, *quote, session.now().local_date())));
    view.total = price_words(quote->total_low, quote->total_high, quote->currency);
    if (const auto per = per_corner(*quote)) view.per_corner = range_words(per->low, per->high);
    for (const LineAnswer& answer : answers_to(job, *quote)) view.lines.push_back(row_of(answer));
    add_facts(job, view);
    for (const std::string& missing : quote->missing) view.gaps.push_back("Missing: " + missing);
    for (const Leftover& left : quote->leftovers)
        view.gaps.push_back(
            fmt::format("Left over: {} of {}, for {}", extent_text(left.extent), left.item, name_of(left.to)));
    view.draft = quote->state == QuoteState::drafted;
    view.offered = quote->state == QuoteState::offered;
    return view;
}

}  // namespace cotter
