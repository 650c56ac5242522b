// The breakaway test by the clock: pin out, every braked wheel tried, 15 minutes, tried again, pin in. Plain values.
#pragma once

#include <optional>
#include <vector>

#include "app/views/chrome.h"
#include "app/views/point_view.h"

namespace cotter {

enum class BreakawayStep { not_begun, first_round, waiting, last_round, pin_in, done };

struct BreakawayWheel {
    Place place;
    std::string label;            // "Axle 1 left"
    Held held = Held::not_tried;  // in the round that is going on, or as it ended
};

struct BreakawayView {
    Chrome chrome;
    BreakawayTest test;  // a nil id: none in this visit
    BreakawayStep step = BreakawayStep::not_begun;
    std::vector<BreakawayWheel> wheels;
    std::string clock;  // "4:12 of 15:00"
    bool time_up = false;
    std::string result;    // of one that is done: what held, how long
    bool early = false;    // ended before 15 minutes
    bool stopped = false;  // ended by the tester
    std::vector<PointReading> readings;
    Drafts drafts;
    std::optional<ReadingEntry> entry;
};

constexpr std::int64_t kBreakawaySeconds = 15 * 60;  // 49 CFR 393.43(d)

[[nodiscard]] BreakawayView breakaway_view(const Session& session);

// The test with a wheel's answer of the round that is going on.
[[nodiscard]] BreakawayTest with_wheel(const BreakawayView& view, const Place& wheel, Held held);
// A new test begun now: every braked corner not tried.
[[nodiscard]] BreakawayTest begin_test(const Trailer& trailer, const Instant& now);

}  // namespace cotter
