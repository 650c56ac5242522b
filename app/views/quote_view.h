// One quote with its lines, for the workshop. Plain values; no ImGui.
#pragma once

#include "app/views/quotes_view.h"

namespace cotter {

struct QuoteLineRow {
    int number = 0;
    std::string text;
    std::string price;
    std::string basis;   // the arithmetic
    std::string answer;  // "accepted by M. Grün, in person"; empty: none
};

struct QuoteView {
    Chrome chrome;
    bool there = false;
    Quote quote;
    std::string standing;
    std::string total;
    std::string per_corner;  // empty: none
    std::vector<QuoteLineRow> lines;
    std::vector<std::pair<std::string, std::string>> facts;  // taxes, deposits, last day, what was accepted
    std::vector<std::string> gaps;                           // what is missing, what is left over
    bool draft = false;
    bool offered = false;
};

[[nodiscard]] QuoteView quote_view(const Session& session);

}  // namespace cotter
