// The periodic inspection: its head and groups, and the items of a group. What goes out: answers, the head, pages.
#pragma once

#include <string>

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/inspection_view.h"

namespace cotter {

struct InspectionPageState {
    std::string remark;     // id of the item whose remark is being written; empty: none
    bool ask_drop = false;  // 'no inspection after all?' is open
};

void draw_inspection(UiContext& ui, const InspectionView& view, InspectionPageState& state, Commands& out);
void draw_inspection_group(UiContext& ui, const InspectionGroupView& view, InspectionPageState& state, Commands& out);

}  // namespace cotter
