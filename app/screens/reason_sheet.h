// A reason spelled out, and one that cannot be told: rows that open it and the sheet itself. For pages of judging.
// What goes out: pages to open.
#pragma once

#include <span>
#include <string>

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/reason_item.h"

namespace cotter {

// Rows of reasons; the tapped one's key goes into `open`. `with_place`: the place is named in each.
void draw_reasons(UiContext& ui, std::span<const ReasonItem> reasons, bool with_place, std::string& open);
// Rows of what is not known.
void draw_unknowns(UiContext& ui, std::span<const UnknownItem> unknowns, bool with_place, std::string& open);

// The sheet of the open one, whichever list it is in; clears `open` when it is closed or not there any more.
void draw_open_reason(UiContext& ui, std::span<const ReasonItem> reasons, std::span<const UnknownItem> unknowns,
                      std::string& open, Commands& out);

}  // namespace cotter
