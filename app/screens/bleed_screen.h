// Bleeding: the pipes, the order, the count of each corner. What goes out: the pipe route and the counts.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/bleed_view.h"

namespace cotter {

enum class BleedAsk { none, pipe, length, leg, bore, bore_keyed, drawn, ran, round };

struct BleedState {
    BleedAsk ask = BleedAsk::none;
    std::string from = "actuator", to;  // of the pipe being entered
    std::size_t leg = 0;                // the one whose sheet is open
    Place place;                        // of the corner being counted
    std::optional<Amount> drawn;
    Id<BleedCount> round;  // the counted one whose sheet is open
    std::string fluid;     // chosen for the count
    std::optional<KeypadModel> pad;
};

void draw_bleed(UiContext& ui, const BleedView& view, BleedState& state, Commands& out);

// The sheet or keypad that `state.ask` names.
void draw_bleed_sheet(UiContext& ui, const BleedView& view, BleedState& state, Commands& out);

}  // namespace cotter
