// The pages of a tire's sidewall and of an air chamber's tag. See app/views/tag_view.h.
#pragma once

#include "app/screens/form.h"
#include "app/views/tag_view.h"

namespace cotter {

void draw_sidewall(UiContext& ui, const TagView<Sidewall>& view, FormState& state, Commands& out);
void draw_chamber(UiContext& ui, const TagView<Chamber>& view, FormState& state, Commands& out);

}  // namespace cotter
