// Work that is on a device whose storage the system may clear, and in no packet yet. Plain values; no ImGui.
#pragma once

#include <string>

#include "app/session/session.h"

namespace cotter {

inline constexpr int kOnlyHereDays = 3;  // browsers may clear what was not opened for seven

// Why this job should be packed and sent now; empty when it need not be said: the device keeps files for good, or what
// the job says is in a packet, or it is not older than kOnlyHereDays.
[[nodiscard]] std::string only_here_words(const Session& session, const JobId& job);
// The same for all jobs together.
[[nodiscard]] std::string only_here_words(const Session& session);

}  // namespace cotter
