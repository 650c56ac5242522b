// Two quotes against each other: why one is dearer, every cent of it. Plain values; no ImGui.
#pragma once

#include "app/views/quotes_view.h"

namespace cotter {

struct ReasonRow {
    std::string what;
    std::string amount;  // "+12.00", "−3.50"
    std::string words;
};

struct CompareView {
    Chrome chrome;
    std::vector<std::pair<std::string, std::string>> quotes;  // id and title of each that can be chosen
    std::string a, b;                                         // ids of the two; empty: too few quotes
    std::string headline;
    std::vector<ReasonRow> reasons;
    std::string sum;                   // "Together +46.50 = 512.10 − 465.60"
    std::vector<std::string> remarks;  // deposits, leftovers, waiting
    std::string problem;               // why they cannot be compared
};

// The route's record names two quotes, "ID ID"; without them the dearest is weighed against the cheapest.
[[nodiscard]] CompareView compare_view(const Session& session);

}  // namespace cotter
