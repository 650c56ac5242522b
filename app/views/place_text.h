// Texts of core name places as data does: "axle1-left", "axle 1 left". Screens say them as people here do. Pure.
#pragma once

#include <string>
#include <string_view>

#include "app/settings.h"

namespace cotter {

// `text` with each code of a corner in the words of the screens: "first, at axle1-left: …" becomes
// "First, at axle 1, left: …"; with an upper case letter where the text begins with it.
[[nodiscard]] std::string in_words(std::string_view text, SideWords words);

}  // namespace cotter
