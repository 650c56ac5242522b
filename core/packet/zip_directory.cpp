// Method: the end record is found at the very end of the file, the central directory is read as a whole and every
// local header is read and compared with its central one. Sorted by offset, the entries must tile the file from its
// first byte to the central directory; that alone rules out overlaps, hidden entries and bytes nobody accounts for.
#include "core/packet/zip_directory.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/packet/deflate.h"
#include "core/packet/little_endian.h"
#include "core/packet/zip_reader.h"

namespace cotter {

namespace {

using namespace zip;

constexpr std::size_t kLongestComment = 0xffff;

unexpected<Error> broken(std::string what, std::string_view name = {}) {
    return fail(Errc::damaged, std::move(what), one_line(name));
}

Result<Bytes> read_part(const FileReader& file, std::uint64_t at, std::uint64_t size) {
    if (at > file.size() || size > file.size() - at) return broken("the archive points outside itself");
    Bytes out(static_cast<std::size_t>(size));
    COTTER_TRY(file.read_at(at, out));
    return out;
}

// ---- the end of the archive

// Where the central directory lies and how many entries it has.
struct End {
    std::uint64_t entries = 0;
    std::uint64_t directory_size = 0;
    std::uint64_t directory_at = 0;
    std::uint64_t at = 0;  // first byte of the end records
    bool comment = false;
    bool plain64 = true;
};

// A field of the end record: either it says "see zip64" or the two say the same.
bool agrees(std::uint64_t small, std::uint64_t wide, std::uint64_t see_wide) {
    return small == see_wide || small == wide;
}

Result<End> read_end64(const FileReader& file, const End& small) {
    const std::uint64_t end_at = small.at;
    if (end_at < kLocator64Size + kEnd64Size) return broken("the zip64 end record is missing");
    COTTER_ASSIGN(const Bytes both, read_part(file, end_at - kLocator64Size - kEnd64Size, kEnd64Size + kLocator64Size));
    LittleEndianReader l(ByteView(both).subspan(kEnd64Size));
    const bool located = l.u32() == kLocator64Signature && l.u32() == 0;
    const std::uint64_t record_at = l.u64();
    if (!located || l.u32() != 1 || record_at != end_at - kLocator64Size - kEnd64Size)
        return broken("the zip64 locator is missing or broken");
    LittleEndianReader r(both);
    End end = small;
    end.at = record_at;
    bool shaped = r.u32() == kEnd64Signature && r.u64() == kEnd64Size - 12;
    end.plain64 = r.u32() == (std::uint32_t{kOurNeeded64} << 16 | kOurMadeBy);
    shaped = r.u64() == 0 && shaped;  // both disk numbers
    const std::uint64_t here = r.u64();
    end.entries = r.u64();
    end.directory_size = r.u64();
    end.directory_at = r.u64();
    if (!shaped || here != end.entries) return broken("the zip64 end record is broken or of a kind not supported");
    if (!agrees(small.entries, end.entries, kIn64Short) || !agrees(small.directory_size, end.directory_size, kIn64) ||
        !agrees(small.directory_at, end.directory_at, kIn64))
        return broken("the two end records do not agree");
    return end;
}

// The end record at the front of `bytes` when its comment reaches exactly to their end.
Result<End> read_end(ByteView bytes, bool& found) {
    LittleEndianReader r(bytes);
    found = r.u32() == kEndSignature;
    const std::uint64_t disks = r.u32();
    const std::uint64_t here = r.u16();
    End end;
    end.entries = r.u16();
    end.directory_size = r.u32();
    end.directory_at = r.u32();
    const std::uint64_t comment = r.u16();
    end.comment = comment != 0;
    found = found && kEndSize + comment == bytes.size();
    if (found && (disks != 0 || here != end.entries))
        return broken("the archive is one part of several, or its end record is broken");
    return end;
}

// Finds the end record: the last one whose comment reaches exactly to the end of the file.
Result<End> find_end(const FileReader& file) {
    const std::uint64_t tail = std::min<std::uint64_t>(file.size(), kEndSize + kLongestComment);
    if (tail < kEndSize) return fail(Errc::not_ours, "this is not a zip archive");
    COTTER_ASSIGN(const Bytes first, read_part(file, 0, 4));
    const bool zip = LittleEndianReader(first).u32() == kLocalSignature || file.size() == kEndSize;
    COTTER_ASSIGN(const Bytes bytes, read_part(file, file.size() - tail, tail));
    for (std::size_t at = bytes.size() - kEndSize + 1; at-- > 0;) {
        bool found = false;
        auto end = read_end(ByteView(bytes).subspan(at), found);
        if (!found) continue;
        if (!end) return end;
        end->at = file.size() - tail + at;
        const bool in64 = end->entries == kIn64Short || end->directory_size == kIn64 || end->directory_at == kIn64;
        return in64 ? read_end64(file, *end) : end;
    }
    if (!zip) return fail(Errc::not_ours, "this is not a zip archive");
    return fail(Errc::damaged, "the archive is cut off, or bytes were put behind its end", {}, "copy it again");
}

// ---- headers

// Is this field, which carries a second name for programs that look there, at odds with the name itself?
bool names_another(ByteView field, std::string_view name) {
    constexpr std::size_t head = 5;  // version and the CRC of the name it stands for
    return field.size() < head || as_text(field.subspan(head)) != name;
}

// Reads the zip64 extra field where 32-bit fields call for it, and notes any other extra field.
Result<> read_extras(ByteView extras, ZipEntry& entry, std::vector<std::uint64_t*> wanted) {
    LittleEndianReader r(extras);
    while (r.left() > 0) {
        if (r.left() < 4) return broken("its extra fields are broken", entry.name);
        const std::uint16_t kind = r.u16();
        const std::uint16_t size = r.u16();
        if (size > r.left()) return broken("its extra fields are broken", entry.name);
        const ByteView field = r.bytes(size);
        if (kind == kExtraName && names_another(field, entry.name))
            return fail(Errc::refused, "it carries a second, different name", one_line(entry.name));
        if (kind != kExtra64 || wanted.empty() || size != wanted.size() * 8) {
            entry.plain = false;
            continue;
        }
        LittleEndianReader values(field);
        for (std::uint64_t* value : wanted) *value = values.u64();
        wanted.clear();
    }
    if (!wanted.empty())
        return broken("its zip64 sizes are missing or of another number than they should be", entry.name);
    return {};
}

// The fields that local and central headers have in common, from `needed` to the unpacked size.
void read_common(LittleEndianReader& r, ZipEntry& entry) {
    entry.needed = r.u16();
    entry.flags = r.u16();
    entry.method = r.u16();
    entry.at.time = r.u16();
    entry.at.date = r.u16();
    entry.crc = r.u32();
    entry.packed = r.u32();
    entry.size = r.u32();
}

std::vector<std::uint64_t*> in64(std::initializer_list<std::uint64_t*> values) {
    std::vector<std::uint64_t*> out;
    std::copy_if(values.begin(), values.end(), std::back_inserter(out), [](auto* value) { return *value == kIn64; });
    return out;
}

Result<ZipEntry> read_central(LittleEndianReader& r) {
    if (r.left() < kCentralSize || r.u32() != kCentralSignature) return broken("the central directory is broken");
    ZipEntry entry;
    entry.made_by = r.u16();
    read_common(r, entry);
    const std::size_t name = r.u16();
    const std::size_t extra = r.u16();
    const std::size_t comment = r.u16();
    const std::uint16_t disk = r.u16();
    entry.internal = r.u16();
    entry.attributes = r.u32();
    entry.header_at = r.u32();
    if (r.left() < name + extra + comment) return broken("the central directory is cut off");
    entry.name = as_text(r.bytes(name));
    if (disk != 0) return broken("it lies on another disk", entry.name);
    COTTER_TRY(read_extras(r.bytes(extra), entry, in64({&entry.size, &entry.packed, &entry.header_at})));
    entry.plain = entry.plain && comment == 0;
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
            const std::uint64_t packed = wide ? r.u64() : r.u32();
            const std::uint64_t unpacked = wide ? r.u64() : r.u32();
            if (packed == entry.packed && unpacked == entry.size) return size;
        }
    return broken("its data descriptor does not agree with the directory", entry.name);
}

// What of the local header is not as the central one says; empty when they agree.
std::string disagreement(const ZipEntry& local, const ZipEntry& entry, bool described) {
    if (local.name != entry.name) return "its local header and the directory give it different names";
    if (local.flags != entry.flags) return "its local header and the directory have different flags";
    if (local.method != entry.method) return "its local header and the directory name different methods";
    const bool left_open = described && local.crc == 0 && local.packed == 0 && local.size == 0;
    if (left_open) return {};
    if (local.packed != entry.packed || local.size != entry.size)
        return "its local header and the directory give it different sizes";
    return local.crc == entry.crc ? "" : "its local header and the directory give it different checksums";
}

// Reads the local header, which must say the same as the central one, and finds where the entry's bytes lie.
Result<> read_local(const FileReader& file, ZipEntry& entry) {
    COTTER_ASSIGN(const Bytes fixed, read_part(file, entry.header_at, kLocalSize));
    LittleEndianReader r(fixed);
    if (r.u32() != kLocalSignature) return broken("its local header is not where the directory says");
    ZipEntry local;
    read_common(r, local);
    const std::size_t name = r.u16();
    const std::size_t extra = r.u16();
    COTTER_ASSIGN(const Bytes rest, read_part(file, entry.header_at + kLocalSize, name + extra));
    local.name = as_text(ByteView(rest).first(name));
    COTTER_TRY(read_extras(ByteView(rest).subspan(name), local, in64({&local.size, &local.packed})));
    const bool described = (entry.flags & kFlagDescriptor) != 0;
    if (std::string what = disagreement(local, entry, described); !what.empty()) return broken(std::move(what));
    entry.plain = entry.plain && local.plain && local.needed == entry.needed && local.at == entry.at;
    entry.data_at = entry.header_at + kLocalSize + name + extra;
    if (entry.packed > file.size() - entry.data_at) return broken("its data runs past the end of the archive");
    entry.end_at = entry.data_at + entry.packed;
    if (described) {
        COTTER_ASSIGN(const std::uint64_t size, descriptor_size(file, entry, entry.end_at));
        entry.end_at += size;
    }
    return {};
}

// ---- the whole

// The entries must tile [0, directory) without a gap or an overlap, and the directory must reach to the end records.
Result<> check_tiling(const ZipIndex& index, const End& end) {
    std::vector<const ZipEntry*> by_offset;
    for (const ZipEntry& entry : index.entries) by_offset.push_back(&entry);
    std::sort(by_offset.begin(), by_offset.end(), [](auto* a, auto* b) { return a->header_at < b->header_at; });
    std::uint64_t at = 0;
    for (const ZipEntry* entry : by_offset) {
        const auto refuse = [&](const char* what) { return fail(Errc::refused, what, one_line(entry->name)); };
        if (entry->header_at < at) return refuse("it overlaps the entry before it");
        if (entry->header_at > at)
            return refuse(at == 0 ? "there are bytes before the archive"
                                  : "there are bytes before it that belong to nothing");
        at = entry->end_at;
    }
    if (at > end.directory_at) return fail(Errc::refused, "the last entry runs into the central directory");
    if (at < end.directory_at)
        return fail(Errc::refused, "there are bytes before the central directory that belong to nothing");
    if (end.directory_at + end.directory_size != end.at)
        return fail(Errc::refused, "there are bytes behind the central directory that belong to nothing");
    return {};
}

Result<> read_headers(const FileReader& file, ByteView directory, ZipIndex& index, std::size_t most) {
    LittleEndianReader reader(directory);
    while (reader.left() > 0) {
        COTTER_ASSIGN(ZipEntry entry, read_central(reader));
        if (index.entries.size() == most) return fail(Errc::refused, "the archive has more entries than allowed");
        if (auto good = read_local(file, entry); !good) {
            Error error = good.error();
            error.where = one_line(entry.name);
            return unexpected(std::move(error));
        }
        index.entries.push_back(std::move(entry));
    }
    return {};
}

}  // namespace

Result<ZipIndex> read_zip_directory(const FileReader& file, const ZipLimits& limits) {
    COTTER_ASSIGN(const End end, find_end(file));
    if (end.entries > limits.entries) return fail(Errc::refused, "the archive has more entries than allowed");
    if (end.directory_size > limits.directory_size)
        return fail(Errc::refused, "the archive's directory is larger than allowed");
    if (end.at < end.directory_size || end.directory_at > end.at - end.directory_size)
        return broken("the central directory is not where the end record says");
    COTTER_ASSIGN(const Bytes directory, read_part(file, end.directory_at, end.directory_size));
    ZipIndex index;
    index.comment = end.comment;
    index.plain64 = end.plain64;
    COTTER_TRY(read_headers(file, directory, index, limits.entries));
    if (index.entries.size() != end.entries)
        return broken("the directory has another number of entries than the end record says");
    COTTER_TRY(check_tiling(index, end));
    return index;
}

}  // namespace cotter
