// One place judged, reason by reason. What goes out: pages to open.
#pragma once

#include <string>

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/judgement_view.h"

namespace cotter {

struct JudgementState {
    std::string open;  // key of the reason that is spelled out
};

void draw_judgement(UiContext& ui, const JudgementView& view, JudgementState& state, Commands& out);

}  // namespace cotter
