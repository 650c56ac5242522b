// What changed since the last visit. What goes out: pages to open.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/since_view.h"

namespace cotter {

void draw_since(UiContext& ui, const SinceView& view, Commands& out);

}  // namespace cotter
