// The sheet on which a finding is put together: what it is, how bad, what to do. For the photo page.
// What goes out: the draft at each step, the finding, its removal.
#pragma once

#include "app/command.h"
#include "app/ui/ui.h"
#include "app/views/photo_view.h"

namespace cotter {

// Which list of words is open; may vanish.
enum class WordList { usual, components, defects, places };

struct FindingSheetState {
    WordList list = WordList::usual;
    bool choosing = false;  // other words for a finding that has some already
    bool fresh = false;     // saved a moment ago with its usual grade; another grade, or 'Done', ends it
};

void draw_finding_sheet(UiContext& ui, const FindingEntry& entry, const Drafts& drafts, FindingSheetState& state,
                        Commands& out);

// The drafts with this finding in them, or with none.
[[nodiscard]] KeepDrafts keep_finding(const Drafts& drafts, const std::optional<FindingDraft>& finding);

}  // namespace cotter
