// A reading beside its limit: what the judges say of it, with the bound in the unit that was entered. A draft is judged
// as if it were recorded already, so that the keypad says what the summary will say. Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>

#include "app/session/session.h"
#include "app/views/reading_view.h"

namespace cotter {

[[nodiscard]] JudgedReading judged_reading(const Session& session, const Reading& reading);
// The entry of the session's draft, judged; for the pages that show the keypad.
[[nodiscard]] ReadingEntry judged_entry(const Session& session, const ReadingDraft& draft);

}  // namespace cotter
