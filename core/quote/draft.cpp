// Lines, one function a kind.
#include "core/quote/draft.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

#include "core/quote/exact.h"
#include "core/quote/market.h"
#include "core/quote/totals.h"

namespace cotter {

namespace {

struct Span {
    std::int64_t low = 0;
    std::int64_t high = 0;
};

Number count(std::int64_t n) {
    return Number::parse(std::to_string(n)).value();
}

class Drafter {
public:
    Drafter(std::span<const Need> needs, std::span<const Offer> offers, const Choice& choice, const QuoteTerms& terms,
            const QuoteFace& face)
        : needs_(needs), offers_(offers), choice_(choice), terms_(terms) {
        quote_.id = face.id;
        quote_.name = face.name;
        quote_.aim = face.aim;
        quote_.at = face.stamp.at;
        quote_.by = face.stamp.by;
    }

    Result<Quote> draft() {
        COTTER_TRY(check_terms());
        COTTER_TRY(add_parts());
        COTTER_TRY(add_freight());
        add_call_out();
        for (const Labour& labour : terms_.labour) COTTER_TRY(add_labour(labour));
        if (terms_.labour.empty()) COTTER_TRY(add_book_labour());
        if (terms_.seized)
            add({LineKind::labour, terms_.seized->text, "allowance, charged only as far as it is used"},
                {0, terms_.seized->up_to}, terms_.seized->taxed);
        if (terms_.supplies) COTTER_TRY(add_supplies(*terms_.supplies));
        for (const Charge& charge : terms_.charges)
            add({charge.kind, charge.text, charge.law.empty() ? "the shop's own charge" : "by law: " + charge.law},
                {charge.low, charge.high}, charge.taxed);
        if (terms_.discount) COTTER_TRY(add_discount(*terms_.discount));
        COTTER_TRY(add_cores());
        COTTER_TRY(add_up(quote_, terms_.tax_name));
        COTTER_TRY(add_face());
        return std::move(quote_);
    }

private:
    struct Words {
        LineKind kind;
        std::string text;
        std::string basis;
    };

    QuoteLine& add(Words words, Span amount, bool taxed) {
        QuoteLine line;
        line.number = static_cast<int>(quote_.lines.size()) + 1;
        line.kind = words.kind;
        line.text = std::move(words.text);
        line.basis = std::move(words.basis);
        line.low = amount.low;
        line.high = amount.high;
        if (taxed) line.tax_percent = terms_.tax_percent;
        return quote_.lines.emplace_back(std::move(line));
    }

    static Result<> check_span(std::int64_t low, std::int64_t high, const std::string& text) {
        if (low < 0 || high > kLargestAmount)
            return fail(Errc::refused, "an amount is below zero or too large", text, "correct it");
        if (low > high) return fail(Errc::refused, "the low amount is above the high one", text, "correct it");
        return {};
    }

    Result<> check_terms() {
        quote_.currency = terms_.currency;
        COTTER_TRY(check_span(terms_.second_call_out, terms_.second_call_out, "second call-out"));
        for (const Charge& charge : terms_.charges) COTTER_TRY(check_span(charge.low, charge.high, charge.text));
        if (terms_.seized) COTTER_TRY(check_span(0, terms_.seized->up_to, terms_.seized->text));
        if (terms_.tax_percent.value() < 0 || terms_.tax_percent.value() > 100)
            return fail(Errc::refused, "the tax is not from 0 to 100 %", terms_.tax_percent.text());
        for (const Labour& labour : terms_.labour) {
            COTTER_TRY(check_span(labour.flat_low, labour.flat_high, labour.text));
            COTTER_TRY(check_span(labour.rate, labour.rate, labour.text));
        }
        return {};
    }

    Result<> add_parts() {
        for (const Bought& bought : choice_.bought) {
            const Offer& offer = offers_[bought.offer];
            COTTER_ASSIGN(const std::int64_t amount, times(offer.price, count(bought.packs)));
            std::string covers;
            for (const Cover& cover : offer.covers)
                covers += fmt::format("{}{} of {}", covers.empty() ? "" : ", ", extent_text(cover.extent), cover.item);
            QuoteLine& line =
                add({LineKind::parts, fmt::format("{} ({})", offer.title, offer.supplier),
                     fmt::format("{} × {}; one covers {}", bought.packs, money_text(offer.price), covers)},
                    {amount, amount}, terms_.tax_parts && !offer.untaxed);
            line.offer = offer.id;
            line.packs = bought.packs;
            for (const std::size_t need : bought.needs) line.needs.push_back(needs_[need].id);
        }
        return {};
    }

    Result<> add_freight() {
        std::vector<std::int64_t> freight;
        const auto delivery = deliveries(offers_, freight);
        std::map<std::size_t, std::string> used;
        for (const Bought& bought : choice_.bought)
            used.emplace(delivery[bought.offer], offers_[bought.offer].supplier);
        for (const auto& [index, supplier] : used)
            if (freight[index] > 0)
                add({LineKind::freight, "Freight, " + supplier, "once for all from there"},
                    {freight[index], freight[index]}, terms_.tax_freight);
        return {};
    }

    void add_call_out() {
        if (choice_.call_out == 0) return;
        add({LineKind::call_out, "Second call-out",
             fmt::format("parts have to be waited for, up to {} days", choice_.ready_days)},
            {choice_.call_out, choice_.call_out}, terms_.tax_call_out);
    }

    // Hours to the thousandth, so that sums of hours are exact too.
    static Result<std::int64_t> thousandths(const Number& hours) {
        if (hours.value() < 0) return fail(Errc::refused, "hours cannot be below zero", hours.text());
        return times(1000, hours);
    }

    Result<Span> hours_of(const Labour& labour) const {
        COTTER_ASSIGN(const std::int64_t trailer, thousandths(labour.per_trailer));
        COTTER_ASSIGN(const std::int64_t axle, thousandths(labour.per_axle));
        COTTER_ASSIGN(const std::int64_t corner, thousandths(labour.per_corner));
        COTTER_ASSIGN(const std::int64_t low, thousandths(labour.hours_low));
        COTTER_ASSIGN(const std::int64_t high, thousandths(labour.hours_high));
        const std::int64_t set_up = trailer + axle * axles_touched(needs_) + corner * corners_touched(needs_);
        return Span{low + set_up, high + set_up};
    }

    static Number hours_number(std::int64_t thousandth) {
        std::string text = fmt::format("{}.{:03}", thousandth / 1000, thousandth % 1000);
        while (text.back() == '0') text.pop_back();
        if (text.back() == '.') text.pop_back();
        return Number::parse(text).value();
    }

    Result<> add_labour(const Labour& labour) {
        if (labour.by == LabourBy::flat) {
            labour_.low += labour.flat_low;
            labour_.high += labour.flat_high;
            add({LineKind::labour, labour.text, "flat"}, {labour.flat_low, labour.flat_high}, labour.taxed);
            return {};
        }
        COTTER_ASSIGN(const Span hours, hours_of(labour));
        if (hours.low > hours.high)
            return fail(Errc::refused, "the low hours are above the high ones", labour.text, "correct them");
        if (hours.high == 0) {  // nobody entered any: nothing is not a price
            without_hours_.push_back("hours not entered: " + labour.text);
            return {};
        }
        const Number low = hours_number(hours.low);
        const Number high = hours_number(hours.high);
        Span amount;
        COTTER_ASSIGN(amount.low, times(labour.rate, low));
        COTTER_ASSIGN(amount.high, times(labour.rate, high));
        labour_.low += amount.low;
        labour_.high += amount.high;
        std::string basis = hours.low == hours.high ? low.text() : fmt::format("{}–{}", low.text(), high.text());
        basis += fmt::format(" h × {}, {}", money_text(labour.rate), name_of(labour.by));
        if (!labour.source.empty()) basis += fmt::format(" ({})", labour.source);
        add({LineKind::labour, labour.text, std::move(basis)}, amount, labour.taxed);
        return {};
    }

    // Without lines of the shop's own making: operation by operation, by the hours that it entered.
    Result<> add_book_labour() {
        COTTER_ASSIGN(BookLabour book, book_labour(needs_, terms_.hours));
        if (terms_.hour_rate == 0 && !book.lines.empty()) {
            without_hours_.emplace_back("hourly rate not entered");
            book.lines.clear();
        }
        for (const BookedHours& line : book.lines) {
            Labour labour;
            labour.text = line.text;
            labour.by = line.source == "actual" ? LabourBy::actual_time : LabourBy::book_time;
            labour.hours_low = hours_number(line.low);
            labour.hours_high = hours_number(line.high);
            labour.rate = terms_.hour_rate;
            labour.source = labour.by == LabourBy::book_time ? line.source : std::string{};
            COTTER_TRY(add_labour(labour));
        }
        if (!book.not_entered.empty())
            without_hours_.push_back(fmt::format("hours not entered: {}", fmt::join(book.not_entered, ", ")));
        if (!book.not_counted.empty())
            without_hours_.push_back(
                fmt::format("how many is not known, so no hours: {}", fmt::join(book.not_counted, ", ")));
        return {};
    }

    Result<> add_supplies(const Supplies& s) {
        if (s.floor < 0 || (s.cap && *s.cap < s.floor))
            return fail(Errc::refused, "the cap is below the floor, or the floor below zero", s.text, "correct them");
        const Span of = s.of == SuppliesOf::labour ? labour_ : Span{choice_.goods, choice_.goods};
        Span amount;
        COTTER_ASSIGN(amount.low, percent_of(of.low, s.percent));
        COTTER_ASSIGN(amount.high, percent_of(of.high, s.percent));
        const std::int64_t cap = s.cap.value_or(kLargestAmount);
        amount.low = std::clamp(amount.low, s.floor, cap);
        amount.high = std::clamp(amount.high, s.floor, cap);
        std::string basis = fmt::format("{} % of {}", s.percent.text(), name_of(s.of));
        if (s.floor > 0) basis += fmt::format(", at least {}", money_text(s.floor));
        if (s.cap) basis += fmt::format(", at most {}", money_text(*s.cap));
        add({LineKind::supplies, s.text, std::move(basis)}, amount, s.taxed);
        return {};
    }

    // What lines of one tax rate come to.
    struct Base {
        Number percent;
        Span sum;
    };
    [[nodiscard]] std::vector<Base> bases() const {
        std::vector<Base> out;
        for (const QuoteLine& line : quote_.lines) {
            auto it = std::find_if(out.begin(), out.end(),
                                   [&](const Base& base) { return base.percent.value() == line.tax_percent.value(); });
            if (it == out.end()) it = out.insert(out.end(), {line.tax_percent, {}});
            it->sum.low += line.low;
            it->sum.high += line.high;
        }
        return out;
    }

    Result<> add_discount(const Discount& d) {
        if (d.amount < 0 || d.percent.value() < 0 || d.percent.value() > 100)
            return fail(Errc::refused, "a discount is an amount from 0 or a percentage from 0 to 100", d.text);
        COTTER_ASSIGN(const Totals totals, totals_of(quote_.lines, terms_.tax_name));
        if (d.amount > (d.before_tax ? totals.lines_low : totals.total_low))
            return fail(Errc::refused, "the discount is more than what it is taken from", d.text, "lower it");
        const bool by_percent = d.percent.value() > 0;
        const std::string basis = (by_percent ? d.percent.text() + " %" : std::string("fixed")) +
                                  (d.before_tax ? ", before tax" : ", after tax");
        if (!d.before_tax) {
            Span off{d.amount, d.amount};
            if (by_percent) {
                COTTER_ASSIGN(off.low, percent_of(totals.total_low, d.percent));
                COTTER_ASSIGN(off.high, percent_of(totals.total_high, d.percent));
            }
            add({LineKind::discount, d.text, basis}, {-off.low, -off.high}, false);
            return {};
        }
        return by_percent ? take_percent(d, basis) : take_amount(d, basis);
    }

    Result<> take_percent(const Discount& d, const std::string& basis) {
        for (const Base& base : bases()) {
            Span off;
            COTTER_ASSIGN(off.low, percent_of(base.sum.low, d.percent));
            COTTER_ASSIGN(off.high, percent_of(base.sum.high, d.percent));
            if (off.high == 0) continue;
            add({LineKind::discount, d.text, basis}, {-off.low, -off.high}, false).tax_percent = base.percent;
        }
        return {};
    }

    // In proportion to the rates' low sums; the last one takes what rounding leaves.
    Result<> take_amount(const Discount& d, const std::string& basis) {
        auto all = bases();
        std::erase_if(all, [](const Base& base) { return base.sum.low <= 0; });
        std::int64_t sum = 0;
        for (const Base& base : all) sum += base.sum.low;
        std::int64_t left = d.amount;
        for (std::size_t i = 0; i < all.size(); ++i) {
            std::int64_t product = 0;
            if (__builtin_mul_overflow(d.amount, all[i].sum.low, &product))
                return fail(Errc::refused, "the discount is too large to count with", d.text,
                            "give it as a percentage");
            const std::int64_t off = i + 1 == all.size() ? left : product / sum;
            left -= off;
            add({LineKind::discount, d.text, basis}, {-off, -off}, false).tax_percent = all[i].percent;
        }
        return {};
    }

    Result<> add_cores() {
        for (const Bought& bought : choice_.bought) {
            const Offer& offer = offers_[bought.offer];
            if (offer.core == 0) continue;
            COTTER_ASSIGN(const std::int64_t amount, times(offer.core, count(bought.packs)));
            QuoteLine& line =
                add({LineKind::core, fmt::format("Core deposit, {} ({})", offer.title, offer.supplier),
                     fmt::format("{} × {}, given back with the old part", bought.packs, money_text(offer.core))},
                    {amount, amount}, false);
            line.offer = offer.id;
            line.packs = bought.packs;
        }
        return {};
    }

    Result<> add_face() {
        quote_.corners = corners_touched(needs_);
        quote_.ready_days = choice_.ready_days;
        quote_.missing = choice_.missing;
        quote_.missing.insert(quote_.missing.end(), without_hours_.begin(), without_hours_.end());
        quote_.leftovers = choice_.leftovers;
        for (Leftover& left : quote_.leftovers) left.to = terms_.leftovers_to;
        quote_.high_because = terms_.high_because;
        quote_.approval_limit = terms_.approval_limit;
        quote_.not_to_exceed = terms_.not_to_exceed;
        quote_.expires = terms_.expires;
        if (terms_.not_to_exceed && !terms_.expires)
            return fail(Errc::refused, "a 'not to exceed' needs a last day", quote_.name, "enter until when it holds");
        if (terms_.not_to_exceed && *terms_.not_to_exceed < quote_.total_high)
            return fail(Errc::refused, "the 'not to exceed' is below the high total",
                        fmt::format("{} and {}", money_text(*terms_.not_to_exceed), money_text(quote_.total_high)),
                        "raise it, or lower what makes it high");
        return {};
    }

    std::span<const Need> needs_;
    std::span<const Offer> offers_;
    const Choice& choice_;
    const QuoteTerms& terms_;
    Quote quote_;
    Span labour_;
    std::vector<std::string> without_hours_;
};

}  // namespace

Result<Quote> draft_quote(std::span<const Need> needs, std::span<const Offer> offers, const Choice& choice,
                          const QuoteTerms& terms, const QuoteFace& face) {
    return Drafter(needs, offers, choice, terms, face).draft();
}

Result<Quote> draft_for(std::span<const Need> needs, std::span<const Offer> offers, Aim aim, const QuoteTerms& terms,
                        const Id<Quote>& id, const QuoteStamp& stamp) {
    const BuyTerms buying{terms.currency,  terms.second_call_out, terms.tax_percent,
                          terms.tax_parts, terms.tax_freight,     terms.tax_call_out};
    COTTER_ASSIGN(const Choice choice, choose(needs, offers, aim, buying));
    return draft_quote(needs, offers, choice, terms, {id, std::string(name_of(aim)), aim, stamp});
}

}  // namespace cotter
