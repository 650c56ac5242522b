// Marks drawn into a copy of a photo, for the report and the packet. Knows nothing of findings: whoever calls chooses
// shape, color, sign and number. Any thread.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/sign.h"
#include "core/photo/image.h"
#include "core/photo/raster.h"

namespace cotter {

enum class MarkShape {
    point,   // 1 point: a ring with a dot
    box,     // 2 points: opposite corners
    arrow,   // 2 points: tail, tip
    stroke,  // 2…10,000 points, drawn in turn
};

struct MarkPoint {
    double x = 0, y = 0;  // 0…1 of the upright picture, from the upper left
};

struct Mark {
    MarkShape shape = MarkShape::point;
    std::vector<MarkPoint> points;
    Rgb colour = rgb(0xFFFFFF);
    std::optional<Sign> sign;  // on a small plate near the mark, with the number behind it
    int number = 0;            // 1…999; 0: none
    std::string label;         // beside the plate, at most 200 bytes of UTF-8; may be empty
};

// A copy of `picture` with the marks drawn in turn, later ones on top; lines, plates and letters grow with the picture.
// Every line has a contrasting outline, so that it shows on any background. Points outside 0…1 are moved to the edge.
// `font`: a trusted TrueType file. Fails `refused` for a mark with the wrong number of points, for coordinates that
// are no numbers, and for texts as draw_text does.
[[nodiscard]] Result<Image> draw_marks(const Image& picture, std::span<const Mark> marks, ByteView font);

}  // namespace cotter
