// The English of facts, of their sources, and of a whole answer. For screens, the report and the command line, until
// they take their words from a catalogue. Pure; any thread.
#pragma once

#include <string>

#include "core/judge/answer.h"

namespace cotter {

[[nodiscard]] std::string english(const Fact& fact);

// What a rule of the United States means for a trailer: whether it binds, and whether it concerns it at all.
struct LawSetting {
    bool binds = false;   // a carrier across state lines, rated (alone or with its tow vehicle) 10,001 lb or more
    std::string foreign;  // a country without rules entered: its code; empty otherwise
};
[[nodiscard]] LawSetting law_setting(const Job& job);

// "Law: 49 CFR 393.47(d)(2)", "Reference (binds commercial trailers): …; your state decides", "No rule entered for DE".
// A source seen in part or from memory says so. Empty for what was simply recorded.
[[nodiscard]] std::string source_line(const AnswerSource& source, const LawSetting& setting);

[[nodiscard]] std::string english(const PointAnswer& answer);  // "axle 1 left, Tread depth: …", without the source
// "And 3 more things not known." Empty for none.
[[nodiscard]] std::string and_more(std::size_t n, std::string_view one, std::string_view many);
// The one line for the top of a screen.
[[nodiscard]] std::string english(const TowAnswer& answer, const LawSetting& setting);

}  // namespace cotter
