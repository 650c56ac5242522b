// UTF-8 texts that came from outside: are they valid, do two names collide, what may stand in a file name.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cotter {

// True when `text` is well-formed UTF-8 (no overlong forms, surrogates or values over U+10FFFF).
[[nodiscard]] bool is_utf8(std::string_view text);

// Lower case for ASCII letters only; other bytes stay.
[[nodiscard]] std::string ascii_lower(std::string_view text);

// The parts of `text` between the separators; one, maybe empty, where there is none. `separator` is not empty.
[[nodiscard]] std::vector<std::string> split(std::string_view text, std::string_view separator);

// `text` with everything but ASCII letters, digits, '.' and '-' turned into '-', runs folded; "x" when nothing is left.
[[nodiscard]] std::string file_safe(std::string_view text);

// `text` fit for one line of a terminal or log: control characters shown as '?', invalid bytes as '?',
// cut after `max` bytes at a character boundary with "…" behind.
[[nodiscard]] std::string one_line(std::string_view text, std::size_t max = 200);

}  // namespace cotter
