// How long linings, rotors and tread may last, from this visit and earlier ones. Pure; any thread.
//
// Method: the same point of the same part measured at two visits gives a rate (core/judge/wear.h). Between visits a
// repaired finding on the part breaks the series: what was before it says nothing of the new part. The way run comes
// from the hub counter at both visits, or from the later visit's "distance run since the last visit", or else it is the
// days between. Uncertainty of a thickness: one and a half steps of the instrument, 0.15 mm when the step is not known;
// of the way: 5 %, 20 % when the owner estimated it, none for days.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/judge/limit.h"
#include "core/judge/wear.h"

namespace cotter {

struct ForecastPoint {
    Date date;
    double way = 0;        // from the first point, in the forecast's way unit
    double thickness = 0;  // mm
};

struct Forecast {
    Place place;
    std::string what;   // "pad thickness"
    std::string where;  // the point of it that ends first
    WearAnswer answer = WearAnswer::no_way;
    std::string says;                   // one line: the remaining life to plan on, or why it cannot be told
    std::vector<std::string> steps;     // the arithmetic
    std::vector<ForecastPoint> points;  // measured, oldest first, of this part only
    std::string way_unit;               // "mi", "km" or "days"
    double limit_mm = 0;
    std::string limit, source;  // "at least 3 mm", who says so
    WearLife life;              // in mm and the way unit
};

// Visits to one trailer: the same VIN, or the same unit where one has none.
[[nodiscard]] bool same_trailer(const Job& a, const Job& b);

// One a place and reading that has at least one point now and a lower limit. `earlier` in any order; visits to other
// trailers (another unit or VIN) are left out.
[[nodiscard]] std::vector<Forecast> forecasts_of(const Job& job, std::span<const Job> earlier,
                                                 std::span<const Limit> limits);

}  // namespace cotter
