// Setting a bearing: nut, figures, positions, dial, lock. What goes out: the setting at each tap, the dial reading with
// it, the page where the lock's photo is taken.
#pragma once

#include <optional>

#include "app/command.h"
#include "app/screens/reading_sheets.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/bearing_view.h"

namespace cotter {

enum class BearingAsk { none, threads, positions, least, most, seated, locked, methods };

struct BearingState {
    BearingAsk ask = BearingAsk::none;
    std::optional<KeypadModel> pad;
    ReadingState reading;
};

void draw_bearing(UiContext& ui, const BearingView& view, BearingState& state, Commands& out);

// The sheet or keypad that `state.ask` names.
void draw_bearing_sheet(UiContext& ui, const BearingView& view, BearingState& state, Commands& out);

}  // namespace cotter
