// A fluid level at its line: before, what was added, after, and the wait while it settles. Plain values; no ImGui.
#pragma once

#include <array>
#include <optional>

#include "app/views/chrome.h"
#include "app/views/fluid_doubt_lines.h"

namespace cotter {

// The wait between spinning the hub and looking. Goes on while the phone is locked: it is told from the clock.
struct SettleTimer {
    std::string record;  // its name among the drafts
    bool begun = false;
    bool over = false;
    std::int64_t elapsed_s = 0;
    std::string words;  // "3:20 to go", "settled for 6:05"
};

// What the page says of one kind of fluid: hubs and reservoirs go wrong in different ways.
struct FluidTexts {
    std::string_view product;                // an example of what a label says
    std::string_view low;                    // below its mark: what to look for
    std::string_view over;                   // above its mark: what it does
    std::string_view wrong;                  // what must not go in here
    std::string_view wrong_is_in;            // ... but went in: what has to follow
    std::array<std::string_view, 4> hidden;  // why a level cannot be seen
};

struct LevelView {
    Chrome chrome;
    Place place;
    Level level;         // as it is, or as it would begin; a nil id: not in the job yet
    bool there = false;  // it is in the job
    bool hub = true;     // a cap's window; else a reservoir
    SettleTimer timer;
    std::vector<std::string> products;   // used before in this job, then the kinds that go in here
    std::vector<FluidDoubtLine> doubts;  // about the product in this hub or reservoir
    std::vector<std::string> open;       // why the level is not proved yet, or what to look at again
    bool proved = false;
    FluidTexts texts;
    std::string advice;  // below the line: find where it went; empty: nothing to say
    std::optional<Place> next_place;
    std::string next_label;
    Drafts drafts;
    Instant now;
};

constexpr std::int64_t kSettleSeconds = 600;  // common practice: about 5 to 10 minutes; the maker's own goes before it

// By the route: its place and the level's id; without one the place's level of its usual fluid, or a new one.
[[nodiscard]] LevelView level_view(const Session& session);

// The drafts with this level's timer begun now, in place of its earlier one; those of other levels go on.
[[nodiscard]] Drafts with_timer(const LevelView& view);
// The level with what was seen after the work, and how long it had settled when the timer was running.
[[nodiscard]] Level with_after(const LevelView& view, LevelMark mark);

}  // namespace cotter
