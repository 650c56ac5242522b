// A reading keyed in: the keypad, the reason when there is no value, the second look at odd ones. For pages that
// show readings. What goes out: the draft at each key, and the reading in the end.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/ui/row.h"
#include "app/ui/ui.h"
#include "app/views/reading_view.h"

namespace cotter {

struct ReadingState {
    enum class Ask { none, reason, doubt };
    std::string key;  // of the entry that `pad` belongs to
    std::optional<KeypadModel> pad;
    Ask ask = Ask::none;
};

// A row's look: its limit beside the value, and its sign. Never a tick: the sign says how good it is.
void show_judged(const JudgedReading& judged, RowSpec& spec);
// One tap makes a finding of a value that fails, and what it needs for the quote.
void offer_finding(UiContext& ui, const std::string& key, const JudgedReading& judged, Commands& out);
void draw_reading(UiContext& ui, const ReadingEntry& entry, const Drafts& drafts, ReadingState& state, Commands& out);

}  // namespace cotter
