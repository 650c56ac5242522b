// UTF-8 checking and names made safe.
#include "core/base/text.h"

#include <cstdint>

namespace cotter {

namespace {

// Length of the well-formed UTF-8 sequence at the start of `text`, 0 when there is none. Ranges after Unicode table
// 3-7.
std::size_t sequence_length(std::string_view text) {
    const auto byte = [&](std::size_t i) -> unsigned {
        return i < text.size() ? static_cast<std::uint8_t>(text[i]) : 0u;
    };
    const auto tail = [&](std::size_t i) { return byte(i) >= 0x80 && byte(i) <= 0xBF; };
    const unsigned b0 = byte(0);
    if (b0 < 0x80) return 1;
    if (b0 >= 0xC2 && b0 <= 0xDF) return tail(1) ? 2 : 0;
    if (b0 >= 0xE0 && b0 <= 0xEF) {
        const unsigned low = b0 == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = b0 == 0xED ? 0x9F : 0xBF;
        return byte(1) >= low && byte(1) <= high && tail(2) ? 3 : 0;
    }
    if (b0 >= 0xF0 && b0 <= 0xF4) {
        const unsigned low = b0 == 0xF0 ? 0x90 : 0x80;
        const unsigned high = b0 == 0xF4 ? 0x8F : 0xBF;
        return byte(1) >= low && byte(1) <= high && tail(2) && tail(3) ? 4 : 0;
    }
    return 0;
}

bool is_name_char(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' || c == '-';
}

}  // namespace

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        const std::size_t length = sequence_length(text);
        if (length == 0) return false;
        text.remove_prefix(length);
    }
    return true;
}

std::string ascii_lower(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return out;
}

std::vector<std::string> split(std::string_view text, std::string_view separator) {
    std::vector<std::string> parts;
    for (;;) {
        const auto end = text.find(separator);
        parts.emplace_back(text.substr(0, end));
        if (end == std::string_view::npos) return parts;
        text.remove_prefix(end + separator.size());
    }
}

std::string file_safe(std::string_view text) {
    std::string out;
    for (const char c : text) {
        const char safe = is_name_char(c) ? c : '-';
        if (safe != '-' || (!out.empty() && out.back() != '-')) out += safe;
    }
    while (!out.empty() && (out.back() == '-' || out.back() == '.')) out.pop_back();
    while (!out.empty() && out.front() == '.') out.erase(0, 1);
    return out.empty() ? "x" : out;
}

std::string one_line(std::string_view text, std::size_t max) {
    std::string out;
    while (!text.empty()) {
        const std::size_t length = sequence_length(text);
        const std::size_t take = length == 0 ? 1 : length;
        if (out.size() + take > max) return out + "…";
        const bool control = length == 1 && (text[0] < 0x20 || text[0] == 0x7f);
        if (length == 0 || control)
            out += '?';
        else
            out += text.substr(0, take);
        text.remove_prefix(take);
    }
    return out;
}

}  // namespace cotter
