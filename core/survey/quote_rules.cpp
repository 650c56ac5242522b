// The rules, one function a kind.
#include "core/survey/quote_rules.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

#include "core/base/hash.h"
#include "core/base/text.h"
#include "core/survey/json.h"

namespace cotter {

namespace {

bool money_fits(std::int64_t minor) {
    return minor >= 0 && minor <= kMostMoney;
}

void check_currency(const std::string& code, const RuleSink& sink) {
    const bool good =
        code.size() == 3 && std::all_of(code.begin(), code.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
    sink(good, fmt::format("'{}' is no currency code", one_line(code, 20)), "use three capital letters, as USD");
}

bool unit_suits(const Extent& extent) {
    const Unit* unit = find_unit(extent.amount.unit);
    if (unit == nullptr) return true;  // said already
    switch (extent.basis) {
        case Basis::volume:
            return unit->quantity == Quantity::volume;
        case Basis::length:
            return unit->quantity == Quantity::length;
        default:
            return extent.amount.unit == "1";
    }
}

void check_extent(const Extent& extent, bool may_be_none, const char* name, const RuleSink& sink) {
    const double value = extent.amount.number.value();
    sink(extent.basis != Basis::unsaid, fmt::format("the {} does not say what it counts", name),
         "say corners, pieces, volume or length");
    sink(unit_suits(extent), fmt::format("the {} is in a unit of something else", name), {});
    sink(may_be_none ? value >= 0 : value > 0, fmt::format("the {} must be more than nothing", name), {});
    const bool counted = extent.basis == Basis::corners || extent.basis == Basis::pieces;
    sink(!counted || (value == std::floor(value) && value <= 10'000),
         fmt::format("the {} is not a whole number up to 10,000", name), {});
}

// The sums that a reader without this program would make.
void check_sums(const Quote& r, const RuleSink& sink) {
    std::int64_t low = 0;
    std::int64_t high = 0;
    std::int64_t cores = 0;
    for (const QuoteLine& line : r.lines) {
        (line.kind == LineKind::core ? cores : low) += line.low;
        if (line.kind != LineKind::core) high += line.high;
    }
    for (const QuoteTax& tax : r.taxes) {
        low += tax.low;
        high += tax.high;
    }
    sink(low == r.total_low && high == r.total_high, "the quote's total is not the sum of its lines and taxes", {});
    sink(cores == r.cores, "the quote's deposits are not the sum of its core lines", {});
    sink(r.total_low <= r.total_high, "the quote's low total is above its high one", {});
}

void check_line(const Job& job, const QuoteLine& line, const RuleSink& sink) {
    const bool less = line.kind == LineKind::discount;
    const auto fits = [&](std::int64_t minor) { return less ? minor <= 0 && minor >= -kMostMoney : money_fits(minor); };
    sink(fits(line.low) && fits(line.high),
         fmt::format("the amount of line {} is {}", line.number,
                     less ? "not a discount (it must be below zero)" : "below zero or too large"),
         {});
    sink(!line.text.empty(), fmt::format("line {} does not say what it is for", line.number), {});
    sink(line.tax_percent.value() >= 0 && line.tax_percent.value() <= 100,
         fmt::format("the tax of line {} is not from 0 to 100 %", line.number), {});
    sink(line.packs >= 0 && line.packs <= 1'000'000, fmt::format("the packs of line {} are out of range", line.number),
         {});
    sink(!line.offer || job.find(*line.offer) != nullptr,
         fmt::format("the offer of line {} is not in the job", line.number), {});
    for (const Id<Need>& need : line.needs)
        sink(job.find(need) != nullptr, fmt::format("a need of line {} is not in the job", line.number), {});
}

void check_state(const Quote& r, const RuleSink& sink) {
    const bool drafted = r.state == QuoteState::drafted;
    sink(drafted == r.fingerprint.empty(),
         drafted ? "a drafted quote has no fingerprint yet" : "an offered quote has a fingerprint", {});
    sink(drafted || r.offered_at.has_value(), "an offered quote says when it was offered", {});
    sink(drafted || r.fingerprint.empty() || r.fingerprint == quote_fingerprint(r),
         "an offered quote cannot be changed", "make a new version of it");
}

}  // namespace

void check_rules(const Job& job, const Need& r, const RuleSink& sink) {
    sink(!r.item.empty(), "the need does not name an item", {});
    check_extent(r.wanted, true, "amount needed", sink);
    sink(r.spill_percent.value() >= 0 && r.spill_percent.value() <= 100, "the spill is not from 0 to 100 %", {});
    for (const Id<Finding>& finding : r.findings)
        sink(job.find(finding) != nullptr, "the need's finding is not in the job", {});
    const Trailer* trailer = job.only<Trailer>();
    for (const Place& place : r.places)
        sink(trailer == nullptr || trailer->has(place), fmt::format("the trailer has no place {}", place.text()), {});
}

void check_rules(const Job& job, const Offer& r, const RuleSink& sink) {
    sink(!r.supplier.empty() && !r.title.empty(), "an offer names its supplier and what is offered", {});
    check_currency(r.currency, sink);
    sink(money_fits(r.price), "the price is below zero or too large", {});
    sink(money_fits(r.core) && money_fits(r.freight), "a core charge or freight is below zero or too large", {});
    sink(r.lead_days >= 0 && r.lead_days <= 3'650, "the lead time is not from 0 to 3650 days", {});
    sink(r.warranty_months >= 0 && r.warranty_miles >= 0, "a warranty cannot be shorter than nothing", {});
    sink(!r.shot || job.find(*r.shot) != nullptr, "the offer's shot is not in the job", {});
    for (const Cover& cover : r.covers) {
        sink(!cover.item.empty(), "a cover does not name its item", {});
        check_extent(cover.extent, false, "amount covered", sink);
    }
}

void check_rules(const Job& job, const Quote& r, const RuleSink& sink) {
    sink(!r.name.empty(), "the quote has no name", {});
    check_currency(r.currency, sink);
    sink(r.version >= 1 && (r.version > 1) == r.replaces.has_value(),
         "a first version replaces none, a later one names the version before", {});
    sink(!r.replaces || (job.find(*r.replaces) != nullptr && *r.replaces != r.id),
         "the version before is not in the job", {});
    std::set<int> numbers;
    bool in_range = true;
    for (const QuoteLine& line : r.lines) {
        sink(line.number >= 1 && numbers.insert(line.number).second,
             "the lines' numbers are not different ones from 1 on", {});
        check_line(job, line, sink);
        in_range =
            in_range && std::min(line.low, line.high) >= -kMostMoney && std::max(line.low, line.high) <= kMostMoney;
    }
    for (const QuoteTax& tax : r.taxes) {
        sink(money_fits(tax.low) && money_fits(tax.high), "a tax is below zero or too large", {});
        in_range = in_range && money_fits(tax.low) && money_fits(tax.high);
    }
    if (in_range) check_sums(r, sink);
    sink(!r.not_to_exceed || (*r.not_to_exceed >= r.total_high && r.expires.has_value()),
         "a 'not to exceed' is at least the high total, and has a last day", {});
    check_state(r, sink);
    for (const Decision& decision : job.all<Decision>())
        sink(decision.quote != r.id || decision.fingerprint == r.fingerprint,
             "the quote was answered as it stood, so it cannot be changed", "make a new version of it");
}

void check_rules(const Job& job, const Decision& r, const RuleSink& sink) {
    const Quote* quote = job.find(r.quote);
    sink(!r.name.empty(), "the answer does not say who gave it", {});
    sink(quote != nullptr, "the answer's quote is not in the job", {});
    sink(!r.lines.empty(), "the answer is to no line", {});
    for (const PenStroke& stroke : r.signature)
        for (const TagPoint& spot : stroke.points)
            sink(spot.x >= 0 && spot.x <= 1 && spot.y >= 0 && spot.y <= 1, "the signature leaves its field", {});
    if (quote == nullptr) return;
    sink(quote->state != QuoteState::drafted, "only an offered quote can be answered", "offer it first");
    sink(r.fingerprint == quote->fingerprint, "the answer was given to another text than this quote's", {});
    for (const int number : r.lines)
        sink(std::any_of(quote->lines.begin(), quote->lines.end(), [&](auto& line) { return line.number == number; }),
             fmt::format("the quote has no line {}", number), {});
}

std::string quote_fingerprint(Quote quote) {
    quote.state = QuoteState::drafted;
    quote.fingerprint.clear();
    return sha256_hex(as_bytes(record_json(Record{quote})));
}

}  // namespace cotter
