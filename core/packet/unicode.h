// File names as different systems see them: composed or decomposed, with or without regard to case. Any thread.
#pragma once

#include <string>
#include <string_view>

namespace cotter {

// `utf8` in normalisation form C; unchanged when it is not UTF-8.
[[nodiscard]] std::string composed(std::string_view utf8);

// A key that is the same for all names that some file system takes for one name: normalised (form C), full Unicode case
// folding, characters that show nothing left out, dots and spaces at the end of each part of the path left out.
[[nodiscard]] std::string folded_path(std::string_view utf8);

// `utf8` as it is searched: lower case, compatible forms made one, accents taken off ("Grün" and "GRUN" are the same),
// letters that only look apart written plainly (ø as o, ł as l, æ as ae). Bytes that are no UTF-8 become spaces.
[[nodiscard]] std::string folded_text(std::string_view utf8);

}  // namespace cotter
