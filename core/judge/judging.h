// What the judges of single subjects share. Each looks at the values of one state of a job and adds reasons and
// unknowns; none knows of another. For core/judge. Pure; any thread.
#pragma once

#include <functional>
#include <vector>

#include "core/judge/values.h"

namespace cotter {

struct Bench {
    const Job& job;
    const Trailer* trailer = nullptr;
    State state = State::now;
    Instant now;
    Values values;
    std::vector<Limit> limits;  // the register with the job's own makers' figures
    std::vector<Ground> reasons;
    std::vector<Unknown> unknowns;

    [[nodiscard]] const Axle* axle_of(const Place& place, int axle = 0) const;  // nullptr when there is none
    [[nodiscard]] std::vector<Place> corners() const;
    // The limits that bound `what` there. A maker's figure puts practice aside; makers that contradict each other leave
    // none of theirs, and an unknown.
    [[nodiscard]] std::vector<const Limit*> limits_at(std::string_view what, const Place& place, int axle = 0);
    void tell(Ground reason) { reasons.push_back(std::move(reason)); }
    void cannot_tell(Unknown unknown);  // once
};

// A value, read or computed, to be held against every limit on `what`.
struct Subject {
    Place place;
    int axle = 0;
    std::string component;
    std::string what;
    double si = 0;
    double step_si = 0;
    std::string text;  // "2.6 mm (inner)"
    std::vector<std::string> steps;
    std::string todo;  // added when it is beyond a limit
    Uuid record;
};
// One ground a limit. Gives the number of limits there were.
std::size_t hold_against_limits(Bench& bench, const Subject& subject);

// The ground of a computed value without a limit of the register behind it.
[[nodiscard]] Ground plain_reason(const Place& place, std::string component, std::string subject, Grade grade,
                                  std::string says, std::string source, LimitMark mark);

// Same order everywhere: "inner" 0, "outer" 1, else −1 by the point's words or the place's wheel.
[[nodiscard]] int inner_or_outer(const Value& value);

void judge_findings(Bench& bench);
void judge_inspection(Bench& bench);      // items that are not OK
void judge_plain_readings(Bench& bench);  // every value against the limits on its name, the worst point of each place
void judge_linings(Bench& bench);         // imbalance inner to outer, left to right
void judge_rotors(Bench& bench);          // thickness variation, cut, runout with end play; drums
void judge_tyres(Bench& bench);           // age, cold and hot pressure, capacity
void judge_hubs(Bench& bench);            // temperatures
void judge_hydraulics(Bench& bench);      // hold, fluid, line pressure against the brake kind, levels
void judge_breakaway(Bench& bench);
void judge_weights(Bench& bench);  // gross, axles, tongue, surge ratio
void judge_missing(Bench& bench);  // what should have been measured and was not

}  // namespace cotter
