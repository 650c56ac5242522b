// A photo to look at and to mark: pinch and drag to zoom, the marks of its findings over it, new ones drawn by finger.
// And two photos of one thing under a divider. For the photo page.
#pragma once

#include <string_view>

#include "app/ui/photo_marks.h"
#include "app/ui/ui.h"

namespace cotter {

// What a finger on the picture does; two fingers always zoom.
enum class MarkTool { look, point, box, arrow, stroke };

// Passing state; may vanish.
struct MarkedPhotoState {
    PhotoZoom zoom;
    PhotoMark drawing;             // the mark under the finger
    std::optional<MarkGrip> grip;  // a chosen mark is being dragged…
    PhotoMark before;              // …from here
    float divide = 0.5F;           // of two photos: the share that shows the first
};

struct MarkedPhotoSpec {
    std::string picture;          // its id
    float width = 0, height = 0;  // of the upright picture, any unit
    std::span<const PhotoMark> marks;
    std::optional<std::size_t> chosen;  // has handles, and takes drags
    const PhotoMark* begun = nullptr;   // drawn, not yet a finding
    MarkTool tool = MarkTool::look;
};

struct MarkedPhotoAnswer {
    std::optional<std::size_t> tapped;           // a mark
    bool tapped_beside = false;                  // no mark, and nothing drawn by it
    std::optional<PhotoMark> drawn;              // a new one, by the tool
    std::optional<std::vector<TagPoint>> moved;  // the chosen one's points, when the finger leaves
    bool held = false;                           // long press
};

// Full width, as high as the picture needs, at most `most` dp.
MarkedPhotoAnswer marked_photo(UiContext& ui, const Name& name, const MarkedPhotoSpec& spec, MarkedPhotoState& state,
                               float most);

struct TwoPhotosSpec {
    std::string before, after;  // pictures' ids
    float before_width = 1, before_height = 1, after_width = 1, after_height = 1;
};

// The two over each other, a divider to drag between them; beside each other where there is room.
void two_photos(UiContext& ui, const Name& name, const TwoPhotosSpec& spec, MarkedPhotoState& state, float most);

}  // namespace cotter
