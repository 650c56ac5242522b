// See photo_marks.h.
#include "app/ui/photo_marks.h"

#include <algorithm>
#include <cmath>

namespace cotter {

namespace {

constexpr std::size_t kMostPointsDrawn = 500;  // of a stroke, as the records allow
constexpr float kStep = 3;                     // dp between the points of a stroke
constexpr float kSmallest = 10;                // dp, of a box's diagonal and an arrow's length

float between(Point a, Point b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

float to_segment(Point p, Point a, Point b) {
    const float dx = b.x - a.x;
    const float dy = b.y - a.y;
    const float square = dx * dx + dy * dy;
    const float t = square <= 0 ? 0 : std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0F, 1.0F);
    return between(p, {a.x + t * dx, a.y + t * dy});
}

Rect box_of(const PhotoMark& mark, const Rect& picture) {
    const Point a = place_of(picture, mark.points[0]);
    const Point b = place_of(picture, mark.points[1]);
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(a.x - b.x), std::abs(a.y - b.y)};
}

float held(float value, float half) {
    return half >= 0.5F ? 0.5F : std::clamp(value, half, 1 - half);
}

float size_of(const PhotoMark& mark, const Rect& picture) {
    return between(place_of(picture, mark.points.front()), place_of(picture, mark.points.back()));
}

}  // namespace

Rect picture_rect(const Rect& area, float width, float height, const PhotoZoom& zoom) {
    if (width <= 0 || height <= 0) return area;
    const float scale = std::min(area.w / width, area.h / height) * zoom.factor;
    const float w = width * scale;
    const float h = height * scale;
    return {area.middle().x - zoom.middle.x * w, area.middle().y - zoom.middle.y * h, w, h};
}

PhotoZoom zoomed(const Rect& area, float width, float height, const PhotoZoom& zoom, float factor, Point at, Point by) {
    const Rect before = picture_rect(area, width, height, zoom);
    PhotoZoom after;
    after.factor = std::clamp(zoom.factor * factor, 1.0F, PhotoZoom::kMost);
    const float grow = after.factor / zoom.factor;
    // What was under the fingers stays under them.
    const Point corner{at.x + by.x - (at.x - before.x) * grow, at.y + by.y - (at.y - before.y) * grow};
    const Rect now{corner.x, corner.y, before.w * grow, before.h * grow};
    after.middle = {held((area.middle().x - now.x) / now.w, area.w / now.w / 2),
                    held((area.middle().y - now.y) / now.h, area.h / now.h / 2)};
    return after;
}

Point place_of(const Rect& picture, const TagPoint& spot) {
    return {picture.x + static_cast<float>(spot.x) * picture.w, picture.y + static_cast<float>(spot.y) * picture.h};
}

TagPoint spot_of(const Rect& picture, Point place) {
    const auto part = [](float from, float at, float size) {
        const double value = std::clamp((at - from) / std::max(size, 1.0F), 0.0F, 1.0F);
        return std::round(value * 10'000) / 10'000;  // finer than a pixel of a phone's picture shown whole
    };
    return {part(picture.x, place.x, picture.w), part(picture.y, place.y, picture.h)};
}

float distance_to(const PhotoMark& mark, const Rect& picture, Point place) {
    if (mark.points.empty()) return 1e9F;
    if (mark.points.size() == 1) return between(place, place_of(picture, mark.points[0]));
    if (mark.shape == TagShape::box) {
        const Rect box = box_of(mark, picture);
        if (box.contains(place)) return kGrip / 2;
        const Point near{std::clamp(place.x, box.x, box.right()), std::clamp(place.y, box.y, box.bottom())};
        return between(place, near);
    }
    float least = 1e9F;
    for (std::size_t i = 1; i < mark.points.size(); ++i)
        least = std::min(least,
                         to_segment(place, place_of(picture, mark.points[i - 1]), place_of(picture, mark.points[i])));
    return least;
}

std::optional<std::size_t> mark_at(std::span<const PhotoMark> marks, const Rect& picture, Point place) {
    std::optional<std::size_t> found;
    float least = kGrip;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const float way = distance_to(marks[i], picture, place);
        if (way > least) continue;
        least = way;
        found = i;
    }
    return found;
}

std::optional<MarkGrip> grip_at(PhotoMark& mark, const Rect& picture, Point place) {
    if (mark.points.empty()) return std::nullopt;
    if (mark.shape == TagShape::box) {
        const TagPoint a = mark.points[0];
        const TagPoint b = mark.points[1];
        for (const auto& [taken, opposite] :
             {std::pair{a, b}, std::pair{b, a}, std::pair{TagPoint{a.x, b.y}, TagPoint{b.x, a.y}},
              std::pair{TagPoint{b.x, a.y}, TagPoint{a.x, b.y}}}) {
            if (between(place_of(picture, taken), place) > kGrip) continue;
            mark.points = {taken, opposite};
            return MarkGrip{false, 0};
        }
    } else if (mark.shape == TagShape::arrow) {
        for (const std::size_t i : {1u, 0u})
            if (between(place_of(picture, mark.points[i]), place) <= kGrip) return MarkGrip{false, i};
    }
    if (distance_to(mark, picture, place) <= kGrip) return MarkGrip{true, 0};
    return std::nullopt;
}

std::vector<TagPoint> dragged(const PhotoMark& mark, const MarkGrip& grip, const Rect& picture, Point by) {
    std::vector<TagPoint> out = mark.points;
    if (!grip.whole) {
        const Point at = place_of(picture, out[grip.point]);
        out[grip.point] = spot_of(picture, {at.x + by.x, at.y + by.y});
        return out;
    }
    TagPoint least{1, 1};
    TagPoint most{0, 0};
    for (const TagPoint& p : out) {
        least = {std::min(least.x, p.x), std::min(least.y, p.y)};
        most = {std::max(most.x, p.x), std::max(most.y, p.y)};
    }
    const double dx = std::clamp(static_cast<double>(by.x / picture.w), -least.x, 1 - most.x);
    const double dy = std::clamp(static_cast<double>(by.y / picture.h), -least.y, 1 - most.y);
    for (TagPoint& p : out) p = {std::clamp(p.x + dx, 0.0, 1.0), std::clamp(p.y + dy, 0.0, 1.0)};
    return out;
}

std::vector<Point> handles_of(const PhotoMark& mark, const Rect& picture) {
    std::vector<Point> out;
    if (mark.shape == TagShape::box && mark.points.size() == 2) {
        const Rect box = box_of(mark, picture);
        return {{box.x, box.y}, {box.right(), box.y}, {box.right(), box.bottom()}, {box.x, box.bottom()}};
    }
    if (mark.points.empty()) return out;
    out.push_back(place_of(picture, mark.points.front()));
    if (mark.shape == TagShape::arrow && mark.points.size() == 2) out.push_back(place_of(picture, mark.points.back()));
    return out;
}

void add_to_stroke(std::vector<TagPoint>& stroke, const Rect& picture, Point place) {
    if (stroke.size() >= kMostPointsDrawn) return;
    if (!stroke.empty() && between(place_of(picture, stroke.back()), place) < kStep) return;
    stroke.push_back(spot_of(picture, place));
}

bool large_enough(const PhotoMark& mark, const Rect& picture) {
    if (mark.shape == TagShape::point) return mark.points.size() == 1;
    if (mark.points.size() < 2) return false;
    return mark.shape == TagShape::stroke || size_of(mark, picture) >= kSmallest;
}

Point badge_place(const PhotoMark& mark, const Rect& picture) {
    if (mark.points.empty()) return {};
    if (mark.shape == TagShape::box && mark.points.size() == 2) {
        const Rect box = box_of(mark, picture);
        return {box.x, box.y};
    }
    return place_of(picture, mark.points.front());
}

}  // namespace cotter
