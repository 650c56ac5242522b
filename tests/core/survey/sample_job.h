// A small job with one record of every kind, for tests of everything that stands on records.
#pragma once

#include "core/survey/edit.h"

namespace cotter::test {

[[nodiscard]] Uuid numbered(int n);        // a fixed id: 00000000-0000-4000-8000-00000000000n
[[nodiscard]] Instant moment(int minute);  // 2026-05-14T08:00:00-05:00 plus minutes

[[nodiscard]] Visit sample_visit();
[[nodiscard]] Trailer sample_trailer();
[[nodiscard]] Shot sample_shot();
[[nodiscard]] Finding sample_finding();
[[nodiscard]] Tag sample_tag();
[[nodiscard]] Reading sample_reading();
[[nodiscard]] Torque sample_torque();
[[nodiscard]] Level sample_level();
[[nodiscard]] SignOff sample_sign_off();

// An edit of the sample job by its technician.
[[nodiscard]] Edit edit_of(std::vector<Change> changes, int minute = 0, std::string reason = {});
[[nodiscard]] std::vector<Edit> sample_edits();  // builds the whole job, without the sign-off
[[nodiscard]] Job sample_job();                  // those applied

}  // namespace cotter::test
