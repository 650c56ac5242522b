// What the user chooses once for all jobs: looks, words, names, wrenches, folders. What goes out: the settings.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/settings_view.h"

namespace cotter {

void draw_settings(UiContext& ui, const SettingsView& view, Commands& out);

}  // namespace cotter
