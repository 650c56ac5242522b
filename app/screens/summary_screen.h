// 'May it be towed?' with its reasons. What goes out: pages to open.
#pragma once

#include <string>

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/summary_view.h"

namespace cotter {

struct SummaryState {
    std::string open;  // key of the reason that is spelled out
};

void draw_summary(UiContext& ui, const SummaryView& view, SummaryState& state, Commands& out);

}  // namespace cotter
