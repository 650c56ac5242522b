// What every page shows around its content, and the words that pages share. Plain values; no ImGui.
#pragma once

#include <string>

#include "app/session/session.h"

namespace cotter {

// The header and what was last said.
struct Chrome {
    std::string title;
    std::string under;
    std::string saved;
    bool saved_ok = true;
    bool undo_enabled = false;
    bool can_redo = false;
    std::string toast;
    bool toast_undo = false;
    bool has_job = false;
};

[[nodiscard]] Chrome chrome_of(const Session& session, std::string title, std::string under = {});

// "Axle 1, left", "Axle 2, curbside, inner wheel", "Drawbar": as the user calls them.
[[nodiscard]] std::string place_words(const Place& place, SideWords words);
[[nodiscard]] std::string side_words(Side side, SideWords words);
// "NUR-07", or what else names the trailer; "New trailer" when nothing does.
[[nodiscard]] std::string trailer_words(const Job& job);
[[nodiscard]] std::string clock_words(const Instant& at);      // "08:14"
[[nodiscard]] std::string day_words(const Instant& at);        // "2026-05-14"
[[nodiscard]] std::string upper_first(std::string_view text);  // of ASCII: "wheel on" -> "Wheel on"
[[nodiscard]] std::string count_words(std::size_t n, std::string_view one, std::string_view many);  // "3 photos"

}  // namespace cotter
