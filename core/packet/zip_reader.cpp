// What is asked of entries before they are unpacked, and the unpacking.
#include "core/packet/zip_reader.h"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/deflate.h"
#include "core/packet/path_rules.h"

namespace cotter {

namespace {

using namespace zip;

constexpr std::size_t kZipPiece = std::size_t{256} << 10;  // stays in the second-level cache between its uses
constexpr std::uint64_t kRatioCountsFrom = 1u << 20;

bool is_link_or_special(const ZipEntry& entry) {
    const int system = entry.made_by >> 8;
    const bool has_mode = system == 3 || system == 19;  // Unix, OS X
    const std::uint32_t type = (entry.attributes >> 16) & 0170000u;
    return has_mode && type != 0 && type != 0100000u && type != 0040000u;
}

std::string bad_method(const ZipEntry& entry) {
    if ((entry.flags & (kFlagEncrypted | kFlagStrongEncryption | kFlagMasked)) != 0) return "it is encrypted";
    if ((entry.flags & ~(kFlagDescriptor | kFlagUtf8 | kFlagsLevel)) != 0)
        return "it uses a zip feature that packets do not";
    if (entry.method == kStored || entry.method == kDeflated) return {};
    return fmt::format("it is packed by method {}, packets are stored or deflated", entry.method);
}

std::string bad_size(const ZipEntry& entry, const ZipLimits& limits) {
    if (entry.method == kStored && entry.packed != entry.size) return "it is stored, but its two sizes differ";
    if (entry.folder() && entry.size != 0) return "it is a folder, but holds bytes";
    if (entry.size > limits.file_size) return "it is larger than allowed";
    if (entry.size > kRatioCountsFrom && entry.size / std::max<std::uint64_t>(entry.packed, 1) > limits.ratio)
        return fmt::format("it would unpack to more than {} times its size, which looks like a trap", limits.ratio);
    return {};
}

std::string bad_entry(const ZipEntry& entry, const ZipLimits& limits) {
    std::string_view path = entry.name;
    if (entry.folder()) path.remove_suffix(1);
    if (std::string why = unsafe_path(path); !why.empty()) return why;
    if (is_link_or_special(entry)) return "it is a link or a special file";
    if (std::string why = bad_method(entry); !why.empty()) return why;
    return bad_size(entry, limits);
}

}  // namespace

Result<ZipIndex> read_zip_index(const FileReader& file, const ZipLimits& limits) {
    COTTER_ASSIGN(ZipIndex index, read_zip_directory(file, limits));
    std::uint64_t total = 0;
    std::vector<std::string_view> names;
    for (const ZipEntry& entry : index.entries) {
        if (std::string why = bad_entry(entry, limits); !why.empty())
            return fail(Errc::refused, std::move(why), one_line(entry.name));
        names.push_back(entry.name);
        total += entry.size;
        if (total > limits.total_size) return fail(Errc::refused, "the archive would unpack to more than allowed");
    }
    COTTER_TRY(check_collisions(names));
    return index;
}

Result<> read_entry(const FileReader& file, const ZipEntry& entry, const std::function<void(ByteView)>& sink,
                    std::span<std::uint8_t> into) {
    const auto in_entry = [&](const Error& error) { return unexpected(context(error, one_line(entry.name))); };
    std::uint32_t crc = 0;
    const auto count = [&](ByteView piece) {
        crc = crc32_of(piece, crc);
        sink(piece);
    };
    const auto unpack = [&](ByteView piece) {  // never more than declared: the inflater refuses that
        if (into.empty()) return count(piece);
        const auto place = into.first(piece.size());
        std::copy(piece.begin(), piece.end(), place.begin());
        into = into.subspan(piece.size());
        count(place);
    };
    std::optional<Inflater> inflater;
    if (entry.method == kDeflated) inflater.emplace(entry.size);
    const bool in_place = !inflater && !into.empty();
    Bytes buffer(in_place ? 0 : static_cast<std::size_t>(std::min<std::uint64_t>(entry.packed, kZipPiece)));
    for (std::uint64_t done = 0; done < entry.packed;) {
        const auto size = static_cast<std::size_t>(std::min<std::uint64_t>(entry.packed - done, kZipPiece));
        const auto piece =
            in_place ? into.subspan(static_cast<std::size_t>(done), size) : std::span(buffer).first(size);
        COTTER_TRY(file.read_at(entry.data_at + done, piece));
        done += size;
        if (!inflater)
            count(piece);
        else if (auto good = inflater->add(piece, unpack); !good)
            return in_entry(good.error());
    }
    if (inflater)
        if (auto good = inflater->finish(); !good) return in_entry(good.error());
    if (crc != entry.crc)
        return fail(Errc::damaged, "its bytes do not match its checksum in the archive", one_line(entry.name));
    return {};
}

}  // namespace cotter
