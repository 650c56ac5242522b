// One place of the trailer, a corner or a station: its photos by slot, findings, readings, torques and levels, and
// what is still wanted. Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/views/chrome.h"
#include "app/views/photo_view.h"
#include "app/views/reading_view.h"

namespace cotter {

// A photo, or the empty place of one.
struct ShotTile {
    Slot slot = Slot::other;
    std::string label;           // "Rotor face"
    std::string under;           // when it was taken; "missing"
    std::string shot;            // id; empty: not taken yet
    std::string picture;         // the photo's SHA-256
    std::optional<Grade> worst;  // of the findings marked on it
};

struct FindingRow {
    std::string id;
    std::string shot;   // where it is marked; empty: nowhere
    std::string title;  // "3 Rotor: heat checks"
    std::string under;  // what to do, note
    Grade grade = Grade::watch;
    Outcome outcome = Outcome::open;
    std::string outcome_note;
    FindingDraft draft;  // to change it
};

struct ReadingRow {
    std::string what;
    Place place;
    std::string label;  // "Tread depth, inner wheel"
    std::string value;  // "not yet"
    std::string under;  // "before the work: 3.2 mm", the tool
    bool there = false;
    bool extra = false;  // not there, and no gap: shown when asked for
    ReadingDraft draft;  // what the keypad begins with
    JudgedReading judged;
};

// A torque or a level.
struct WorkRow {
    std::string id;  // empty: not yet
    std::string label;
    std::string value;
    std::string under;
    bool done = false;
    std::optional<Grade> worst{};  // of what its questions found, until it is repaired
};

struct CornerView {
    Chrome chrome;
    Place place;
    bool corner = true;
    std::vector<ShotTile> before, after;
    std::vector<FindingRow> findings;
    std::vector<ReadingRow> readings_before, readings_after;
    std::vector<WorkRow> torques;
    std::vector<WorkRow> levels;
    std::vector<WorkRow> procedures;
    std::optional<Place> previous, next;  // of the same kind, round the trailer
    std::string next_label;               // "Axle 1, right"
    Drafts drafts;
    std::optional<ReadingEntry> entry;    // begun here and not yet handed in
    std::optional<FindingEntry> finding;  // a finding of this place that is being changed
};

[[nodiscard]] CornerView corner_view(const Session& session);

// The corners axle by axle, left before right, or the stations from the drawbar back, as one goes round. Wraps.
[[nodiscard]] std::optional<Place> neighbour(const Job& job, const Place& place, int step);

}  // namespace cotter
