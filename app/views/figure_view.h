// A maker's figure on its way in: what it bounds, what was keyed so far, where it may have been read, and what earlier
// jobs remember of the same axle model. Plain values from the job and the drafts; no ImGui.
#pragma once

#include <string>
#include <vector>

#include "app/draft.h"
#include "app/ui/keypad_model.h"
#include "app/views/chrome.h"

namespace cotter {

struct FigureOffer {
    MakerLimit figure;  // ready to be put in: new, for this job
    std::string words;  // "at least 2.4 mm"
    std::string source;
};

struct FigureShot {
    Id<Shot> shot;
    std::string picture;
    std::string label;
};

struct FigureView {
    Chrome chrome;
    std::string key;       // of the page
    MakerLimit figure;     // as it stands
    bool there = false;    // it is in the job already
    std::string value;     // "at least 2.4 mm"; empty: not keyed in yet
    std::string practice;  // what counts as long as there is none
    std::string model;     // of the axle; empty: its tag was not read
    std::string for_whom;  // "Axle 1 of this trailer"
    int axle = 0;          // of the route; 0: of none
    KeypadSpec keypad;
    std::vector<FigureOffer> offers;
    std::vector<std::string> documents;  // named before, to be tapped instead of typed
    std::vector<FigureShot> shots;       // of this place
    Route photos;                        // where the photo of a casting is taken in
    std::string missing;                 // what it lacks to be kept; empty: nothing
    Drafts drafts;
};

// Of the route: its record is a limit's id, or the name of the reading that has no limit yet.
[[nodiscard]] FigureView figure_view(const Session& session);

}  // namespace cotter
