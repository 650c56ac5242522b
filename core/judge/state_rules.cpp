// The rules that are entered.
#include "core/judge/state_rules.h"

#include <algorithm>
#include <array>

namespace cotter {

namespace {

constexpr std::array kRules{
    StateRule{"US-PA", 0, IdlerRule::all_wheels, 0, {"67 Pa. Code 175.123", Evidence::partly}},
    StateRule{"US-SD", 3000, IdlerRule::not_entered, 0, {"South Dakota's brake rule for trailers", Evidence::read}},
    StateRule{"US-TX", 4500, IdlerRule::not_entered, 0, {"Texas's brake rule for trailers", Evidence::read}},
    StateRule{"US-VA", 3000, IdlerRule::allowed_under, 10000, {"19VAC30-70-100", Evidence::read}},
};

}  // namespace

std::span<const StateRule> state_rules() {
    return kRules;
}

const StateRule* state_rule(std::string_view region) {
    const auto it = std::find_if(kRules.begin(), kRules.end(), [&](const StateRule& r) { return r.region == region; });
    return it == kRules.end() ? nullptr : &*it;
}

bool is_foreign(std::string_view region) {
    return !region.empty() && region != "US" && !region.starts_with("US-");
}

double first_brake_line_lb() {
    double least = 0;
    for (const StateRule& rule : kRules)
        if (rule.brakes_above_lb > 0) least = least == 0 ? rule.brakes_above_lb : std::min(least, rule.brakes_above_lb);
    return least;
}

}  // namespace cotter
