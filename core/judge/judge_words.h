// The texts of judging that people see and that are needed in more than one place; plain words, short. Pure.
#pragma once

#include <string>
#include <string_view>

#include "core/judge/limit.h"

namespace cotter::words {

inline constexpr std::string_view kConfirm = "confirm with the maker";
inline constexpr std::string_view kNoCertificate =
    "Cotter certifies nothing. The makers' manuals, local codes and a licensed or qualified inspector prevail.";

[[nodiscard]] std::string source(SourceKind kind, const std::string& text);
[[nodiscard]] std::string person(const std::string& name);  // "seen and graded by R. Alder"
[[nodiscard]] std::string on_the_casting();
[[nodiscard]] std::string place(const Place& place);  // "axle 1 left", "drawbar", "the trailer"
[[nodiscard]] std::string against(Stand stand, const std::string& reading, const Limit& limit);
[[nodiscard]] std::string not_taken(Taken taken, const std::string& reason);
[[nodiscard]] std::string not_measured();
[[nodiscard]] std::string after_repair(std::string_view component);
[[nodiscard]] std::string number(double value, int digits);  // no trailing zeros cut: as many digits as told
inline constexpr double kPound = 0.45359237;                 // kg, exact
inline constexpr double kPsi = 6894.757293168;               // Pa
[[nodiscard]] std::string pounds(double kg);                 // "3500 lb", to a whole pound

}  // namespace cotter::words
