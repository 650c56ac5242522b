// The quote page: what the findings call for, and the quotes for it beside each other. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"
#include "core/quote/draft.h"
#include "core/quote/explain.h"

namespace cotter {

struct NeedRow {
    Need need;
    std::string title;   // "Brake pads"
    std::string amount;  // "4 corners", "left out", "how much?"
    std::string under;   // "by hand. Pad: worn (repair); …"
    std::optional<Grade> worst;
    bool out = false;
};

struct QuoteRow {
    Id<Quote> id;
    std::string title;  // "Cheapest"
    std::string price;  // "412.30–498.10 USD"
    std::string under;  // "103.08 a corner, ready in 2 days, 12 months. Missing: …"
    std::string standing;
};

struct QuotesView {
    Chrome chrome;
    std::vector<NeedRow> needs;
    std::vector<QuoteRow> quotes;
    std::vector<Offer> offers;  // of the job
    std::size_t shelved = 0;
    QuoteTerms terms;
    Settings settings;
    std::vector<std::string> items;  // often needed, and not here yet
    Drafts drafts;
    bool can_draft = false;
};

[[nodiscard]] QuotesView quotes_view(const Session& session, SortBy by);

// The shop's terms for a quote made on `today`.
[[nodiscard]] QuoteTerms terms_of(const ShopTerms& shop, const Date& today);

// "412.30" or "412.30–498.10", and with the currency.
[[nodiscard]] std::string range_words(std::int64_t low, std::int64_t high);
[[nodiscard]] std::string price_words(std::int64_t low, std::int64_t high, const std::string& currency);
// "ready today", "ready in 3 days".
[[nodiscard]] std::string ready_words(int days);
[[nodiscard]] std::string warranty_words(int months, bool labour);
// "Cheapest", "Cheapest, version 2".
[[nodiscard]] std::string quote_title(const Quote& quote);
// The quote of the route; nullptr when it is not there any more.
[[nodiscard]] const Quote* quote_at(const Job& job, const std::string& record);
// Those that no newer version replaces.
[[nodiscard]] std::vector<Quote> current_quotes(const Job& job);

}  // namespace cotter
