// A quote's way from draft to done: offering freezes it, answers are given line by line, a change is a new version.
// All functions give values to put into the job by an Edit; none changes anything itself. Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/quote/needs.h"
#include "core/survey/edit.h"

namespace cotter {

// The quote frozen as it is offered, with its fingerprint. `refused`: not a draft, no lines, or past its last day.
[[nodiscard]] Result<Quote> offered(const Quote& draft, const Instant& at);

// The changes that replace an offered quote: the old one `changed` (kept, with its answers), and a draft of the next
// version under `fresh`, with the old one's content. `refused`: still a draft (change it), or replaced or done already.
[[nodiscard]] Result<std::vector<Change>> next_version(const Job& job, const Quote& old, const Id<Quote>& fresh,
                                                       const QuoteStamp& stamp);

// The quote marked done: the work accepted from it is finished. `refused`: nothing of it was accepted.
[[nodiscard]] Result<Quote> done(const Job& job, const Quote& quote);

// The answer that counts for each line, in the quote's order: the last one given; nullptr while there is none.
struct LineAnswer {
    const QuoteLine* line = nullptr;
    const Decision* decision = nullptr;
    [[nodiscard]] bool accepted() const { return decision != nullptr && decision->said == Said::accepted; }
    [[nodiscard]] bool declined() const { return decision != nullptr && decision->said == Said::declined; }
};
[[nodiscard]] std::vector<LineAnswer> answers_to(const Job& job, const Quote& quote);

enum class Standing { drafted, offered, expired, accepted, part_accepted, declined, changed, done };
constexpr auto names(Standing) {
    return name_list("drafted", "offered", "expired", "accepted", "part accepted", "declined", "changed", "done");
}
// Where the quote stands on `today`. Core deposits need no answer. Accepted: all lines; part accepted: some lines, the
// others declined or open; declined: none and at least one declined.
[[nodiscard]] Standing standing(const Job& job, const Quote& quote, const Date& today);

// What was said yes to: total of the accepted lines with their taxes, for the order and the bill.
struct AcceptedTotal {
    std::int64_t low = 0;
    std::int64_t high = 0;
    std::int64_t cores = 0;  // of all core lines whose offer was accepted
};
[[nodiscard]] Result<AcceptedTotal> accepted_total(const Job& job, const Quote& quote);

// Work that was offered and declined although a finding says 'repair' or 'do not tow': the hand-over lists it, with
// who declined it and when. Only what counts: quotes not replaced, the last answer, and no other quote's accepted line
// for the same need.
struct DeclinedLine {
    const Quote* quote = nullptr;
    const QuoteLine* line = nullptr;
    const Decision* decision = nullptr;
    std::vector<const Finding*> findings;  // graded 'repair' or 'do not tow', still not repaired
    Grade worst = Grade::repair;
};
[[nodiscard]] std::vector<DeclinedLine> declined_lines(const Job& job);

// "Line 3, hub seal (Feldrain Parts (invented)): declined by M. Grün, 2026-05-14, in person. Do not tow: wheel nuts,
// one missing."
[[nodiscard]] std::string declined_text(const DeclinedLine& declined);

}  // namespace cotter
