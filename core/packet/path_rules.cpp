// Paths judged by the strictest of the systems that a packet may be unpacked on.
#include "core/packet/path_rules.h"

#include <algorithm>
#include <unordered_map>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/unicode.h"

namespace cotter {

namespace {

constexpr std::size_t kLongestPath = 1'000;  // bytes; the shortest limit of the systems in use is near it
constexpr std::size_t kLongestPart = 255;
constexpr std::ptrdiff_t kMostParts = 32;

// Names that Windows keeps for devices, with any extension.
bool is_device_name(std::string_view part) {
    std::string stem = ascii_lower(part.substr(0, part.find('.')));
    while (!stem.empty() && stem.back() == ' ') stem.pop_back();
    for (const char* name : {"con", "prn", "aux", "nul", "conin$", "conout$"})
        if (stem == name) return true;
    if (!stem.starts_with("com") && !stem.starts_with("lpt")) return false;
    const std::string_view number = std::string_view(stem).substr(3);
    for (const char* superscript : {"\u00B9", "\u00B2", "\u00B3"})
        if (number == superscript) return true;
    return number.size() == 1 && number[0] >= '0' && number[0] <= '9';
}

std::string unsafe_part(std::string_view part) {
    if (part.empty()) return "its path has an empty part";
    if (part.find_first_not_of(". ") == std::string_view::npos)
        return "its path has a part of dots alone, which would lead to another folder";
    if (part.size() > kLongestPart) return "its name is too long";
    if (is_device_name(part)) return "its name is one that Windows keeps for devices";
    return {};
}

// The first answer that `judge` gives for a part of the path.
template <class Judge>
std::string first_answer(std::string_view path, Judge judge) {
    while (true) {
        const auto slash = path.find('/');
        if (std::string why = judge(path.substr(0, slash)); !why.empty()) return why;
        if (slash == std::string_view::npos) return {};
        path.remove_prefix(slash + 1);
    }
}

// What one spelling of a path, of a file or of a folder on the way to one, was first seen as.
struct Seen {
    std::string_view spelling;
    bool folder;
    bool listed;  // by itself, not only as the way to another
};

class Spellings {
public:
    // Gives whether the path had not been seen before.
    Result<bool> add(std::string_view path, bool folder, bool listed) {
        auto [it, fresh] = seen_.try_emplace(folded_path(path), Seen{path, folder, listed});
        if (fresh) return true;
        Seen& before = it->second;
        const std::string where = one_line(path);
        if (before.spelling != path)
            return fail(Errc::refused,
                        fmt::format("its name and {} are the same where case or accents are not told apart",
                                    one_line(before.spelling)),
                        where);
        if (listed && before.listed) return fail(Errc::refused, "the name stands there twice", where);
        if (before.folder != folder) return fail(Errc::refused, "the name is both a file and a folder", where);
        before.listed = before.listed || listed;
        return false;
    }

private:
    std::unordered_map<std::string, Seen> seen_;
};

}  // namespace

std::string unsafe_path(std::string_view path) {
    if (path.empty()) return "its path is empty";
    if (path.size() > kLongestPath) return "its path is too long";
    if (!is_utf8(path)) return "its name is not UTF-8";
    if (path.front() == '/') return "its path is absolute";
    if (std::count(path.begin(), path.end(), '/') >= kMostParts) return "its path has too many levels";
    for (const char c : path) {
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) return "its name has a control character";
        if (c == '\\') return "its path has a backslash";
        if (c == ':') return "its path has a colon, as drives and hidden streams have";
    }
    return first_answer(path, unsafe_part);
}

std::string unportable_path(std::string_view path) {
    const auto odd = path.find_first_of("*?\"<>|");
    if (odd != std::string_view::npos)
        return fmt::format("its name has a '{}', which not every system allows", path[odd]);
    return first_answer(path, [](std::string_view part) -> std::string {
        const bool tail = part.ends_with('.') || part.ends_with(' ');
        return tail ? "its name ends with a dot or space, which not every system keeps" : "";
    });
}

Result<> check_collisions(const std::vector<std::string_view>& paths) {
    Spellings spellings;
    for (std::string_view path : paths) {
        const bool folder = path.ends_with('/');
        if (folder) path.remove_suffix(1);
        COTTER_TRY(spellings.add(path, folder, true));
        for (auto slash = path.rfind('/'); slash != std::string_view::npos; slash = path.rfind('/')) {
            path = path.substr(0, slash);
            COTTER_ASSIGN(const bool fresh, spellings.add(path, true, false));
            if (!fresh) break;  // and so are the folders above it
        }
    }
    return {};
}

}  // namespace cotter
