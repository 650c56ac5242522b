// Paths that are safe everywhere, and the form that our own writer gives an archive.
#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/deflate.h"
#include "core/packet/zip_reader.h"

namespace cotter {

namespace {

constexpr std::size_t kLongestPath = 1'000;  // bytes; the shortest limit of the systems in use is near it

// Names that Windows keeps for devices, with any extension.
bool is_device_name(std::string_view part) {
    const std::string stem = ascii_lower(part.substr(0, part.find('.')));
    if (stem == "con" || stem == "prn" || stem == "aux" || stem == "nul") return true;
    return stem.size() == 4 && (stem.starts_with("com") || stem.starts_with("lpt")) && stem[3] >= '1' && stem[3] <= '9';
}

std::string unsafe_part(std::string_view part) {
    if (part.empty()) return "its path has an empty part";
    if (part == "." || part == "..") return "its path would lead out of its folder";
    if (part.back() == '.' || part.back() == ' ') return "its name ends with a dot or space, which not every system keeps";
    if (is_device_name(part)) return "its name is one that Windows keeps for devices";
    return {};
}

}  // namespace

std::string unsafe_path(std::string_view path) {
    if (path.empty() || path.size() > kLongestPath) return "its path is empty or too long";
    if (!is_utf8(path)) return "its name is not UTF-8";
    if (path.front() == '/') return "its path is absolute";
    for (const char c : path) {
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) return "its name has a control character";
        if (c == '\\') return "its path has a backslash";
        if (c == ':' || c == '*' || c == '?' || c == '"' || c == '<' || c == '>' || c == '|')
            return fmt::format("its name has a '{}', which not every system allows", c);
    }
    while (true) {
        const auto slash = path.find('/');
        if (std::string why = unsafe_part(path.substr(0, slash)); !why.empty()) return why;
        if (slash == std::string_view::npos) return {};
        path.remove_prefix(slash + 1);
    }
}

std::string not_canonical(const ZipIndex& index) {
    using namespace zip;
    if (index.comment) return "the archive carries a comment";
    if (!index.plain64) return "the archive's end record is not as Cotter writes it";
    std::uint64_t at = 0;
    for (const ZipEntry& entry : index.entries) {
        const bool wide = entry.size >= kIn64 || entry.packed >= kIn64 || entry.header_at >= kIn64;
        const bool ours = entry.made_by == kOurMadeBy && entry.needed == (wide ? kOurNeeded64 : kOurNeeded) &&
                          entry.flags == kFlagUtf8 && entry.internal == 0 && entry.attributes == kOurAttributes &&
                          entry.at == index.entries.front().at && entry.plain_extras && entry.header_at == at;
        if (!ours) return fmt::format("the archive's entry for {} is not as Cotter writes it", one_line(entry.name));
        at = entry.end_at;
    }
    return {};
}

Result<bool> compressed_as_ours(const FileReader& file, const ZipEntry& entry, ByteView unpacked) {
    if (entry.method != zip::kDeflated) return true;
    Bytes packed(static_cast<std::size_t>(entry.packed));
    COTTER_TRY(file.read_at(entry.data_at, packed));
    return packed == deflate_bytes(unpacked);
}

}  // namespace cotter
