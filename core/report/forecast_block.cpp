// How long parts may last, from this visit and earlier ones, at a place.
#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"

namespace cotter {

namespace {

std::string measured(const Forecast& f) {
    std::string out;
    for (const ForecastPoint& point : f.points)
        out += fmt::format("{}{}: {:.2f} mm", out.empty() ? "" : "\n", point.date.text(), point.thickness);
    return out;
}

std::string told(const Forecast& f) {
    std::string out = f.says;
    for (const std::string& step : f.steps) out += "\n" + step;
    return out;
}

}  // namespace

void draw_forecasts_at(Writing& w, const Place& place) {
    if (!w.judged || w.in.earlier.empty()) return;
    Table table({{"Part", 1.2}, {"Measured", 1.3}, {"How long it may last", 3.2}, {"Down to", 1.8}});
    for (const Forecast& f : w.judged->forecasts) {
        if (without_wheel(f.place) != place || f.points.size() < 2) continue;
        table.add({Cell::bold(joined({capital(f.what), f.where}, "\n")), measured(f), told(f),
                   joined({f.limit, f.source}, "\n")});
    }
    table.draw(w.sheet, "Wear since earlier visits");
}

}  // namespace cotter
