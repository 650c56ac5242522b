// Whether a test of the whole system was made to its end and passed: pressure held, breakaway by the clock, each braked
// wheel tried since the work on it. For proof.cpp. Pure; any thread.
#pragma once

#include <string_view>

#include "core/survey/job.h"

namespace cotter {

// No more than a tenth of the starting pressure lost in five minutes, in a shorter hold by the same rate: a larger loss
// is a leak (common practice, twice the 5 % that is worth a look). The spots are "start, …" and "after 5 min". Whether
// the hold was long enough to say that the system is tight is the answer engine's.
[[nodiscard]] bool held_pressure(const Reading& hold);

// The newest breakaway test of the job: fifteen minutes by the clock, every braked wheel held at the start and at the
// end and turned with the pin back in (49 CFR 393.43(d)). With three axles or more the device need not act on all of
// them: wheels that turned at the start are left out when some axle held on both sides.
[[nodiscard]] bool passed_breakaway(const Job& job);

// The newest look at this point there is good, and was made after any work there that asks for a new one.
[[nodiscard]] bool looks_good_since_work(const Job& job, std::string_view point, const Place& place);

}  // namespace cotter
