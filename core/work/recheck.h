// What is due when after a job: derived from its records by rules with their sources (assets/procedures/rechecks.json).
// For the hand-over, the office's due list and the report. Pure; any thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/fields.h"
#include "core/survey/job.h"

namespace cotter {

// What in a job calls for a re-check.
enum class Cause {
    always,
    wheel_off,
    hub_opened,
    hub_oil,
    grease_hub,
    electric_brake,
    brake_work,
    brake_fluid,
    u_bolts,
    surge_actuator,
    inspection
};
constexpr auto names(Cause) {
    return name_list("always", "wheel off", "hub opened", "hub oil", "grease hub", "electric brake", "brake work",
                     "brake fluid", "U-bolts", "surge actuator", "inspection");
}

struct RecheckRule {
    std::string id;
    Cause after = Cause::always;
    std::string title;
    std::vector<Number> miles;  // after the job, each one a check of its own
    int days = 0;               // after the job, or every so many days; 0: not by date
    bool each_trip = false;
    bool law = false;  // else common practice, which the maker's own replaces
    std::string source;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("after", s.after);
        f.must("title", s.title);
        f.may("miles", s.miles);
        f.may("days", s.days);
        f.may("each_trip", s.each_trip);
        f.may("law", s.law);
        f.must("source", s.source);
    }
};

struct RecheckRules {
    std::vector<RecheckRule> rules;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("rules", s.rules);
    }
};
[[nodiscard]] Result<RecheckRules> rechecks_from_json(std::string_view json);

struct Recheck {
    std::string rule;
    std::string title;
    std::string places;             // "axle1-left, axle1-right"; empty for the whole trailer
    std::vector<Amount> distances;  // miles from the job on
    std::optional<Date> due;
    bool each_trip = false;
    bool law = false;
    std::string source;
    std::string words;  // "after 10, 25 and 50 miles" / "by 2026-08-13 or after 3000 miles, and before each trip"
};

// In the rules' order. `day`: of the hand-over.
[[nodiscard]] std::vector<Recheck> rechecks(const RecheckRules& rules, const Job& job, const Date& day);

}  // namespace cotter
