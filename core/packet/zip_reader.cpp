// Method: the end record is found at the very end of the file, the central directory is read as a whole and every
// local header is read and compared with its central one. Sorted by offset, the entries must tile the file from its
// first byte to the central directory; that alone rules out overlaps, hidden entries and bytes nobody accounts for.
#include "core/packet/zip_reader.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/deflate.h"
#include "core/packet/little_endian.h"

namespace cotter {

namespace {

using namespace zip;

constexpr std::size_t kLongestComment = 0xffff;
constexpr std::size_t kChunk = std::size_t{1} << 20;
constexpr std::uint64_t kRatioCountsFrom = 1u << 20;

// Where the central directory lies and how many entries it has.
struct End {
    std::uint64_t entries = 0;
    std::uint64_t directory_size = 0;
    std::uint64_t directory_at = 0;
    std::uint64_t at = 0;  // first byte of the end records
    bool comment = false;
    bool plain64 = true;
};

unexpected<Error> broken(std::string what, std::string_view name = {}) {
    return fail(Errc::damaged, std::move(what), one_line(name));
}

Result<Bytes> read_part(const FileReader& file, std::uint64_t at, std::uint64_t size) {
    if (at > file.size() || size > file.size() - at) return broken("the archive points outside itself");
    Bytes out(static_cast<std::size_t>(size));
    COTTER_TRY(file.read_at(at, out));
    return out;
}

Result<End> read_end64(const FileReader& file, End end, std::uint64_t end_at) {
    if (end_at < kLocator64Size + kEnd64Size) return broken("the zip64 end record is missing");
    COTTER_ASSIGN(const Bytes locator, read_part(file, end_at - kLocator64Size, kLocator64Size));
    LittleEndianReader l(locator);
    if (l.u32() != kLocator64Signature || l.u32() != 0) return broken("the zip64 locator is broken");
    end.at = l.u64();
    if (l.u32() != 1 || end.at != end_at - kLocator64Size - kEnd64Size) return broken("the zip64 locator is broken");
    COTTER_ASSIGN(const Bytes record, read_part(file, end.at, kEnd64Size));
    LittleEndianReader r(record);
    bool shaped = r.u32() == kEnd64Signature && r.u64() == kEnd64Size - 12;
    end.plain64 = r.u16() == kOurMadeBy && r.u16() == kOurNeeded64;
    shaped = shaped && r.u32() == 0 && r.u32() == 0;
    const std::uint64_t here = r.u64();
    end.entries = r.u64();
    end.directory_size = r.u64();
    end.directory_at = r.u64();
    if (!shaped || here != end.entries) return broken("the zip64 end record is broken or of a kind not supported");
    return end;
}

// Finds the end record: the last one whose comment reaches exactly to the end of the file.
Result<End> find_end(const FileReader& file) {
    const std::uint64_t tail = std::min<std::uint64_t>(file.size(), kEndSize + kLongestComment);
    if (tail < kEndSize) return fail(Errc::not_ours, "this is not a zip archive");
    COTTER_ASSIGN(const Bytes bytes, read_part(file, file.size() - tail, tail));
    for (std::size_t at = bytes.size() - kEndSize + 1; at-- > 0;) {
        LittleEndianReader r(ByteView(bytes).subspan(at));
        if (r.u32() != kEndSignature) continue;
        const std::uint64_t disks = r.u32();
        const std::uint64_t here = r.u16();
        End end;
        end.entries = r.u16();
        end.directory_size = r.u32();
        end.directory_at = r.u32();
        const std::uint64_t comment = r.u16();
        if (at + kEndSize + comment != bytes.size()) continue;
        if (disks != 0 || here != end.entries) return broken("the archive is one part of several, or its end is broken");
        end.comment = comment != 0;
        end.at = file.size() - tail + at;
        const bool in64 = end.entries == 0xffff || end.directory_size == kIn64 || end.directory_at == kIn64;
        return in64 ? read_end64(file, end, end.at) : Result<End>(end);
    }
    return fail(Errc::not_ours, "this is not a whole zip archive: its end record is missing", {}, "copy it again");
}

// Reads the zip64 extra field where a 32-bit field calls for it, and notes any other extra field.
Result<> read_extras(ByteView extras, ZipEntry& entry, std::vector<std::uint64_t*> wanted) {
    LittleEndianReader r(extras);
    while (r.left() > 0) {
        if (r.left() < 4) return broken("its extra fields are broken", entry.name);
        const std::uint16_t kind = r.u16();
        const std::uint16_t size = r.u16();
        if (size > r.left()) return broken("its extra fields are broken", entry.name);
        LittleEndianReader field(r.bytes(size));
        if (kind != kExtra64 || size != wanted.size() * 8) {
            entry.plain_extras = false;
            continue;
        }
        for (std::uint64_t* value : wanted) *value = field.u64();
        wanted.clear();
    }
    if (!wanted.empty()) return broken("its zip64 sizes are missing", entry.name);
    return {};
}

Result<ZipEntry> read_central(LittleEndianReader& r, std::uint16_t& disk) {
    if (r.left() < kCentralSize || r.u32() != kCentralSignature) return broken("the central directory is broken");
    ZipEntry entry;
    entry.made_by = r.u16();
    entry.needed = r.u16();
    entry.flags = r.u16();
    entry.method = r.u16();
    entry.at.time = r.u16();
    entry.at.date = r.u16();
    entry.crc = r.u32();
    entry.packed = r.u32();
    entry.size = r.u32();
    const std::size_t name = r.u16();
    const std::size_t extra = r.u16();
    const std::size_t comment = r.u16();
    disk = r.u16();
    entry.internal = r.u16();
    entry.attributes = r.u32();
    entry.header_at = r.u32();
    if (r.left() < name + extra + comment) return broken("the central directory is cut off");
    entry.name = as_text(r.bytes(name));
    std::vector<std::uint64_t*> in64;
    for (std::uint64_t* value : {&entry.size, &entry.packed, &entry.header_at})
        if (*value == kIn64) in64.push_back(value);
    COTTER_TRY(read_extras(r.bytes(extra), entry, std::move(in64)));
    entry.plain_extras = entry.plain_extras && comment == 0;
    r.bytes(comment);
    return entry;
}

// The data descriptor behind the data, in any of its four forms; gives its size.
Result<std::uint64_t> descriptor_size(const FileReader& file, const ZipEntry& entry, std::uint64_t at) {
    COTTER_ASSIGN(const Bytes bytes, read_part(file, at, std::min<std::uint64_t>(24, file.size() - at)));
    for (const bool signature : {true, false})
        for (const bool wide : {false, true}) {
            const std::size_t size = (signature ? 4 : 0) + 4 + (wide ? 16 : 8);
            if (bytes.size() < size) continue;
            LittleEndianReader r(bytes);
            if (signature && r.u32() != kDescriptorSignature) continue;
            if (r.u32() != entry.crc) continue;
            if ((wide ? r.u64() : r.u32()) == entry.packed && (wide ? r.u64() : r.u32()) == entry.size) return size;
        }
    return broken("its data descriptor does not agree with the directory", entry.name);
}

// Reads the local header, which must say the same as the central one.
Result<> read_local(const FileReader& file, ZipEntry& entry) {
    COTTER_ASSIGN(const Bytes fixed, read_part(file, entry.header_at, kLocalSize));
    LittleEndianReader r(fixed);
    const bool described = (entry.flags & kFlagDescriptor) != 0;
    ZipEntry local;
    const bool signature = r.u32() == kLocalSignature;
    local.needed = r.u16();
    local.flags = r.u16();
    local.method = r.u16();
    local.at.time = r.u16();
    local.at.date = r.u16();
    local.crc = r.u32();
    local.packed = r.u32();
    local.size = r.u32();
    const std::size_t name = r.u16();
    const std::size_t extra = r.u16();
    if (!signature) return broken("its local header is not where the directory says", entry.name);
    COTTER_ASSIGN(const Bytes rest, read_part(file, entry.header_at + kLocalSize, name + extra));
    local.name = as_text(ByteView(rest).first(name));
    std::vector<std::uint64_t*> in64;
    for (std::uint64_t* value : {&local.size, &local.packed})
        if (*value == kIn64) in64.push_back(value);
    COTTER_TRY(read_extras(ByteView(rest).subspan(name), local, std::move(in64)));
    const bool empty_as_described = described && local.crc == 0 && local.packed == 0 && local.size == 0;
    const bool same_data = local.crc == entry.crc && local.packed == entry.packed && local.size == entry.size;
    if (local.name != entry.name || local.flags != entry.flags || local.method != entry.method ||
        local.at != entry.at || local.needed != entry.needed || !(same_data || empty_as_described))
        return broken("its local header and the directory do not agree", entry.name);
    entry.plain_extras = entry.plain_extras && local.plain_extras;
    entry.data_at = entry.header_at + kLocalSize + name + extra;
    if (entry.packed > file.size() - entry.data_at) return broken("its data runs past the end of the archive", entry.name);
    entry.end_at = entry.data_at + entry.packed;
    if (described) {
        COTTER_ASSIGN(const std::uint64_t size, descriptor_size(file, entry, entry.end_at));
        entry.end_at += size;
    }
    return {};
}

bool is_folder(const ZipEntry& entry) {
    return entry.name.ends_with('/');
}

Result<> check_entry(const ZipEntry& entry, const ZipLimits& limits) {
    const auto refuse = [&](std::string what) { return fail(Errc::refused, std::move(what), one_line(entry.name)); };
    std::string_view path = entry.name;
    if (is_folder(entry)) path.remove_suffix(1);
    if (auto why = unsafe_path(path); !why.empty()) return refuse(std::move(why));
    if ((entry.flags & kFlagEncrypted) != 0) return refuse("it is encrypted");
    if ((entry.flags & ~(kFlagDescriptor | kFlagUtf8 | 6)) != 0) return refuse("it uses zip features that packets do not");
    if (entry.method != kStored && entry.method != kDeflated) return refuse("it is packed by a method that packets do not use");
    if (entry.method == kStored && entry.packed != entry.size) return broken("its two sizes do not agree", entry.name);
    const bool unix_made = entry.made_by >> 8 == 3;
    const std::uint32_t type = (entry.attributes >> 16) & 0170000u;
    if (unix_made && type != 0 && type != 0100000u && type != 0040000u) return refuse("it is a link or a special file");
    if (is_folder(entry) && entry.size != 0) return refuse("a folder cannot hold bytes");
    if (entry.size > limits.file_size) return refuse("it is larger than allowed");
    if (entry.size > kRatioCountsFrom && entry.size / std::max<std::uint64_t>(entry.packed, 1) > limits.ratio)
        return refuse("it would unpack to far more than it takes: this looks like a trap");
    return {};
}

// Sorted with case folded and '/' before everything else, equal names and a file that is also a folder are neighbours.
Result<> check_collisions(const ZipIndex& index) {
    std::vector<std::pair<std::string, const ZipEntry*>> names;
    for (const ZipEntry& entry : index.entries) {
        std::string key = ascii_lower(entry.name);
        std::replace(key.begin(), key.end(), '/', '\0');
        if (is_folder(entry)) key.pop_back();
        names.emplace_back(std::move(key), &entry);
    }
    std::sort(names.begin(), names.end());
    for (std::size_t i = 1; i < names.size(); ++i) {
        const auto& [key, entry] = names[i];
        const auto& [previous_key, previous] = names[i - 1];
        const auto refuse = [&](const char* what) { return fail(Errc::refused, what, one_line(previous->name)); };
        if (key == previous_key)
            return refuse(entry->name == previous->name ? "the name stands twice in the archive"
                                                        : "two names differ in case only");
        if (!is_folder(*previous) && key.starts_with(previous_key + '\0'))
            return refuse("it is a file and a folder at once");
    }
    return {};
}

// The entries must tile [0, directory) without a gap or an overlap.
Result<> check_tiling(const ZipIndex& index, const End& end) {
    std::vector<const ZipEntry*> by_offset;
    for (const ZipEntry& entry : index.entries) by_offset.push_back(&entry);
    std::sort(by_offset.begin(), by_offset.end(), [](auto* a, auto* b) { return a->header_at < b->header_at; });
    std::uint64_t at = 0;
    for (const ZipEntry* entry : by_offset) {
        if (entry->header_at < at) return fail(Errc::refused, "it overlaps the entry before it", one_line(entry->name));
        if (entry->header_at > at) return fail(Errc::refused, "there are bytes before it that belong to nothing", one_line(entry->name));
        at = entry->end_at;
    }
    if (at != end.directory_at || end.directory_at + end.directory_size != end.at)
        return fail(Errc::refused, "there are bytes in the archive that belong to nothing");
    return {};
}

}  // namespace

DosTime DosTime::of(const Instant& at) {
    const Instant::Wall wall = at.wall();
    if (wall.date.year < 1980 || wall.date.year > 2107) return {0, (1 << 5) | 1};  // 1980-01-01
    return {static_cast<std::uint16_t>(wall.hour << 11 | wall.minute << 5 | wall.second / 2),
            static_cast<std::uint16_t>((wall.date.year - 1980) << 9 | wall.date.month << 5 | wall.date.day)};
}

Result<ZipIndex> read_zip_index(const FileReader& file, const ZipLimits& limits) {
    COTTER_ASSIGN(const End end, find_end(file));
    if (end.entries > limits.entries || end.directory_size > limits.directory_size)
        return fail(Errc::refused, "the archive has more entries than allowed");
    if (end.at < end.directory_size || end.directory_at > end.at - end.directory_size)
        return broken("the central directory is not where the end record says");
    COTTER_ASSIGN(const Bytes directory, read_part(file, end.directory_at, end.directory_size));
    ZipIndex index;
    index.comment = end.comment;
    index.plain64 = end.plain64;
    LittleEndianReader reader(directory);
    std::uint64_t total = 0;
    while (reader.left() > 0) {
        std::uint16_t disk = 0;
        COTTER_ASSIGN(ZipEntry entry, read_central(reader, disk));
        if (disk != 0) return broken("it lies on another disk", entry.name);
        COTTER_TRY(check_entry(entry, limits));
        COTTER_TRY(read_local(file, entry));
        total += entry.size;
        if (total > limits.total_size) return fail(Errc::refused, "the archive would unpack to more than allowed");
        index.entries.push_back(std::move(entry));
    }
    if (index.entries.size() != end.entries) return broken("the directory has another number of entries than it says");
    COTTER_TRY(check_collisions(index));
    COTTER_TRY(check_tiling(index, end));
    return index;
}

Result<> read_entry(const FileReader& file, const ZipEntry& entry, const std::function<void(ByteView)>& sink) {
    std::uint32_t crc = 0;
    const auto count = [&](ByteView piece) {
        crc = crc32_of(piece, crc);
        sink(piece);
    };
    Inflater inflater(entry.size);
    Bytes buffer(static_cast<std::size_t>(std::min<std::uint64_t>(entry.packed, kChunk)));
    for (std::uint64_t done = 0; done < entry.packed; done += buffer.size()) {
        if (entry.packed - done < buffer.size()) buffer.resize(static_cast<std::size_t>(entry.packed - done));
        COTTER_TRY(file.read_at(entry.data_at + done, buffer));
        if (entry.method == kStored) {
            count(buffer);
        } else if (auto good = inflater.add(buffer, count); !good) {
            return unexpected(context(good.error(), one_line(entry.name)));
        }
    }
    if (entry.method == kDeflated)
        if (auto good = inflater.finish(); !good) return unexpected(context(good.error(), one_line(entry.name)));
    if (crc != entry.crc) return broken("its bytes do not match its checksum in the archive", entry.name);
    return {};
}

}  // namespace cotter
