// Taking photos in: a file picker of our own, then the quick pass 'which corner?'. What goes out: files to take in,
// where a photo belongs, the folder to begin with.
#pragma once

#include <set>

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/folder_list.h"
#include "app/views/intake_view.h"

namespace cotter {

struct IntakeState {
    FolderList list;
    double listed_s = -1;          // when, on the screen's clock; below 0: not yet
    std::set<std::string> chosen;  // paths
    std::string one;               // path tapped to be taken in at once
    std::optional<Stage> stage;    // chosen for the new photos
    bool placing = false;          // the pass that asks where each belongs
    std::size_t at = 0;            // in the pass
    std::optional<Place> place;    // of the photo before: the next is most often of the same corner
    Stage placed_stage = Stage::before;
};

// Reads the folder when it is time to; in each frame in which the page is shown.
void look_at_folder(UiContext& ui, const IntakeView& view, IntakeState& state, Files& files);

void draw_intake(UiContext& ui, const IntakeView& view, const ShotPlaceView& place, IntakeState& state, Commands& out);

}  // namespace cotter
