// What must be known before tightening, each in its sheet: count, maker's figure with its source, wrench, adapter.
// For the torque page. What goes out: the torque with it, and wrenches new to the settings.
#pragma once

#include <optional>
#include <string>

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/torque_view.h"

namespace cotter {

enum class TorqueAsk { none, count, figure, source, wrench, handle, extension, angle, not_done };

struct TorqueSheet {
    TorqueAsk ask = TorqueAsk::none;
    std::optional<KeypadModel> pad;
    std::optional<Amount> figure;  // keyed in, its source not yet given
    std::optional<Amount> handle, extension;
    std::string words;  // being typed: a source, a wrench's id
};

void open_torque_sheet(TorqueSheet& state, TorqueAsk ask);
void draw_torque_sheet(UiContext& ui, const TorqueView& view, TorqueSheet& state, Commands& out);

}  // namespace cotter
