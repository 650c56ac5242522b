// Shapes as signed distances: a pixel is covered by half minus its centre's distance from the edge.
#include "core/photo/raster.h"

#include <algorithm>
#include <cmath>

namespace cotter {

namespace {

double distance_to_segment(Px p, Px a, Px b) {
    const double dx = b.x - a.x, dy = b.y - a.y, length2 = dx * dx + dy * dy;
    const double t = length2 > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length2, 0.0, 1.0) : 0.0;
    return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

// For convex polygons: the largest of the distances from the sides' lines.
double distance_to_polygon(Px p, std::span<const Px> corners) {
    double most = -1e9;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Px a = corners[i], b = corners[(i + 1) % corners.size()];
        const double dx = b.x - a.x, dy = b.y - a.y, length = std::hypot(dx, dy);
        if (length > 0) most = std::max(most, ((p.x - a.x) * dy - (p.y - a.y) * dx) / length);
    }
    return most;
}

std::uint8_t mixed(std::uint8_t under, std::uint8_t over, unsigned coverage) {
    return static_cast<std::uint8_t>((under * (255 - coverage) + over * coverage + 127) / 255);
}

}  // namespace

Raster::Raster(Image& image)
    : image_(image),
      mask_(std::size_t(image.width) * image.height),
      left_(image.width),
      top_(image.height),
      right_(0),
      bottom_(0) {}

void Raster::raise(int x, int y, double coverage) {
    if (coverage <= 0) return;
    auto& to = mask_[std::size_t(y) * image_.width + x];
    to = std::max(to, static_cast<std::uint8_t>(std::lround(std::min(coverage, 1.0) * 255)));
    left_ = std::min(left_, x);
    right_ = std::max(right_, x + 1);
    top_ = std::min(top_, y);
    bottom_ = std::max(bottom_, y + 1);
}

template <class Distance>
void Raster::add(Px a, Px b, double reach, Distance distance) {
    const auto pixel = [](double at, int most) { return static_cast<int>(std::clamp(at, 0.0, double(most))); };
    const int x0 = pixel(std::min(a.x, b.x) - reach - 1, image_.width);
    const int x1 = pixel(std::max(a.x, b.x) + reach + 2, image_.width);
    const int y0 = pixel(std::min(a.y, b.y) - reach - 1, image_.height);
    const int y1 = pixel(std::max(a.y, b.y) + reach + 2, image_.height);
    for (int y = y0; y < y1; ++y)
        for (int x = x0; x < x1; ++x) raise(x, y, 0.5 - distance(Px{x + 0.5, y + 0.5}));
}

void Raster::segment(Px a, Px b, double half_width) {
    add(a, b, half_width, [&](Px p) { return distance_to_segment(p, a, b) - half_width; });
}

void Raster::disc(Px centre, double radius) {
    segment(centre, centre, radius);
}

void Raster::ring(Px centre, double radius, double half_width) {
    add(centre, centre, radius + half_width,
        [&](Px p) { return std::abs(std::hypot(p.x - centre.x, p.y - centre.y) - radius) - half_width; });
}

void Raster::polygon(std::span<const Px> corners, double grow) {
    Px low = corners.front(), high = low;
    for (const Px c : corners) {
        low = {std::min(low.x, c.x), std::min(low.y, c.y)};
        high = {std::max(high.x, c.x), std::max(high.y, c.y)};
    }
    add(low, high, grow * 3, [&](Px p) { return distance_to_polygon(p, corners) - grow; });
}

void Raster::text(const TextMask& text, int left, int top) {
    const int x0 = std::max(0, -left), x1 = std::min(text.width, image_.width - left);
    const int y0 = std::max(0, -top), y1 = std::min(text.height, image_.height - top);
    for (int y = y0; y < y1; ++y)
        for (int x = x0; x < x1; ++x) raise(left + x, top + y, text.coverage[std::size_t(y) * text.width + x] / 255.0);
}

void Raster::paint(Rgb colour) {
    for (int y = top_; y < bottom_; ++y)
        for (int x = left_; x < right_; ++x) {
            std::uint8_t& coverage = mask_[std::size_t(y) * image_.width + x];
            std::uint8_t* to = image_.row(y) + 3 * std::ptrdiff_t{x};
            if (coverage == 0) continue;
            to[0] = mixed(to[0], colour.r, coverage);
            to[1] = mixed(to[1], colour.g, coverage);
            to[2] = mixed(to[2], colour.b, coverage);
            coverage = 0;
        }
    left_ = image_.width;
    top_ = image_.height;
    right_ = bottom_ = 0;
}

}  // namespace cotter
