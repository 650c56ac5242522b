// Reasons and things not known, in words ready to read: for the summary and for the pages of judged places.
// Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/nav.h"
#include "app/settings.h"
#include "core/judge/judge_job.h"

namespace cotter {

// One reason, spelled out.
struct ReasonItem {
    std::string key;
    Grade grade = Grade::serviceable;
    std::string place;    // "Axle 1, left"
    std::string subject;  // "Pad thickness"
    std::string says;
    std::string reading, limit;  // may be empty
    std::string source;          // "law: …", "common practice: …; confirm with the maker"
    std::vector<std::string> steps;
    std::string todo;
    bool practice = false;        // only common practice: a maker's figure would decide
    std::optional<Route> figure;  // where the maker's figure is entered or changed; none: it has no limit
    Route record;                 // the place it was recorded at
};

struct UnknownItem {
    std::string key;
    std::string place;
    std::string subject;
    std::string because;
    std::string todo;
    bool essential = false;
    std::optional<Route> figure;  // when a maker's figure is what lacks
    std::optional<Route> plate;   // when what the placard or label says is what lacks
    Route record;                 // where it is recorded
};

// Of the node alone, or of all that is under it.
[[nodiscard]] std::vector<ReasonItem> reasons_of(const Judgement& node, SideWords words);
[[nodiscard]] std::vector<UnknownItem> unknowns_of(const Judgement& node, SideWords words);
[[nodiscard]] ReasonItem reason_item(const Ground& ground, SideWords words);
[[nodiscard]] UnknownItem unknown_item(const Unknown& unknown, SideWords words);

// "Axle 1, left", "Axle 2" for an axle as a whole, "Whole trailer".
[[nodiscard]] std::string judged_words(const Place& place, int axle, SideWords words);

}  // namespace cotter
