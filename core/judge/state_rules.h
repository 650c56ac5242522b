// What states say about brakes on trailers that no federal rule binds. Only rules whose text somebody has seen, at
// least in part; a state that is not here has no rule entered, and then nobody can say that it allows anything.
// Constant data; any thread.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/trade/law.h"

namespace cotter {

// On an axle without brakes beside a braked one.
enum class IdlerRule { not_entered, allowed_under, all_wheels };

struct StateRule {
    std::string_view region;     // ISO 3166-2: "US-TX"
    double brakes_above_lb = 0;  // gross weight above which brakes are required; 0: not entered
    IdlerRule idler = IdlerRule::not_entered;
    double idler_below_lb = 0;  // allowed_under: trailers rated below it
    Law law;
};

[[nodiscard]] std::span<const StateRule> state_rules();
[[nodiscard]] const StateRule* state_rule(std::string_view region);  // nullptr: none entered
// A country whose rules are not those of the United States: "DE", "CA-ON". False for "US", "US-TX" and for nothing.
[[nodiscard]] bool is_foreign(std::string_view region);
// The lightest weight at which any state that is entered asks for brakes.
[[nodiscard]] double first_brake_line_lb();

}  // namespace cotter
