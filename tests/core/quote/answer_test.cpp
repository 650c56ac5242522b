// From draft to done: frozen when offered, answered line by line, new versions; why one quote is dearer.
#include "core/quote/answer.h"

#include <doctest/doctest.h>

#include "core/quote/explain.h"
#include "core/quote/totals.h"
#include "core/survey/json.h"
#include "core/survey/quote_rules.h"
#include "core/survey/validate.h"
#include "tests/core/quote/shop.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

Job with(const Job& job, std::vector<Change> changes) {
    const auto after = apply(job, edit_of(std::move(changes), 30));
    REQUIRE_MESSAGE(after, (after ? "" : after.error().line()));
    return *after;
}

std::string refusal(const Job& job, const Record& record) {
    const auto after = apply(job, edit_of({Put{record, {}}}, 31));
    return after ? "accepted" : after.error().what;
}

Quote drafted(const std::vector<Offer>& offers, int id, const char* name, std::int64_t second_call_out = 0) {
    QuoteTerms terms;
    terms.tax_percent = *Number::parse("8.25");
    terms.second_call_out = second_call_out;
    auto quote = draft_for(pads_and_hardware(4), offers, Aim::cheapest, terms, {numbered(id)}, stamp()).value();
    quote.name = name;
    return quote;
}

// The sample job with needs for its finding, offers, and a quote that was offered.
struct Offered {
    Quote quote = offered(drafted(all_sources(), 300, "cheapest"), moment(40)).value();
    Job job;

    Offered() {
        std::vector<Change> changes;
        for (Need need : pads_and_hardware(4)) {
            need.findings = {sample_finding().id};
            changes.push_back(Put{need, {}});
        }
        for (const Offer& offer : all_sources()) changes.push_back(Put{offer, {}});
        changes.push_back(Put{quote, {}});
        job = with(sample_job(), changes);
    }
    Decision answer(int id, std::vector<int> lines, Said said, int minute = 50) const {
        Decision d;
        d.id = {numbered(id)};
        d.quote = quote.id;
        d.fingerprint = quote.fingerprint;
        d.lines = std::move(lines);
        d.said = said;
        d.name = "H. Owner";
        d.signature = {{{{0.1, 0.5}, {0.4, 0.25}}}};
        d.at = moment(minute);
        d.by = "A. Tester";
        return d;
    }
};

}  // namespace

TEST_CASE("quote: an offered one is frozen, an answered one even more") {
    Offered o;
    Quote changed = o.quote;
    changed.lines[0].low = changed.lines[0].high = 1;
    CHECK(refusal(o.job, Record{changed}) == "the quote's total is not the sum of its lines and taxes");
    changed = o.quote;
    changed.note = "and a hat";
    CHECK(refusal(o.job, Record{changed}) == "an offered quote cannot be changed");
    changed.fingerprint = quote_fingerprint(changed);
    CHECK(refusal(o.job, Record{changed}) == "accepted");
    const Job answered = with(o.job, {Put{o.answer(400, {1}, Said::accepted), {}}});
    CHECK(refusal(answered, Record{changed}) == "the quote was answered as it stood, so it cannot be changed");
    CHECK(refusal(answered, Record{done(answered, o.quote).value()}) == "accepted");
    CHECK_FALSE(offered(o.quote, moment(41)));
}

TEST_CASE("quote: answers need a name, an offered text and lines that are there") {
    Offered o;
    Decision d = o.answer(400, {1}, Said::accepted);
    CHECK(refusal(o.job, Record{d}) == "accepted");
    d.name.clear();
    CHECK(refusal(o.job, Record{d}) == "the answer does not say who gave it");
    d = o.answer(400, {77}, Said::accepted);
    CHECK(refusal(o.job, Record{d}) == "the quote has no line 77");
    d = o.answer(400, {1}, Said::accepted);
    d.fingerprint = std::string(64, '0');
    CHECK(refusal(o.job, Record{d}) == "the answer was given to another text than this quote's");
    d = o.answer(400, {1}, Said::accepted);
    d.signature[0].points[0].x = 1.5;
    CHECK(refusal(o.job, Record{d}) == "the signature leaves its field");
}

TEST_CASE("quote: where it stands follows from the last answers") {
    Offered o;
    const Date today{2026, 5, 14};
    const std::size_t lines = o.quote.lines.size();
    REQUIRE(lines == 1);  // the kit alone
    CHECK(standing(o.job, drafted(all_sources(), 9, "x"), today) == Standing::drafted);
    CHECK(standing(o.job, o.quote, today) == Standing::offered);
    Job job = with(o.job, {Put{o.answer(400, {1}, Said::declined), {}}});
    CHECK(standing(job, o.quote, today) == Standing::declined);
    CHECK(accepted_total(job, o.quote)->high == 0);
    CHECK_FALSE(done(job, o.quote));
    job = with(job, {Put{o.answer(401, {1}, Said::accepted, 55), {}}});
    CHECK(standing(job, o.quote, today) == Standing::accepted);
    CHECK(accepted_total(job, o.quote)->high == o.quote.total_high);
    Quote late = o.quote;
    late.expires = Date{2026, 5, 13};
    CHECK(standing(o.job, late, today) == Standing::expired);
}

TEST_CASE("quote: a change is a new version; the old one stays with its answers") {
    Offered o;
    Job job = with(o.job, {Put{o.answer(400, {1}, Said::accepted), {}}});
    job = with(job, next_version(job, o.quote, {numbered(301)}, stamp()).value());
    const Quote& next = *job.find(Id<Quote>{numbered(301)});
    CHECK(next.version == 2);
    CHECK(next.state == QuoteState::drafted);
    CHECK(standing(job, *job.find(o.quote.id), {2026, 5, 14}) == Standing::changed);
    CHECK(answers_to(job, next)[0].decision == nullptr);
    CHECK(problems_of(job).empty());
    CHECK_FALSE(next_version(job, next, {numbered(302)}, stamp()));
    CHECK_FALSE(next_version(job, *job.find(o.quote.id), {numbered(302)}, stamp()));
}

TEST_CASE("quote: a declined line for a bad finding is listed for the hand-over") {
    Offered o;
    Finding finding = sample_finding();
    finding.grade = Grade::do_not_tow;
    Job job = with(o.job, {Put{finding, {}}});
    CHECK(declined_lines(job).empty());
    job = with(job, {Put{o.answer(400, {1}, Said::declined), {}}});
    const auto declined = declined_lines(job);
    REQUIRE(declined.size() == 1);
    CHECK(declined[0].worst == Grade::do_not_tow);
    CHECK(declined_text(declined[0]) ==
          "Line 1, brake pads (C): declined by H. Owner, 2026-05-14, in person. Do not tow: hub cap, below line.");
    finding.outcome = Outcome::repaired;
    CHECK(declined_lines(with(job, {Put{finding, {}}})).empty());
    CHECK(declined_lines(with(job, {Put{o.answer(401, {1}, Said::accepted, 59), {}}})).empty());
}

TEST_CASE("quote: records survive JSON and undo") {
    Offered o;
    const Job job = with(o.job, {Put{o.answer(400, {1}, Said::accepted), {}}});
    CHECK(job_from_json(job_json(job)).value() == job);
    const Edit remove = edit_of({Remove{RecordKind::decision, numbered(400)}});
    CHECK(apply(apply(job, remove).value(), inverse(job, remove)).value() == job);
    CHECK(refusal(job, Record{Need{}}) == "the record has no id");
}

TEST_CASE("explain: every cent of a difference has its reason") {
    const Quote a = drafted(source_b(), 300, "B");
    const Quote b = drafted(source_c(), 301, "C", 8'500);
    const auto why = why_dearer(a, b, pads_and_hardware(4)).value();
    std::int64_t sum = 0;
    for (const Difference& d : why.reasons) sum += d.beside ? 0 : d.high;
    CHECK(sum == a.total_high - b.total_high);
    // 175.80 + 14.00 + 14.50 tax = 204.30 against 149.00 + 85.00 + 12.29 = 246.29
    CHECK(why.headline == "B is 41.99 cheaper than C");
    REQUIRE(why.reasons.size() == 4);
    CHECK(why.reasons[0].what == "Call-out");
    CHECK(why.reasons[0].high == -8'500);
    CHECK(why.reasons[1].what == "brake pads and pad hardware kit");
    CHECK(why.reasons[1].high == 2'680);
    CHECK(
        why.reasons[1].words ==
        "brake pads (B): 2 × 69.50; one covers 2 corners of brake pads; pad hardware kit (B): 4 × 9.20; one covers 1 "
        "corner of pad hardware kit, against brake pads (C): 1 × 149.00; one covers 4 corners of brake pads, 4 corners "
        "of pad hardware kit");
    CHECK(why.reasons[2].what == "Freight");
    CHECK(why.reasons[3].what == "Tax");
    CHECK(why.remarks == std::vector<std::string>{"C has to wait 5 days for parts"});
    Quote other = b;
    other.currency = "CAD";
    CHECK_FALSE(why_dearer(a, other, pads_and_hardware(4)));
    CHECK(why_dearer(a, a, pads_and_hardware(4))->reasons.empty());
}

TEST_CASE("explain: quotes beside each other, by what matters") {
    std::vector<Quote> quotes{drafted(source_c(), 301, "C", 8'500), drafted(source_b(), 300, "B")};
    for (Quote& quote : quotes) quote.corners = 4;
    CHECK(side_by_side(quotes, all_sources(), SortBy::total)[0].quote->name == "B");
    CHECK(side_by_side(quotes, all_sources(), SortBy::soonest)[0].quote->name == "B");
    CHECK(side_by_side(quotes, all_sources(), SortBy::total)[0].per_corner_high == 5'108);  // 204.30 / 4, half-up
}
