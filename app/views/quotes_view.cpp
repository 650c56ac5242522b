// See quotes_view.h.
#include "app/views/quotes_view.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/quote/answer.h"
#include "core/quote/exact.h"

namespace cotter {

namespace {

std::string findings_words(const Job& job, const Need& need, std::optional<Grade>& worst) {
    std::string out;
    for (const Id<Finding>& id : need.findings) {
        const Finding* f = job.find(id);
        if (f == nullptr) continue;
        worst = worst ? std::max(*worst, f->grade) : f->grade;
        const std::string words = fmt::format("{}: {}", upper_first(f->component), f->defect);
        if (out.find(words) == std::string::npos) out += (out.empty() ? "" : "; ") + words;
    }
    return out;
}

NeedRow row_of(const Job& job, const Need& need) {
    NeedRow row;
    row.need = need;
    row.title = upper_first(need.item);
    row.out = need.left_out;
    const bool unknown = need.wanted.amount.number.value() == 0;
    row.amount = row.out ? "left out" : unknown ? "how much?" : extent_text(need.wanted);
    row.under = findings_words(job, need, row.worst);
    if (need.by_hand && !row.out)
        row.under = (need.findings.empty() ? "Asked for by hand" : "Changed by hand") + std::string() +
                    (row.under.empty() ? "" : ". " + row.under);
    return row;
}

std::string quote_under(const SideBySide& side) {
    const Quote& q = *side.quote;
    std::string out;
    if (q.corners > 0) out = fmt::format("{} a corner, ", range_words(side.per_corner_low, side.per_corner_high));
    out += fmt::format("{}, {}", ready_words(q.ready_days), warranty_words(side.warranty_months, side.warranty_labour));
    if (!q.missing.empty()) out += ". Missing: " + fmt::format("{}", fmt::join(q.missing, "; "));
    for (const Leftover& left : q.leftovers)
        out += fmt::format(". Left over: {} of {}", extent_text(left.extent), left.item);
    return upper_first(out);
}

}  // namespace

std::string range_words(std::int64_t low, std::int64_t high) {
    return low == high ? money_text(low) : fmt::format("{}–{}", money_text(low), money_text(high));
}
std::string price_words(std::int64_t low, std::int64_t high, const std::string& currency) {
    return range_words(low, high) + " " + currency;
}
std::string ready_words(int days) {
    return days == 0 ? "ready today"
                     : fmt::format("ready in {}", count_words(static_cast<std::size_t>(days), "day", "days"));
}
std::string warranty_words(int months, bool labour) {
    if (months == 0) return "no warranty said";
    return fmt::format("{} months' warranty{}", months, labour ? " with labour" : "");
}
std::string quote_title(const Quote& quote) {
    const std::string name = upper_first(quote.name);
    return quote.version > 1 ? fmt::format("{}, version {}", name, quote.version) : name;
}

const Quote* quote_at(const Job& job, const std::string& record) {
    const auto id = Uuid::parse(record);
    return id ? job.find(Id<Quote>{*id}) : nullptr;
}

std::vector<Quote> current_quotes(const Job& job) {
    std::vector<Quote> out;
    for (const Quote& q : job.all<Quote>())
        if (q.state != QuoteState::changed) out.push_back(q);
    return out;
}

QuoteTerms terms_of(const ShopTerms& shop, const Date& today) {
    QuoteTerms terms;
    terms.currency = shop.currency;
    terms.tax_name = shop.tax_name;
    terms.tax_percent = shop.tax_percent;
    terms.second_call_out = shop.second_call_out;
    if (shop.valid_days > 0) terms.expires = Date::from_days(today.days() + shop.valid_days);
    if (shop.hour_rate == 0) return terms;
    Labour work;
    work.text = "Work";
    work.by = LabourBy::actual_time;
    work.per_trailer = shop.hours_trailer;
    work.per_corner = shop.hours_corner;
    work.rate = shop.hour_rate;
    terms.labour.push_back(std::move(work));
    return terms;
}

QuotesView quotes_view(const Session& session, SortBy by) {
    const Job& job = session.job();
    const Date today = session.now().local_date();
    QuotesView view;
    view.chrome = chrome_of(session, "Quotes", trailer_words(job));
    for (const Need& need : job.all<Need>()) view.needs.push_back(row_of(job, need));
    for (const ReplaceRule& rule : replace_rules())
        if (std::none_of(job.all<Need>().begin(), job.all<Need>().end(),
                         [&](const Need& n) { return item_key(n.item) == item_key(rule.item); }))
            view.items.emplace_back(rule.item);
    view.drafts = session.drafts();
    const std::vector<Quote> quotes = current_quotes(job);
    for (const SideBySide& side : side_by_side(quotes, job.all<Offer>(), by)) {
        const Quote& q = *side.quote;
        view.quotes.push_back({q.id, quote_title(q), price_words(q.total_low, q.total_high, q.currency),
                               quote_under(side), std::string(name_of(standing(job, q, today)))});
    }
    view.offers = job.all<Offer>();
    view.shelved = session.shelf().size();
    view.settings = session.settings();
    view.terms = terms_of(view.settings.shop, today);
    const bool any = std::any_of(view.needs.begin(), view.needs.end(), [](const NeedRow& n) { return !n.out; });
    view.can_draft = any && !view.offers.empty();
    return view;
}

}  // namespace cotter
