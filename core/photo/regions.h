// What is marked on a photo, written into the photo itself as image regions of the IPTC Photo Metadata Standard
// (2019.1 and later, XMP property Iptc4xmpExt:ImageRegion), so that other programs see the marks too. Any thread.
#pragma once

#include <string>
#include <vector>

#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

enum class RegionShape { rectangle, circle, polygon };

// Coordinates are shares 0…1 of the picture as it is shown, upright; more is cut off at its edges.
struct PhotoRegion {
    struct Point {
        double x = 0, y = 0;
    };
    RegionShape shape = RegionShape::rectangle;
    std::vector<Point> points;  // rectangle: two opposite corners; circle: its centre; polygon: three or more
    double radius = 0;          // of a circle, as a share of the picture's width
    std::string id;             // "urn:uuid:…"
    std::string name;           // "No. 3, brake pads: worn"
    std::string role;           // what the region is to a reader: "finding, repair"
};

// The same photo with these regions as its XMP, for a photo that has no XMP (see clean.h). The compressed picture is
// not touched. JPEG: one APP1 segment behind JFIF and Exif; PNG: one iTXt chunk behind the header. The same input gives
// the same bytes; nothing but the regions is said. What does not fit into one segment (64 KB) is left out at the end.
// No regions: the bytes as they are. Fails as probe() does.
[[nodiscard]] Result<Bytes> with_regions(ByteView photo, const std::vector<PhotoRegion>& regions);

}  // namespace cotter
