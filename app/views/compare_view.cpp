// See compare_view.h.
#include "app/views/compare_view.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/quote/exact.h"

namespace cotter {

namespace {

std::string signed_money(std::int64_t minor) {
    return minor < 0 ? "−" + money_text(-minor) : "+" + money_text(minor);
}

void explain(const Quote& a, const Quote& b, const Job& job, CompareView& view) {
    const auto why = why_dearer(a, b, job.all<Need>());
    if (!why) {
        view.problem = why.error().line();
        return;
    }
    view.headline = upper_first(why->headline);
    for (const Difference& d : why->reasons) {
        if (d.beside)
            view.remarks.push_back(
                fmt::format("{} beside the total: {}, {}", upper_first(d.what), signed_money(d.high), d.words));
        else
            view.reasons.push_back({upper_first(d.what), signed_money(d.high), d.words});
    }
    for (const std::string& remark : why->remarks) view.remarks.push_back(upper_first(remark));
    view.sum = fmt::format("{} − {} = {}", money_text(a.total_high), money_text(b.total_high), signed_money(why->high));
}

}  // namespace

CompareView compare_view(const Session& session) {
    const Job& job = session.job();
    CompareView view;
    view.chrome = chrome_of(session, "Why it is dearer", trailer_words(job));
    std::vector<Quote> quotes = current_quotes(job);
    for (const Quote& q : quotes) view.quotes.emplace_back(q.id.text(), quote_title(q));
    if (quotes.size() < 2) return view;
    const std::string& record = session.route().record;
    const auto blank = std::min(record.find(' '), record.size());
    const Quote* a = quote_at(job, record.substr(0, blank));
    const Quote* b = blank < record.size() ? quote_at(job, record.substr(blank + 1)) : nullptr;
    const auto [least, most] = std::minmax_element(
        quotes.begin(), quotes.end(), [](const Quote& x, const Quote& y) { return x.total_high < y.total_high; });
    if (a == nullptr) a = &*most;
    if (b == nullptr) b = least->id == a->id ? &*most : &*least;
    view.a = a->id.text();
    view.b = b->id.text();
    if (a->id == b->id)
        view.problem = "Choose two different quotes.";
    else
        explain(*a, *b, job, view);
    return view;
}

}  // namespace cotter
