// Marks on a zoomed picture: coordinates, hits, handles. Pure.
#include <doctest/doctest.h>

#include "app/ui/photo_marks.h"

using namespace cotter;

namespace {

constexpr Rect kArea{10, 100, 400, 300};

PhotoMark box(double x1, double y1, double x2, double y2) {
    return {TagShape::box, {{x1, y1}, {x2, y2}}, Grade::repair, 1};
}

}  // namespace

TEST_CASE("a picture shown whole lies in the middle of its area") {
    CHECK(picture_rect(kArea, 4000, 3000, {}) == kArea);
    CHECK(picture_rect(kArea, 3000, 3000, {}) == Rect{60, 100, 300, 300});
    CHECK(picture_rect(kArea, 4000, 1000, {}) == Rect{10, 200, 400, 100});
}

TEST_CASE("places and spots turn into each other, at any zoom; beside the picture counts as its edge") {
    for (const PhotoZoom& zoom : {PhotoZoom{}, PhotoZoom{3, {0.4F, 0.6F}}}) {
        const Rect picture = picture_rect(kArea, 4000, 3000, zoom);
        for (const TagPoint& spot : {TagPoint{0, 0}, TagPoint{0.25, 0.5}, TagPoint{1, 1}}) {
            const TagPoint back = spot_of(picture, place_of(picture, spot));
            CHECK(back.x == doctest::Approx(spot.x).epsilon(0.001));
            CHECK(back.y == doctest::Approx(spot.y).epsilon(0.001));
        }
    }
    CHECK(spot_of(kArea, {0, 9999}) == TagPoint{0, 1});
}

TEST_CASE("what is under the fingers stays under them while they pinch") {
    const Point at{110, 175};
    const TagPoint before = spot_of(picture_rect(kArea, 4000, 3000, {}), at);
    const PhotoZoom zoom = zoomed(kArea, 4000, 3000, {}, 2.5F, at, {});
    CHECK(zoom.factor == doctest::Approx(2.5));
    const TagPoint after = spot_of(picture_rect(kArea, 4000, 3000, zoom), at);
    CHECK(after.x == doctest::Approx(before.x).epsilon(0.01));
    CHECK(after.y == doctest::Approx(before.y).epsilon(0.01));
}

TEST_CASE("zoom ends at whole and at the most; a zoomed picture cannot be pushed out of its area") {
    CHECK(zoomed(kArea, 4000, 3000, {}, 0.1F, {50, 150}, {}) == PhotoZoom{});
    PhotoZoom zoom = zoomed(kArea, 4000, 3000, {}, 100, {210, 250}, {});
    CHECK(zoom.factor == PhotoZoom::kMost);
    zoom = zoomed(kArea, 4000, 3000, zoom, 1, {210, 250}, {100000, -100000});
    const Rect picture = picture_rect(kArea, 4000, 3000, zoom);
    CHECK(picture.x == doctest::Approx(kArea.x));
    CHECK(picture.bottom() == doctest::Approx(kArea.bottom()));
    CHECK(zoomed(kArea, 4000, 3000, {}, 1, {210, 250}, {50, 50}) == PhotoZoom{});
}

TEST_CASE("a tap finds the nearest mark; one inside a box counts for it unless a point is nearer") {
    const std::vector<PhotoMark> marks{box(0.1, 0.1, 0.6, 0.6),
                                       {TagShape::point, {{0.5, 0.5}}, Grade::watch, 2},
                                       {TagShape::arrow, {{0.7, 0.9}, {0.9, 0.9}}, Grade::watch, 3}};
    const auto hit = [&](double x, double y) { return mark_at(marks, kArea, place_of(kArea, {x, y})); };
    CHECK(hit(0.2, 0.2) == 0u);
    CHECK(hit(0.5, 0.5) == 1u);
    CHECK(hit(0.8, 0.91) == 2u);
    CHECK(hit(0.9, 0.2) == std::nullopt);
    CHECK(mark_at({}, kArea, {50, 150}) == std::nullopt);
}

TEST_CASE("each corner of a box is a handle; the opposite one stays") {
    PhotoMark mark = box(0.2, 0.2, 0.8, 0.8);
    const auto grip = grip_at(mark, kArea, place_of(kArea, {0.8, 0.2}));
    REQUIRE(grip);
    CHECK_FALSE(grip->whole);
    const auto points = dragged(mark, *grip, kArea, {-40, 30});
    REQUIRE(points.size() == 2);
    CHECK(points[0].x == doctest::Approx(0.7));
    CHECK(points[0].y == doctest::Approx(0.3));
    CHECK(points[1] == TagPoint{0.2, 0.8});
}

TEST_CASE("a mark taken in the middle moves whole, keeps its form and stops at the edge") {
    PhotoMark mark = box(0.2, 0.2, 0.6, 0.6);
    const auto grip = grip_at(mark, kArea, place_of(kArea, {0.4, 0.4}));
    REQUIRE(grip);
    CHECK(grip->whole);
    const auto points = dragged(mark, *grip, kArea, {10000, 0});
    CHECK(points[1].x == doctest::Approx(1));
    CHECK(points[0].x == doctest::Approx(0.6));
    CHECK(points[0].y == doctest::Approx(0.2));
}

TEST_CASE("an arrow has two handles, a drag beside a mark takes nothing") {
    PhotoMark mark{TagShape::arrow, {{0.1, 0.1}, {0.9, 0.1}}, {}, 0};
    CHECK(grip_at(mark, kArea, place_of(kArea, {0.1, 0.1})) == MarkGrip{false, 0});
    CHECK(grip_at(mark, kArea, place_of(kArea, {0.9, 0.1})) == MarkGrip{false, 1});
    CHECK(grip_at(mark, kArea, place_of(kArea, {0.5, 0.1})) == MarkGrip{true, 0});
    CHECK(grip_at(mark, kArea, place_of(kArea, {0.5, 0.9})) == std::nullopt);
    CHECK(handles_of(mark, kArea).size() == 2);
}

TEST_CASE("a stroke keeps no more points than the records allow, and none that are too near") {
    std::vector<TagPoint> stroke;
    for (int i = 0; i < 3; ++i) add_to_stroke(stroke, kArea, {50, 150});
    CHECK(stroke.size() == 1);
    for (int i = 0; i < 5000; ++i) add_to_stroke(stroke, kArea, {i % 2 == 0 ? 60.0F : 90.0F, 150});
    CHECK(stroke.size() == 500);
}

TEST_CASE("a slip of the finger is no box and no arrow") {
    CHECK_FALSE(large_enough(box(0.5, 0.5, 0.505, 0.505), kArea));
    CHECK(large_enough(box(0.5, 0.5, 0.6, 0.6), kArea));
    CHECK_FALSE(large_enough({TagShape::stroke, {{0.5, 0.5}}, {}, 0}, kArea));
    CHECK(large_enough({TagShape::point, {{0.5, 0.5}}, {}, 0}, kArea));
}
