// Lists of words parted by '|', as the tables of this folder hold them.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace cotter {

template <class F>
void each_word(std::string_view words, F&& f) {
    while (!words.empty()) {
        const auto bar = std::min(words.find('|'), words.size());
        f(words.substr(0, bar));
        words.remove_prefix(std::min(bar + 1, words.size()));
    }
}

// Is one of them in the text? A word after '=' must be all of it.
[[nodiscard]] inline bool has_word(std::string_view text, std::string_view words) {
    bool found = false;
    each_word(words, [&](std::string_view word) {
        const bool whole = word.starts_with('=');
        found = found || (whole ? text == word.substr(1) : text.find(word) != std::string_view::npos);
    });
    return found;
}

[[nodiscard]] inline std::vector<std::string> listed_words(std::string_view words) {
    std::vector<std::string> out;
    each_word(words, [&](std::string_view word) { out.emplace_back(word); });
    return out;
}

}  // namespace cotter
