// Volumes and mixing.
#include "core/work/fluid.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

#include "core/base/text.h"
#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

constexpr double kOutsidePressure = 101'325;  // Pa
constexpr double kOilGrowth = 7.0e-4;         // per kelvin, mineral gear oil

const FluidClash* clash_of(const FluidTable& table, const std::string& a, const std::string& b) {
    for (const FluidClash& c : table.clashes)
        if ((c.family == a && c.with == b) || (c.family == b && c.with == a)) return &c;
    return nullptr;
}

}  // namespace

double stroke_volume(double piston_area, double stroke) {
    return piston_area * stroke;
}

double bore_volume(double bore, double length) {
    return std::numbers::pi / 4 * bore * bore * length;
}

AirCost air_cost(double volume, double line_pressure) {
    const double left = volume * kOutsidePressure / (kOutsidePressure + line_pressure);
    return {left, volume - left};
}

FlushPlan flush_plan(double lines, double calipers, double reservoir) {
    const double system = lines + calipers + reservoir;
    return {2 * system, 3 * system};
}

double oil_growth(double volume, double warmer_by_kelvin) {
    return volume * kOilGrowth * warmer_by_kelvin;
}

double level_shift(double across, double slope_in_degrees) {
    return across * std::tan(slope_in_degrees * std::numbers::pi / 180);
}

const FluidKind* FluidTable::find(std::string_view product) const {
    const std::string text = ascii_lower(product);
    const FluidKind* best = nullptr;
    std::size_t longest = 0;
    for (const FluidKind& kind : kinds)
        for (const std::string& word : kind.words)
            if (word.size() > longest && text.find(word) != std::string::npos) {
                best = &kind;
                longest = word.size();
            }
    return best;
}

Result<FluidTable> fluids_from_json(std::string_view json) {
    COTTER_ASSIGN(const Json parsed, parse_json(json));
    return fields_from_json<FluidTable>(parsed);
}

MixVerdict may_mix(const FluidTable& table, std::string_view product, std::string_view with) {
    const FluidKind* a = table.find(product);
    const FluidKind* b = table.find(with);
    if (a == nullptr || b == nullptr)
        return {Mixing::unknown,
                fmt::format("it is not known what '{}' is: read the label and ask its maker before it meets another",
                            one_line(a == nullptr ? product : with, 60)),
                ""};
    if (a->use != b->use)
        return {Mixing::must_not,
                fmt::format("{} is for the {}, {} for the {}: they never meet", a->id, name_of(a->use), b->id,
                            name_of(b->use)),
                ""};
    if (const FluidClash* clash = clash_of(table, a->family, b->family))
        return {Mixing::must_not, fmt::format("{} and {} must not mix: {}", a->id, b->id, clash->why), clash->source};
    if (a->family != b->family)
        return {Mixing::unknown, fmt::format("whether {} and {} may mix is not known: ask the maker", a->id, b->id),
                ""};
    return {Mixing::may,
            a->id == b->id
                ? fmt::format("both are {}", a->id)
                : fmt::format("{} and {} are of one family; the label's own type goes before it", a->id, b->id),
            ""};
}

MixVerdict fits_hub(const FluidTable& table, std::string_view product, HubKind hub) {
    const FluidKind* kind = table.find(product);
    if (kind == nullptr)
        return {Mixing::unknown, fmt::format("it is not known what '{}' is: read the label", one_line(product, 60)),
                ""};
    const bool fits = std::find(kind->hubs.begin(), kind->hubs.end(), hub) != kind->hubs.end();
    if (fits) return {Mixing::may, fmt::format("{} is made for {} hubs", kind->id, name_of(hub)), ""};
    return {Mixing::must_not,
            fmt::format("{} does not go into this hub ({}): the bearings would run dry or the seal fail", kind->id,
                        name_of(hub)),
            ""};
}

}  // namespace cotter
