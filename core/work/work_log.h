// What was done, skipped without proof, read and set in a job, put together for people: the report's work log and the
// review screen. Derived from the records alone, so an old packet reads the same when procedures have changed. Pure;
// any thread.
#pragma once

#include <string>
#include <vector>

#include "core/survey/job.h"

namespace cotter {

// One procedure at one place.
struct LoggedRun {
    std::string procedure;
    Place place;
    std::string steps;    // "Know the trailer · Make it stand still": those done, in the order they were closed
    std::string skipped;  // "Bearings and seal (the hub stays on)": those that were not needed, and why
    int done = 0;
    Instant first;
    Instant last;
    std::string by;  // all who closed a step
};

// One step passed without its proof.
struct LoggedOverride {
    Place place;
    std::string step;  // "Pads in, friction to the rotor"
    std::string reason;
    Instant at;
    std::string by;
};

struct LoggedCaution {
    std::string title;
    std::string where;  // "Lift it, axle1-left · Hub off, axle1-left"
    int times = 0;
    Instant first;
    std::string by;
};

// What a second look at one torque, bearing, level or the bleeding says; empty when all is as planned.
struct LoggedCheck {
    Place place;
    std::string what;  // "wheel nuts, 120 lb-ft"
    bool proved = false;
    std::string remarks;  // "as planned", or each difference
};

struct WorkLog {
    std::vector<LoggedRun> runs;
    std::vector<LoggedOverride> overrides;
    std::vector<LoggedCaution> cautions;
    std::vector<LoggedCheck> checks;

    [[nodiscard]] bool empty() const { return runs.empty() && overrides.empty() && cautions.empty() && checks.empty(); }
};

// Checks are listed for every torque, bearing setting and level that has a value, and once for the bleeding.
[[nodiscard]] WorkLog work_log(const Job& job);

}  // namespace cotter
