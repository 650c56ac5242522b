// See folder_list.h.
#include "app/views/folder_list.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/base/time.h"

namespace cotter {

namespace {

constexpr std::size_t kMostShown = 64;  // bytes of a name
constexpr std::size_t kHead = 40, kTail = 20;

// Where the character that byte `at` belongs to begins.
std::size_t character_start(std::string_view text, std::size_t at) {
    while (at > 0 && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80) --at;
    return at;
}

// U+061C, U+200B…U+200F, U+202A…U+202E, U+2060…U+206F and U+FEFF draw nothing and turn or hide what is around them.
std::size_t hidden_length(std::string_view rest) {
    const auto byte = [&](std::size_t i) { return i < rest.size() ? static_cast<unsigned char>(rest[i]) : 0; };
    if (byte(0) == 0xD8 && byte(1) == 0x9C) return 2;
    if (byte(0) == 0xEF && byte(1) == 0xBB && byte(2) == 0xBF) return 3;
    if (byte(0) != 0xE2) return 0;
    const bool first =
        byte(1) == 0x80 && ((byte(2) >= 0x8B && byte(2) <= 0x8F) || (byte(2) >= 0xA8 && byte(2) <= 0xAE));
    const bool second = byte(1) == 0x81 && byte(2) >= 0xA0 && byte(2) <= 0xAF;
    return first || second ? 3 : 0;
}

std::string size_words(std::uint64_t bytes) {
    if (bytes < 1'000'000) return fmt::format("{} kB", (bytes + 999) / 1000);
    return fmt::format("{}.{} MB", bytes / 1'000'000, bytes % 1'000'000 / 100'000);
}

std::string when_words(std::int64_t unix_s, int offset_min) {
    const auto wall = Instant{unix_s, offset_min}.wall();
    return fmt::format("{} {:02}:{:02}", wall.date.text(), wall.hour, wall.minute);
}

// '###' would start a widget's id anew, and a zero byte end it.
std::string key_of(std::string_view name) {
    std::string out;
    for (const char c : name) out += c == '#' ? std::string("%23") : c == '%' ? std::string("%25") : std::string(1, c);
    return out;
}

FolderEntry entry_of(const FileInfo& info, const std::string& folder, const std::string& name, int offset_min) {
    FolderEntry entry;
    entry.path = join_path(folder, name);
    entry.key = key_of(name);
    entry.shown = safe_name(name);
    entry.folder = info.kind == FileInfo::Kind::folder;
    entry.size = info.size;
    if (!entry.folder) entry.under = size_words(info.size) + ", " + when_words(info.modified_unix_s, offset_min);
    return entry;
}

}  // namespace

std::string safe_name(std::string_view name) {
    const std::string plain = one_line(name, name.size() + 8);
    std::string out;
    for (std::size_t i = 0; i < plain.size();) {
        const std::size_t hidden = hidden_length(std::string_view(plain).substr(i));
        out += hidden > 0 ? '?' : plain[i];
        i += std::max<std::size_t>(1, hidden);
    }
    if (out.size() <= kMostShown) return out;
    const std::size_t head = character_start(out, kHead);
    const std::size_t tail = character_start(out, out.size() - kTail);
    return out.substr(0, head) + "…" + out.substr(tail);
}

bool photo_name(std::string_view name) {
    const std::size_t dot = name.rfind('.');
    if (dot == std::string_view::npos || dot == 0) return false;
    const std::string ending = ascii_lower(name.substr(dot + 1));
    constexpr std::array kEndings{"jpg", "jpeg", "png", "heic", "heif", "webp", "dng", "tif", "tiff", "gif", "bmp"};
    return std::find(kEndings.begin(), kEndings.end(), ending) != kEndings.end();
}

FolderList list_folder(Files& files, const std::string& folder, int offset_min, bool (*wanted)(std::string_view)) {
    FolderList out;
    out.folder = folder;
    out.shown = safe_name(base_name(folder).empty() ? folder : base_name(folder));
    if (const std::string parent = parent_folder(folder); parent != folder && parent != ".") out.parent = parent;
    const auto names = files.list(folder);
    if (!names) {
        out.error = names.error().line();
        return out;
    }
    for (const std::string& name : *names) {
        if (name.empty() || name[0] == '.') continue;
        const auto info = files.info(join_path(folder, name));
        if (!info) continue;  // gone since
        const bool is_folder = info->kind == FileInfo::Kind::folder;
        if (!is_folder && !wanted(name)) {
            out.others += 1;
            continue;
        }
        out.entries.push_back(entry_of(*info, folder, name, offset_min));
    }
    std::stable_sort(out.entries.begin(), out.entries.end(),
                     [](const FolderEntry& a, const FolderEntry& b) { return a.folder > b.folder; });
    return out;
}

}  // namespace cotter
