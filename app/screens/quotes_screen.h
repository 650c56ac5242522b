// The quote page. What goes out: needs taken, changed or left out, the shop's terms, quotes to be worked out.
#pragma once

#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/quotes_view.h"

namespace cotter {

// What the keypad is open for.
enum class QuoteNumber { need, fresh_need, rate, hours_trailer, hours_corner, call_out, tax, packs };

struct QuotesState {
    SortBy by = SortBy::total;
    std::optional<Id<Need>> need;
    bool adding = false;  // a need without a finding
    std::string item;     // of it
    bool terms_open = false;
    bool hand_open = false;
    std::vector<std::int64_t> packs;  // by hand, of each offer
    std::optional<KeypadModel> pad;
    QuoteNumber number = QuoteNumber::need;
    std::size_t pack = 0;
    std::string wrong;  // why the last number keyed in was not taken
};

void draw_quotes(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out);

// Sheets over it (quotes_sheets.cpp): at most one is open.
void draw_quotes_sheets(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out);

}  // namespace cotter
