// What am I looking at, and what do I do: one page of help for each screen, with the dangers that belong to it.
#pragma once

#include <string_view>
#include <vector>

#include "app/nav.h"

namespace cotter {

struct HelpPart {
    std::string_view title;  // empty: a plain paragraph
    std::string_view text;
    bool danger = false;  // a caution
};

struct HelpPage {
    std::string_view title;
    std::vector<HelpPart> parts;
};

[[nodiscard]] HelpPage help_page(Screen screen);
[[nodiscard]] HelpPage quote_help(Screen screen);  // of the pages about prices
[[nodiscard]] HelpPage point_help(Screen screen);  // of the pages about what is looked at

// On every page of help and at the start of each job.
inline constexpr std::string_view kStanding =
    "The axle, brake, wheel and tyre makers' manuals, local codes and a licensed or qualified inspector prevail over "
    "anything shown here. Figures of common practice are no limits.";

}  // namespace cotter
