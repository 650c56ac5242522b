// What changed since the last visit, reading by reading: before, now, the change. Plain values; no ImGui.
#pragma once

#include <string>
#include <vector>

#include "app/views/chrome.h"

namespace cotter {

struct SinceRow {
    std::string label;   // "Pad thickness, inner, leading end"
    std::string change;  // "−2.4 mm", "the same"; empty: it cannot be told
    std::string under;   // "9.5 mm → 7.1 mm", or why it cannot be told
    Route record;        // where it is recorded
};

struct SinceGroup {
    std::string title;  // "Axle 1, left"
    std::vector<SinceRow> rows;
};

struct SinceView {
    Chrome chrome;
    std::string last, now;           // "2025-03-28", "2026-05-14"; `last` empty: no earlier visit is in the book
    std::string apart;               // "412 days apart"
    std::vector<SinceGroup> groups;  // empty: neither visit has a reading
};

[[nodiscard]] SinceView since_view(const Session& session);

}  // namespace cotter
