// 'May it be towed?': the answer with its reason, place by place, what is not known, what is to come, how it was at
// earlier visits. Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/views/chrome.h"
#include "app/views/reason_item.h"

namespace cotter {

struct JudgedPlace {
    std::string label;  // "Axle 1, left"
    std::string under;  // the gravest reason, or why nothing can be said
    std::string value;  // "2 not known"; empty: all is
    std::optional<Grade> grade;
    Route route;
};

// A point or end of a drawing of wear: the way from the first measurement, and the thickness.
struct PlotPoint {
    double way = 0, thickness = 0;
};

struct ForecastItem {
    std::string title;  // "Axle 1, left: pad thickness, inner, leading end"
    std::string says;
    std::string source;  // "at least 2.4 mm; maker: …, page 9"
    std::vector<std::string> steps;
    std::vector<PlotPoint> points;
    double limit = 0;
    std::optional<double> end, end_early, end_late;  // the way at which the limit is met; none: it cannot be told
    std::string first, last, ends;                   // under the drawing: the days measured, and the end
    std::string top, bottom;                         // beside it: the greatest thickness, the limit
};

struct VisitLine {
    std::string day;
    std::string word;    // "Not before the repair"
    std::string answer;  // the whole of it
};

struct SummaryView {
    Chrome chrome;
    Towing towing = Towing::cannot_tell;
    std::string word;    // "No", "Cannot tell"
    std::string answer;  // the reason for it
    std::string caveat;
    std::string trouble;              // why there are no limits; empty: there are
    std::vector<ReasonItem> reasons;  // behind the answer, the gravest first
    std::vector<JudgedPlace> places;
    std::vector<UnknownItem> unknowns;  // essential ones first, at most kMostUnknown
    std::size_t more_unknown = 0;       // beyond those
    std::vector<ForecastItem> forecasts;
    std::vector<std::string> not_foretold;  // a line each, why not
    std::vector<VisitLine> visits;          // newest first
    std::string since;                      // "with 2025-03-28"; empty: no earlier visit
    std::string inspection;                 // "12 of 55 items answered", "not begun"
};

inline constexpr std::size_t kMostUnknown = 12;

[[nodiscard]] SummaryView summary_view(const Session& session);

// For rows that lead to it: "May it be towed? No".
[[nodiscard]] std::string_view towing_word(Towing towing);
[[nodiscard]] std::string towing_question(const Summary& summary);

}  // namespace cotter
