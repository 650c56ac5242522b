// One photo with its marks and findings, what may be wrong with the picture, and the finding being put together.
// Plain values; no ImGui.
#pragma once

#include <optional>

#include "app/ui/photo_marks.h"
#include "app/views/chrome.h"
#include "app/views/finding_words.h"
#include "app/views/shot_place_view.h"

namespace cotter {

struct PhotoFinding {
    Id<Finding> finding;
    std::optional<Id<Tag>> tag;  // its first mark on this photo
    std::string title;           // "3  Rotor: heat checks"
    std::string under;           // what to do, the note
    Grade grade = Grade::watch;
    FindingDraft draft;  // to change it, on this photo
};

struct PhotoWarning {
    std::string title, text;
};

// The same slot of the same place at the other stage.
struct PhotoOther {
    Id<Shot> shot;
    std::string sha256;
    float width = 1, height = 1;
};

// The finding being put together or changed; it lives in the drafts.
struct FindingEntry {
    FindingDraft draft;
    bool is_new = true;
    bool changed = false;  // from what the job has
    std::string title;     // "Rotor: heat checks", "What is it?"
    std::vector<FindingWords> usual;
    std::vector<PhotoFinding> same;  // findings of the place that the mark may also show
    std::vector<std::string_view> components, defects, remedies;
    std::string place;     // "Axle 1, left"
    ShotPlaceView places;  // where else it may be
};

struct PhotoView {
    Chrome chrome;
    bool there = false;  // false: the photo was removed
    Shot shot;
    std::string facts;  // "Before. Taken 2026-05-14 08:12. 4032 × 3024"
    std::vector<PhotoMark> marks;
    std::vector<Tag> tags;  // of the marks, in the same order
    std::vector<PhotoFinding> findings;
    std::vector<PhotoWarning> warnings;
    std::optional<PhotoOther> other;
    std::optional<FindingEntry> entry;
    std::optional<Id<Shot>> next;  // photo of the place
    Drafts drafts;
};

[[nodiscard]] PhotoView photo_view(const Session& session);

// The open draft of a finding, for its sheet; `slot`: of the photo it is marked on, Slot::other when it is on none.
[[nodiscard]] FindingEntry finding_entry(const Session& session, const FindingDraft& draft, Slot slot);
// A finding as the draft that changes it, on `shot` or, when that is empty, on none.
[[nodiscard]] FindingDraft draft_of_finding(const Finding& finding, std::string shot);

// "Rotor: heat checks"
[[nodiscard]] std::string finding_words(std::string_view component, std::string_view defect);

// Why a photo may not convince: blurred, dark, glare; taken at another time than the rest of its place and stage.
[[nodiscard]] std::vector<PhotoWarning> photo_warnings(const Job& job, const Shot& shot);

// The latest shot of the same place and slot at the other stage.
[[nodiscard]] const Shot* other_stage(const Job& job, const Place& place, Slot slot, Stage stage);

}  // namespace cotter
