// Setting a wheel bearing at a corner: the nut, the maker's figures, the lock positions and what each changes, the dial
// readings, the lock's photo, and what still speaks against calling it proved. Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/views/chrome.h"
#include "app/views/reading_view.h"
#include "core/work/bearing.h"
#include "core/work/torque_check.h"

namespace cotter {

// A way to set it that is seen in public sources. Never a default.
struct MethodView {
    std::string title;
    std::string text;  // its order, the lock and the proof
    std::string source;
};

struct LockShot {
    std::string shot;     // id
    std::string picture;  // the photo's SHA-256
    std::string label;
    bool chosen = false;
};

struct BearingView {
    Chrome chrome;
    Place place;
    BearingSetting setting;           // as it is, or as it would begin; a nil id: not in the job yet
    int at_step = 0;                  // where the nut stands, lock positions from the first
    std::string stands;               // "2 positions looser than at first"
    std::optional<Amount> play;       // measured where the nut stands
    std::string play_words;           // "0.0032 in, within the maker's range"; "not measured here yet"
    std::vector<LockOption> options;  // positions near it; empty: `no_options` says why
    std::string no_options;
    std::vector<BearingRemark> remarks;
    bool proved = false;
    std::optional<UnitDoubt> doubt;    // about the seating torque
    std::vector<MethodView> methods;   // for this nut
    std::vector<LockShot> shots;       // of this corner after the work
    std::vector<std::string> sources;  // that figures of this job came from
    ReadingDraft dial;                 // what the keypad begins with
    Drafts drafts;
    std::optional<ReadingEntry> entry;  // begun here and not yet handed in
};

// By the route's place: the newest setting there, or a new one that takes nut, figures and source over from the last
// one in the job.
[[nodiscard]] BearingView bearing_view(const Session& session);

// The setting with the nut moved by `steps` lock positions; its play is to be measured anew.
[[nodiscard]] BearingSetting moved(BearingSetting setting, int steps);

}  // namespace cotter
