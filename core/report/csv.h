// Readings, torques and levels of a job as CSV after RFC 4180: CR LF, quotes where needed, one header line, UTF-8.
// Values stand as they were entered, with their UCUM unit; nothing is reworked for any one spreadsheet. Any thread.
#pragma once

#include <string>

#include "core/survey/job.h"

namespace cotter {

[[nodiscard]] std::string readings_csv(const Job& job);  // one row a point; one without value where none was taken
[[nodiscard]] std::string torques_csv(const Job& job);   // one row a fastener and pass
[[nodiscard]] std::string levels_csv(const Job& job);    // one row a level

}  // namespace cotter
