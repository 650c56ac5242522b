// Pictures on the screen: always whole, never turned, drawn as plain rectangles. For screens and widgets.
#pragma once

#include "app/ui/ui.h"

namespace cotter {

// Where a picture of width × height lies when it is as large as `box` allows.
[[nodiscard]] Rect fitted(float width, float height, const Rect& box);

// The picture in the middle of `box`; a quiet ground round it, and alone while it is not there yet.
void draw_picture(UiContext& ui, std::string_view id, const Rect& box);

// The same as a target of full width, `height` dp high. True when it was tapped.
bool photo(UiContext& ui, const Name& name, std::string_view id, float height);

// A part of a larger view (zoomed): `part` in 0…1 of the picture, drawn into `box`.
void draw_picture_part(UiContext& ui, std::string_view id, const Rect& box, const Rect& part);

}  // namespace cotter
