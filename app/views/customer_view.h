// A quote as the customer reads it on the turned phone: what, why, how much; no inner notes. Plain values; no ImGui.
#pragma once

#include "app/views/quotes_view.h"

namespace cotter {

enum class LineAnswerNow { open, yes, no };

struct CustomerLine {
    int number = 0;
    std::string what;
    std::vector<std::string> why;  // "Wheel nuts: one missing", one a finding
    std::optional<Grade> grade;    // the worst of them
    std::string price;
    LineAnswerNow answer = LineAnswerNow::open;  // as drafted, or as given last
};

struct CustomerView {
    Chrome chrome;
    bool there = false;
    Id<Quote> quote;
    std::vector<CustomerLine> lines;
    std::string tax;       // "Tax 8.25 %: 31.20"; empty: none
    std::string total;     // "412.30–498.10 USD"
    std::string deposits;  // beside the total; empty: none
    std::string valid;     // "Valid until 2026-05-28"; empty: no last day
    std::string danger;    // what stays when a 'do not tow' line is declined
    std::string said_yes;  // the total of what is accepted as it stands
    std::string last;      // "Answered by M. Grün, in person, 2026-05-14 12:40"
    bool draft = false;
    bool can_answer = false;
    AnswerDraft answer;  // as begun; a fresh one otherwise
    Drafts drafts;
};

[[nodiscard]] CustomerView customer_view(const Session& session);

// The draft with one line, or with all of the view's lines, answered anew. `yes` again takes it back for one line.
[[nodiscard]] AnswerDraft with_line(AnswerDraft draft, int line, bool yes);
[[nodiscard]] AnswerDraft with_all(AnswerDraft draft, const CustomerView& view, bool yes);

}  // namespace cotter
