// Antialiased shapes painted onto an Image, for marks.cpp. One thread at a time.
#pragma once

#include <span>

#include "core/base/rgb.h"
#include "core/photo/image.h"
#include "core/photo/stb_parts.h"

namespace cotter {

struct Px {
    double x = 0, y = 0;  // in pixels; (0, 0) is the upper left corner of the upper left pixel
};

// Shapes are gathered in a mask (where they overlap, they do not add up) and then painted at once in one colour.
class Raster {
public:
    explicit Raster(Image& image);
    void segment(Px a, Px b, double half_width);  // with round ends
    void disc(Px centre, double radius);
    void ring(Px centre, double radius, double half_width);
    void polygon(std::span<const Px> corners, double grow);  // convex, clockwise on the screen; `grow` pixels larger
    void text(const TextMask& text, int left, int top);
    void paint(Rgb colour);  // and empties the mask

private:
    // Adds the shape whose signed distance (negative inside) `distance(x, y)` gives, within `reach` of the box a…b.
    template <class Distance>
    void add(Px a, Px b, double reach, Distance distance);
    void raise(int x, int y, double coverage);

    Image& image_;
    Bytes mask_;
    int left_, top_, right_, bottom_;  // the part of the mask in use
};

}  // namespace cotter
