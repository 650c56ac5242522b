// Taking photos in: what is under way, what was refused, and the photos that have no place yet, one after the other.
// Plain values; no ImGui. The folder's list is the screen's own (folder_list.h).
#pragma once

#include <optional>
#include <set>

#include "app/views/chrome.h"
#include "app/views/shot_place_view.h"

namespace cotter {

// Where new photos go: nowhere yet (the trailer as a whole, of nothing in particular), or the place and slot that the
// page was opened for.
struct IntakeTarget {
    Place place;
    Slot slot = Slot::other;
    Stage stage = Stage::before;
    bool preset = false;
    std::string label;   // "Axle 1, left: rotor face"
    std::string before;  // SHA-256 of the photo as it was, when an 'after' is taken; may be empty
    float before_width = 1, before_height = 1;
};

struct IntakeView {
    Chrome chrome;
    std::optional<RunningWork> work;
    std::vector<std::string> refused;  // a line each
    IntakeTarget target;
    std::vector<Shot> unplaced;                               // by the time they were taken, then by name
    std::vector<std::pair<std::string, std::int64_t>> taken;  // name and bytes of the job's photos, sorted
    std::string folder;                                       // where to look first
    bool watch = false;
    bool picks = false;  // the device's own camera and chooser bring photos; there are no folders
    int offset_min = 0;

    // A file of that name and size is in the job.
    [[nodiscard]] bool has(const std::string& name, std::uint64_t bytes) const;
};

[[nodiscard]] IntakeView intake_view(const Session& session);

// True for a photo that was taken in and not yet told where it belongs.
[[nodiscard]] bool unplaced(const Shot& shot);

}  // namespace cotter
