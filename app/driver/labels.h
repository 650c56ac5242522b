// Which of the labels on the screen someone may have meant. Pure; any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cotter {

// Single-character changes that turn one into the other.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

// At most `most` of `labels`, the likest first: those that contain the wanted one, then those nearest to it.
[[nodiscard]] std::vector<std::string> likest(std::string_view wanted, std::vector<std::string> labels,
                                              std::size_t most);

}  // namespace cotter
