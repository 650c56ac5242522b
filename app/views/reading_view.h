// A reading on its way in: what the keypad offers, what was keyed so far, what looks odd about it, and the record that
// it becomes. Plain values from the job and the drafts; no ImGui.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "app/draft.h"
#include "app/ui/keypad_model.h"
#include "core/survey/job.h"

namespace cotter {

// A value beside its limit.
struct JudgedReading {
    std::optional<Grade> grade;           // none: no limit, or nobody can say
    std::string limit;                    // "at least 1.588 mm", "no limit entered"; empty: nothing was measured
    std::string source;                   // of the limit
    std::optional<FindingDraft> finding;  // to be made in one tap: it fails, and no finding says so yet
};

// The reading being keyed in, as the draft has it.
struct ReadingEntry {
    std::string key;  // one per reading: the screen's keypad is made anew when it changes
    KeypadSpec spec;
    ReadingDraft draft;
    Reading record;  // what it was before; a nil id: it is new. Knows tool and place
    JudgedReading judged;
};

// A second look before a value is taken.
struct ReadingDoubt {
    std::string words;      // "7.1 in is 180 mm: more than a pad ever has."
    std::string unit;       // that was probably meant; empty: none is likely
    std::string unit_yes;   // "It was mm"
    std::size_t point = 0;  // which of the points it is about
};

// Begins (or reopens) the reading of `what` at a place: at most one for a stage. A new one starts in the unit that
// was last used for the like in this job.
[[nodiscard]] ReadingDraft begin_reading(const Job& job, std::string_view what, const Place& place, Stage stage);
[[nodiscard]] ReadingEntry reading_entry(const Job& job, const ReadingDraft& draft);
// What was keyed, as a draft again.
[[nodiscard]] ReadingDraft draft_of(const ReadingEntry& entry, const KeypadModel& keyed);
// The record. A reason is kept only where nothing was measured. Empty points are left out.
[[nodiscard]] Reading reading_of(const ReadingEntry& entry, const ReadingDraft& draft);

// Too little, too much, a unit mistaken, one point far from the others. nullopt: nothing odd.
[[nodiscard]] std::optional<ReadingDoubt> doubt_reading(const ReadingDraft& draft);

// "Tread depth"; a round over all hubs says so.
[[nodiscard]] std::string reading_title(std::string_view what, const Place& place);
// "mm" for a unit's code; the code itself when it is not known.
[[nodiscard]] std::string_view unit_words(std::string_view ucum);
// "3.2 mm", "least 3.2 mm, spread 0.4 mm", "not measured: no tool here".
[[nodiscard]] std::string reading_words(const Reading& reading);
// The reading of that name, place and stage; nullptr: not yet. The newest when there are several.
[[nodiscard]] const Reading* find_reading(const Job& job, std::string_view what, const Place& place, Stage stage);

// Why there is no value, ready to choose: the first list for 'not measured', the second for 'not accessible'.
[[nodiscard]] std::span<const std::string_view> reasons_not_measured();
[[nodiscard]] std::span<const std::string_view> reasons_not_accessible();

}  // namespace cotter
