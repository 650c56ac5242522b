// See only_here.h.
#include "app/views/only_here.h"

#include <fmt/format.h>

#include "app/views/chrome.h"

namespace cotter {

namespace {

constexpr std::int64_t kDay = 86'400;  // s

bool may_be_cleared(const Session& session) {
    const auto storage = session.device().storage();
    return storage && storage->may_be_cleared;
}

// Whole days; -1: all of it is in a packet.
std::int64_t days_only_here(const Session& session, const JobSummary& job) {
    return job.unpacked_since ? (session.now().unix_s - job.unpacked_since->unix_s) / kDay : -1;
}

}  // namespace

std::string only_here_words(const Session& session, const JobId& id) {
    if (!may_be_cleared(session)) return {};
    for (const JobSummary& job : session.jobs())
        if (const auto days = days_only_here(session, job); job.id == id && days >= kOnlyHereDays)
            return fmt::format(
                "Nothing recorded here in the last {} days is in a packet yet. The system may clear this "
                "device's storage: create the packet and send it.",
                days);
    return {};
}

std::string only_here_words(const Session& session) {
    if (!may_be_cleared(session)) return {};
    std::size_t count = 0;
    for (const JobSummary& job : session.jobs()) count += days_only_here(session, job) >= kOnlyHereDays;
    if (count == 0) return {};
    return fmt::format(
        "{} with work that is {} or more days old {} not in a packet yet. The system may clear this device's storage: "
        "create {} and send {}.",
        count_words(count, "job", "jobs"), kOnlyHereDays, count == 1 ? "is" : "are",
        count == 1 ? "its packet" : "their packets", count == 1 ? "it" : "them");
}

}  // namespace cotter
