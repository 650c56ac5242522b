// Fluids: how much a brake system takes, what air costs, which may not meet, and whether a hub's level is proved.
// For the level and bleed screens. Pure; any thread. assets/procedures/fluids.json holds the table of fluids.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/fields.h"
#include "core/survey/job.h"

namespace cotter {

// ---- volumes; all in m³, Pa, m, m² -------------------------------------------------------------------------------

[[nodiscard]] double stroke_volume(double piston_area, double stroke);
[[nodiscard]] double bore_volume(double bore, double length);  // of a round bore: a master cylinder, a pipe
// What trapped air of `volume` (at the outside pressure) costs when it is pressed to `line_pressure` (gauge).
struct AirCost {
    double left = 0;  // its volume under pressure
    double lost = 0;  // fluid that only squeezes air
};
[[nodiscard]] AirCost air_cost(double volume, double line_pressure);
// Fluid to have at hand for a flush: twice to three times what the system holds (common practice).
struct FlushPlan {
    double least = 0;
    double most = 0;
};
[[nodiscard]] FlushPlan flush_plan(double lines, double calipers, double reservoir);

[[nodiscard]] double oil_growth(double volume, double warmer_by_kelvin);   // of gear oil in a hub
[[nodiscard]] double level_shift(double across, double slope_in_degrees);  // of a level line over `across`

// ---- which fluids may meet ----------------------------------------------------------------------------------------

enum class FluidUse { brake, hub };
constexpr auto names(FluidUse) {
    return name_list("brake", "hub");
}

struct FluidKind {
    std::string id;  // "DOT 4"
    FluidUse use = FluidUse::brake;
    std::string family;              // fluids of one family may meet
    std::vector<std::string> words;  // what stands on bottles, lower case; the longest match wins
    std::vector<HubKind> hubs;       // hub: which kinds it is for
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("use", s.use);
        f.must("family", s.family);
        f.must("words", s.words);
        f.may("hubs", s.hubs);
    }
};

struct FluidClash {
    std::string family;
    std::string with;
    std::string why;
    std::string source;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("family", s.family);
        f.must("with", s.with);
        f.must("why", s.why);
        f.must("source", s.source);
    }
};

struct FluidTable {
    std::vector<FluidKind> kinds;
    std::vector<FluidClash> clashes;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("kinds", s.kinds);
        f.must("clashes", s.clashes);
    }
    // The kind that a product's words name ("DOT 4, sealed bottle"), or nullptr.
    [[nodiscard]] const FluidKind* find(std::string_view product) const;
};
[[nodiscard]] Result<FluidTable> fluids_from_json(std::string_view json);

enum class Mixing { may, must_not, unknown };  // `unknown` is never 'may': ask the maker
struct MixVerdict {
    Mixing mixing = Mixing::unknown;
    std::string words;
    std::string source;
};
[[nodiscard]] MixVerdict may_mix(const FluidTable& table, std::string_view product, std::string_view with);
// Is this product for such a hub at all?
[[nodiscard]] MixVerdict fits_hub(const FluidTable& table, std::string_view product, HubKind hub);

// ---- levels --------------------------------------------------------------------------------------------------------

inline constexpr int kSettleMinutes = 5;  // least time between spinning a hub and looking; 5 to 10 are usual

struct LevelRemark {
    bool blocks = true;
    std::string words;
};
// What keeps a level from being closed as good, or asks for a second look. Empty: at its line, settled.
[[nodiscard]] std::vector<LevelRemark> check_level(const Level& level);
[[nodiscard]] bool proves_level(const std::vector<LevelRemark>& remarks);
// A hub that took less than half or more than twice what its mate on the axle took: words, or nothing.
[[nodiscard]] std::optional<std::string> differs_from_mate(const Job& job, const Level& level);

}  // namespace cotter
