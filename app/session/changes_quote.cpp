// Changes about prices: needs, offers, quotes and the answers to them. See changes.h.
#include <algorithm>

#include "app/session/changes.h"
#include "core/quote/answer.h"
#include "core/quote/called_for.h"
#include "core/quote/extent.h"

namespace cotter {

namespace {

QuoteStamp stamp_of(const Stamp& stamp) {
    return {stamp.at, stamp.by};
}

unexpected<Error> no_such(const char* what) {
    return fail(Errc::refused, std::string("there is no such ") + what);
}

std::vector<Need> needs_to_buy(const Job& job) {
    std::vector<Need> out;
    for (const Need& need : job.all<Need>())
        if (!need.left_out) out.push_back(need);
    return out;
}

// The quote of this aim that counts: the last one that no other replaces.
const Quote* current(const Job& job, Aim aim) {
    const Quote* found = nullptr;
    for (const Quote& q : job.all<Quote>())
        if (q.aim == aim && q.state != QuoteState::changed) found = &q;
    return found;
}

bool buys_something(const Quote& quote) {
    return std::any_of(quote.lines.begin(), quote.lines.end(),
                       [](const QuoteLine& l) { return l.kind == LineKind::parts; });
}

// A draft keeps its id and what it replaces when it is worked out anew.
Quote in_place_of(Quote fresh, const Quote* draft) {
    if (draft == nullptr) return fresh;
    fresh.id = draft->id;
    fresh.version = draft->version;
    fresh.replaces = draft->replaces;
    return fresh;
}

}  // namespace

Result<Changes> changes_of(const Job& job, const DeriveNeeds&, const Stamp& stamp) {
    Changes out;
    for (Need& need : derive_needs(job, {}, stamp_of(stamp), stamp.random)) out.emplace_back(Put{std::move(need), {}});
    if (!out.empty()) return out;
    for (const Finding& f : job.all<Finding>())
        if (const auto why = why_no_part(job, f);
            f.outcome == Outcome::open && f.grade >= Grade::repair && !why.empty())
            return fail(Errc::refused, "the findings call for nothing new", f.component + ", " + f.defect,
                        std::string(why));
    return fail(Errc::refused, "the findings call for nothing new");
}

Result<Changes> changes_of(const Job&, const PutNeed& c, const Stamp& stamp) {
    Need need = c.need;
    if (need.id.nil()) need.id = stamp.new_id<Need>();
    need.by_hand = true;
    need.at = stamp.at;
    need.by = stamp.by;
    return Changes{Put{std::move(need), {}}};
}

Result<Changes> changes_of(const Job& job, const LeaveOutNeed& c, const Stamp& stamp) {
    const Need* old = job.find(c.need);
    if (old == nullptr) return no_such("need");
    Need need = *old;
    need.left_out = c.out;
    need.at = stamp.at;
    need.by = stamp.by;
    return Changes{Put{std::move(need), {}}};
}

Result<Changes> changes_of(const Job&, const PutOffer& c, const Stamp& stamp) {
    Offer offer = c.offer;
    if (offer.id.nil()) offer.id = stamp.new_id<Offer>();
    offer.at = stamp.at;
    offer.by = stamp.by;
    return Changes{Put{std::move(offer), {}}};
}

Result<Changes> changes_of(const Job& job, const RemoveOffer& c, const Stamp&) {
    if (job.find(c.offer) == nullptr) return no_such("offer");
    for (const Quote& quote : job.all<Quote>())
        for (const QuoteLine& line : quote.lines)
            if (line.offer == c.offer) return fail(Errc::refused, "a quote buys from this offer", quote.name);
    return Changes{Remove{RecordKind::offer, c.offer.uuid}};
}

Result<Changes> changes_of(const Job& job, const DraftQuotes& c, const Stamp& stamp) {
    const std::vector<Need> needs = needs_to_buy(job);
    if (needs.empty()) return fail(Errc::refused, "nothing is needed yet", {}, "take the needs from the findings");
    Changes out;
    for (const Aim aim : {Aim::cheapest, Aim::soonest, Aim::best_warranty, Aim::maker_supplied}) {
        const Quote* old = current(job, aim);
        if (old != nullptr && old->state != QuoteState::drafted) continue;
        COTTER_ASSIGN(Quote quote,
                      draft_for(needs, job.all<Offer>(), aim, c.terms, stamp.new_id<Quote>(), stamp_of(stamp)));
        if (buys_something(quote)) out.emplace_back(Put{in_place_of(std::move(quote), old), {}});
    }
    if (out.empty())
        return fail(Errc::refused, "there is nothing to work out", {},
                    "enter an offer for what is needed, or make a new version of a quote that was offered");
    return out;
}

Result<Changes> changes_of(const Job& job, const DraftByHand& c, const Stamp& stamp) {
    const std::vector<Need> needs = needs_to_buy(job);
    const Quote* old = current(job, Aim::by_hand);
    if (old != nullptr && old->state != QuoteState::drafted)
        return fail(Errc::refused, "the quote by hand was offered already", {}, "make a new version of it first");
    const BuyTerms buy{c.terms.currency,  c.terms.second_call_out, c.terms.tax_percent,
                       c.terms.tax_parts, c.terms.tax_freight,     c.terms.tax_call_out};
    COTTER_ASSIGN(const Choice choice, chosen_by_hand(needs, job.all<Offer>(), c.packs, buy));
    const QuoteFace face{stamp.new_id<Quote>(), "by hand", Aim::by_hand, stamp_of(stamp)};
    COTTER_ASSIGN(Quote quote, draft_quote(needs, job.all<Offer>(), choice, c.terms, face));
    if (!buys_something(quote)) return fail(Errc::refused, "nothing was chosen", {}, "say how many packs of an offer");
    return Changes{Put{in_place_of(std::move(quote), old), {}}};
}

Result<Changes> changes_of(const Job& job, const RemoveQuote& c, const Stamp&) {
    const Quote* quote = job.find(c.quote);
    if (quote == nullptr) return no_such("quote");
    if (quote->state != QuoteState::drafted)
        return fail(Errc::refused, "what was offered is kept", quote->name, "make a new version of it");
    return Changes{Remove{RecordKind::quote, c.quote.uuid}};
}

Result<Changes> changes_of(const Job& job, const OfferQuote& c, const Stamp& stamp) {
    const Quote* quote = job.find(c.quote);
    if (quote == nullptr) return no_such("quote");
    COTTER_ASSIGN(Quote frozen, offered(*quote, stamp.at));
    return Changes{Put{std::move(frozen), {}}};
}

Result<Changes> changes_of(const Job& job, const RenewQuote& c, const Stamp& stamp) {
    const Quote* quote = job.find(c.quote);
    if (quote == nullptr) return no_such("quote");
    return next_version(job, *quote, stamp.new_id<Quote>(), stamp_of(stamp));
}

Result<Changes> changes_of(const Job& job, const AnswerQuote& c, const Stamp& stamp) {
    const auto id = Uuid::parse(c.answer.quote);
    const Quote* quote = id ? job.find(Id<Quote>{*id}) : nullptr;
    if (quote == nullptr) return no_such("quote");
    if (quote->state != QuoteState::offered)
        return fail(Errc::refused, "only an offered quote can be answered", quote->name, "offer it first");
    if (c.answer.name.empty()) return fail(Errc::refused, "the answer has no name", {}, "say who answered");
    Changes out;
    const auto answered = [&](const std::vector<int>& lines, Said said) {
        if (lines.empty()) return;
        Decision d;
        d.id = stamp.new_id<Decision>();
        d.quote = quote->id;
        d.fingerprint = quote->fingerprint;
        d.lines = lines;
        d.said = said;
        d.name = c.answer.name;
        d.channel = c.answer.channel;
        d.signature = c.answer.signature;
        d.at = stamp.at;
        d.by = stamp.by;
        out.emplace_back(Put{std::move(d), {}});
    };
    answered(c.answer.accepted, Said::accepted);
    answered(c.answer.declined, Said::declined);
    if (out.empty()) return fail(Errc::refused, "no line was answered", quote->name);
    return out;
}

}  // namespace cotter
