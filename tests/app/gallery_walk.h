// Walks through every page of the gallery, in every size, type size and look, scrolling each one from top to bottom.
// For the audit test and for the pictures.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/ui/fonts.h"
#include "core/base/error.h"

namespace cotter {

struct GalleryView {
    std::string name;  // "412x915-1.5-lantern-corner-0"
    std::vector<std::string> offences;
    std::function<Result<Bytes>()> picture;
};

void walk_gallery(const FontFiles& fonts, float scale, const std::function<void(const GalleryView&)>& seen);

}  // namespace cotter
