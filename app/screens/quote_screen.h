// One quote, and two against each other. What goes out: offering, a new version, removing a draft, where to.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/compare_view.h"
#include "app/views/quote_view.h"

namespace cotter {

void draw_quote(UiContext& ui, const QuoteView& view, Commands& out);
void draw_compare(UiContext& ui, const CompareView& view, Commands& out);

}  // namespace cotter
