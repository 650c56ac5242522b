// Where marks lie on a picture that is zoomed and moved, and what a finger does to them. For the marked photo and its
// tests. Pure, no ImGui; any thread. Spots are 0…1 of the upright picture; places are dp of the screen.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "app/ui/target_log.h"
#include "core/survey/records.h"

namespace cotter {

// How a picture is looked at: the spot in the middle of its area, and how much larger than whole it is shown.
struct PhotoZoom {
    static constexpr float kMost = 8;
    float factor = 1;  // 1…kMost
    Point middle{0.5F, 0.5F};
    bool operator==(const PhotoZoom&) const = default;
};

// Where the whole picture lies, partly outside `area` when zoomed.
[[nodiscard]] Rect picture_rect(const Rect& area, float width, float height, const PhotoZoom& zoom);

// The zoom after a pinch by `factor` about the place `at`, and a drag by `by`; kept so that the picture fills what it
// can of the area.
[[nodiscard]] PhotoZoom zoomed(const Rect& area, float width, float height, const PhotoZoom& zoom, float factor,
                               Point at, Point by);

[[nodiscard]] Point place_of(const Rect& picture, const TagPoint& spot);
[[nodiscard]] TagPoint spot_of(const Rect& picture, Point place);  // held within 0…1

struct PhotoMark {
    TagShape shape = TagShape::point;
    std::vector<TagPoint> points;
    std::optional<Grade> grade;  // none: not graded yet
    int number = 0;              // of its finding; 0: none yet
};

inline constexpr float kGrip = 28;  // dp round a spot that a gloved finger counts as on it

// Distance in dp from `place` to the mark's lines; a box counts by its edge, and its inside as near.
[[nodiscard]] float distance_to(const PhotoMark& mark, const Rect& picture, Point place);
// The nearest mark within kGrip, the last one among equals.
[[nodiscard]] std::optional<std::size_t> mark_at(std::span<const PhotoMark> marks, const Rect& picture, Point place);

// What of a chosen mark a drag that begins at `place` takes: one of its points, or all of it.
struct MarkGrip {
    bool whole = false;
    std::size_t point = 0;
    bool operator==(const MarkGrip&) const = default;
};
// The four corners of a box can be taken; `points` are turned so that the corner taken is points[grip.point].
[[nodiscard]] std::optional<MarkGrip> grip_at(PhotoMark& mark, const Rect& picture, Point place);
// The points after the grip was dragged by `by` dp; a whole mark stops at the picture's edge and keeps its form.
[[nodiscard]] std::vector<TagPoint> dragged(const PhotoMark& mark, const MarkGrip& grip, const Rect& picture, Point by);

// The places where a chosen mark can be taken.
[[nodiscard]] std::vector<Point> handles_of(const PhotoMark& mark, const Rect& picture);

// Adds a place to a line being drawn, when it is far enough from the last one; a stroke has at most 500 points.
void add_to_stroke(std::vector<TagPoint>& stroke, const Rect& picture, Point place);

// False for a box or arrow so small that it was a slip.
[[nodiscard]] bool large_enough(const PhotoMark& mark, const Rect& picture);

// The place of a mark's number: right above its first point (a box's top left, an arrow's tail).
[[nodiscard]] Point badge_place(const PhotoMark& mark, const Rect& picture);

}  // namespace cotter
