// The parts of the report, each drawn by a file of its own. One thread.
#pragma once

#include <string>
#include <vector>

#include "core/judge/judge_job.h"
#include "core/report/places.h"
#include "core/report/report.h"
#include "core/report/sheet.h"

namespace cotter {

// What every part needs.
struct Writing {
    const Job& job;
    const ReportInputs& in;
    Sheet& sheet;
    std::vector<PlaceRecords> places;
    int offset_min = 0;             // of the visit's place
    std::optional<Summary> judged;  // none without limits

    // The time as a clock there showed it, with its offset from UTC where that is not the visit's.
    [[nodiscard]] std::string time(Instant at) const;
    [[nodiscard]] std::string when_who(Instant at, const std::string& by) const;  // on two lines
};

[[nodiscard]] Result<> draw_customer(Writing& w);                               // page 1
void draw_towing(Writing& w, std::size_t most_reasons);                         // may it be towed, and why
void draw_details(Writing& w);                                                  // trailer and visit in full
void draw_glance(Writing& w);                                                   // places and their worst grades
void draw_plan(Writing& w, PaperSpot upper_left, double width, double height);  // the trailer from above
void draw_finding_list(Writing& w);                                             // the gravest first
void draw_gaps(Writing& w);                                                     // what was not measured, and why
void draw_cautions(Writing& w);
[[nodiscard]] Result<> draw_place(Writing& w, const PlaceRecords& records);
void draw_findings_at(Writing& w, const PlaceRecords& records);
[[nodiscard]] Result<> draw_photos(Writing& w, const PlaceRecords& records);
void draw_judged_at(Writing& w, const Place& place);
void draw_readings(Writing& w, const PlaceRecords& records);
void draw_torques(Writing& w, const PlaceRecords& records);
void draw_levels(Writing& w, const PlaceRecords& records);
void draw_forecasts_at(Writing& w, const Place& place);  // nothing without an earlier visit
void draw_work_log(Writing& w);                          // nothing when no step was marked
void draw_quotes(Writing& w);                            // the accepted ones in full, the others a line each
void draw_limits_and_tools(Writing& w);
void draw_inspection(Writing& w);  // nothing unless the job is a periodic inspection
void draw_amendments(Writing& w);
void draw_about(Writing& w);  // which packet this belongs to

}  // namespace cotter
