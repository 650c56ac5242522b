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

enum class TorqueAsk {
    none,
    count,
    figure,
    doubt,  // about the figure's unit
    source,
    wrench,
    adapter,  // the one that is on: change it, or take it off
    wrench_length,
    adapter_length,
    angle,
    not_done
};

struct TorqueSheet {
    TorqueAsk ask = TorqueAsk::none;
    std::optional<KeypadModel> pad;
    std::optional<Amount> figure;  // keyed in, its source not yet given
    bool unit_meant = false;       // it was asked about, and kept
    std::optional<Amount> wrench_length, adapter_length;
    std::string words;    // being typed: a source, a wrench's id
    std::string refused;  // why the adapter was not taken
};

void open_torque_sheet(TorqueSheet& state, TorqueAsk ask);
void draw_torque_sheet(UiContext& ui, const TorqueView& view, TorqueSheet& state, Commands& out);

}  // namespace cotter
