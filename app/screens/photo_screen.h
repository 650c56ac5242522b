// A photo: look closely, mark what is wrong, say what it is, compare before and after. What goes out: marks, findings,
// the draft of one, where the photo belongs.
#pragma once

#include "app/command.h"
#include "app/screens/finding_entry_sheet.h"
#include "app/ui/marked_photo.h"
#include "app/views/shot_place_view.h"

namespace cotter {

struct PhotoState {
    MarkedPhotoState photo;
    MarkTool tool = MarkTool::point;
    std::optional<Id<Tag>> chosen;
    bool compare = false;
    bool moving = false;  // the sheet that asks where the photo belongs
    FindingSheetState finding;
};

// `place`: for the sheet that moves the photo.
void draw_photo(UiContext& ui, const PhotoView& view, const ShotPlaceView& place, PhotoState& state, Commands& out);

}  // namespace cotter
