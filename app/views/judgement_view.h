// One place judged: every reason, what is not known, the same place at earlier visits. Plain values; no ImGui.
#pragma once

#include "app/views/chrome.h"
#include "app/views/reason_item.h"

namespace cotter {

struct JudgementView {
    Chrome chrome;
    std::string key;  // of the page
    std::optional<Grade> grade;
    std::string word;  // "Repair", "Cannot tell"
    std::vector<ReasonItem> reasons;
    std::vector<UnknownItem> unknowns;
    std::vector<std::string> changed;  // what became better by the work: "Brake: do not tow when found"
    Route record;                      // where it is recorded
};

// Of the route: a corner or station, an axle ("axle 2"), or the trailer as a whole.
[[nodiscard]] JudgementView judgement_view(const Session& session);

}  // namespace cotter
