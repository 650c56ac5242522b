// Walks through every page of the gallery, in every size, type size and look, scrolling each one from top to bottom.
// For the audit test and for the pictures.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/driver/host.h"
#include "tests/app/gallery.h"

namespace cotter {

struct GalleryView {
    std::string name;  // "412x915-1.5-lantern-corner-0"
    std::vector<std::string> offences;
    std::function<Result<Bytes>()> picture;
};

// Makes a screen of that size (dp) that shows what `make` makes.
using MakeHost = std::function<std::unique_ptr<DriverHost>(Point size, const MakeApp& make)>;

// `only`: places whose name begins so, "412x915-1-"; empty: all.
void walk_gallery(const MakeHost& make_host, const std::function<void(const GalleryView&)>& seen,
                  std::string_view only = {});

}  // namespace cotter
