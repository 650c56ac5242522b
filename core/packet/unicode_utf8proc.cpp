// The only file that includes utf8proc.
#include "core/packet/unicode.h"

#include <algorithm>
#include <cstdlib>
#include <memory>

#include <utf8proc.h>

#include "core/base/text.h"

namespace cotter {

namespace {

bool is_ascii(std::string_view text) {
    return std::none_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
}

std::string mapped(std::string_view utf8, int options) {
    utf8proc_uint8_t* out = nullptr;
    const auto size =
        utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(utf8.data()), static_cast<utf8proc_ssize_t>(utf8.size()),
                     &out, static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE | options));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner(out, &std::free);
    if (size < 0) return std::string(utf8);
    return {reinterpret_cast<const char*>(out), static_cast<std::size_t>(size)};
}

std::string without_tail(std::string_view part) {
    while (!part.empty() && (part.back() == '.' || part.back() == ' ')) part.remove_suffix(1);
    return std::string(part);
}

}  // namespace

std::string composed(std::string_view utf8) {
    return is_ascii(utf8) ? std::string(utf8) : mapped(utf8, 0);
}

std::string folded_path(std::string_view utf8) {
    const std::string flat = is_ascii(utf8) ? ascii_lower(utf8) : mapped(utf8, UTF8PROC_CASEFOLD | UTF8PROC_IGNORE);
    std::string out;
    for (std::string_view rest = flat;;) {
        const auto slash = rest.find('/');
        out += without_tail(rest.substr(0, slash));
        if (slash == std::string_view::npos) return out;
        out += '/';
        rest.remove_prefix(slash + 1);
    }
}

std::string folded_text(std::string_view utf8) {
    if (is_ascii(utf8)) return ascii_lower(utf8);
    std::string valid(utf8);
    if (!is_utf8(utf8))
        std::replace_if(
            valid.begin(), valid.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x80; }, ' ');
    // Case first, and marks after taking apart: asked for in one call, some capitals would keep their marks.
    std::string out = mapped(mapped(valid, UTF8PROC_CASEFOLD | UTF8PROC_COMPAT | UTF8PROC_IGNORE), UTF8PROC_STRIPMARK);
    constexpr std::pair<std::string_view, std::string_view> kPlain[]{{"ø", "o"},  {"ł", "l"},  {"đ", "d"},
                                                                     {"æ", "ae"}, {"œ", "oe"}, {"ı", "i"}};
    for (const auto& [letter, plain] : kPlain)
        for (auto at = out.find(letter); at != std::string::npos; at = out.find(letter, at + plain.size()))
            out.replace(at, letter.size(), plain);
    return out;
}

}  // namespace cotter
