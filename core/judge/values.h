// A job's readings as single values that can be judged: one a point, each at its own corner, in SI, with the text that
// people see. What cannot be used is told apart with its reason. For core/judge. Pure; any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/judge/judgement.h"
#include "core/judge/state.h"

namespace cotter {

struct Value {
    Place place;
    int axle = 0;  // for points that name a whole axle, else 0
    std::string what;
    std::string where;  // the point's words without the corner's name
    Amount amount;
    double si = 0;
    double step_si = 0;  // of the instrument; 0 unknown
    const Reading* reading = nullptr;

    [[nodiscard]] std::string text() const;  // "2.6 mm (inner, leading end)"
};

struct Values {
    std::vector<Value> all;
    std::vector<Unknown> unknowns;  // not measured, not accessible, implausible, out of date

    [[nodiscard]] std::vector<const Value*> of(std::string_view what) const;  // everywhere; prefix names included
    [[nodiscard]] std::vector<const Value*> of(std::string_view what, const Place& corner) const;  // wheels included
    [[nodiscard]] bool unknown(std::string_view what, const Place& corner) const;  // is its absence explained already?
};

// `now`: no reading may be later. For State::now the readings after the work count; one from before it counts only
// when no later one is there and nothing it belongs to has been repaired since.
[[nodiscard]] Values values_of(const Job& job, State state, const Instant& now);

[[nodiscard]] Place corner_of(const Place& place);  // without the wheel

}  // namespace cotter
