// What the user has chosen once for all jobs. Plain values; no ImGui.
#pragma once

#include "app/views/chrome.h"

namespace cotter {

struct WrenchRow {
    std::string calibrated;  // as typed or kept: "2026-02-01"
    std::string due;         // "calibrated 103 days ago", why a date is not taken
    bool wrong = false;
};

struct SettingsView {
    Chrome chrome;
    Settings settings;
    Drafts drafts;
    std::vector<WrenchRow> wrenches;   // of the settings, in their order
    std::string packet_folder;         // where packets go now
    bool folders = true;               // false: the device brings and takes files by itself
    std::vector<std::string> storage;  // what is to be known about the device's storage; may be empty
    std::string sides_example;         // "Axle 1, curbside"
};

[[nodiscard]] SettingsView settings_view(const Session& session);

}  // namespace cotter
