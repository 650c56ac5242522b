// Local headers with sizes and CRC known beforehand, so that nothing is ever written twice.
#include "core/packet/zip_writer.h"

#include <algorithm>

#include "core/packet/deflate.h"
#include "core/packet/little_endian.h"

namespace cotter {

namespace {

using namespace zip;

std::uint64_t in32(std::uint64_t value) {
    return std::min<std::uint64_t>(value, kIn64);
}

// The zip64 extra field for an offset that does not fit 32 bits; empty when it does.
Bytes extra64(std::uint64_t offset) {
    if (offset < kIn64) return {};
    LittleEndianWriter out;
    out.u16(kExtra64).u16(8).u64(offset);
    return out.bytes();
}

void put_common(LittleEndianWriter& w, const ZipEntry& e) {
    w.u16(e.needed).u16(e.flags).u16(e.method).u16(e.at.time).u16(e.at.date).u32(e.crc);
    w.u32(in32(e.packed)).u32(in32(e.size)).u16(e.name.size());
}

Bytes local_header(const ZipEntry& e) {
    LittleEndianWriter w;
    w.u32(kLocalSignature);
    put_common(w, e);
    w.u16(0).text(e.name);
    return w.bytes();
}

Bytes central_header(const ZipEntry& e) {
    const Bytes extra = extra64(e.header_at);
    LittleEndianWriter w;
    w.u32(kCentralSignature).u16(e.made_by);
    put_common(w, e);
    w.u16(extra.size()).u16(0).u16(0).u16(e.internal).u32(e.attributes).u32(in32(e.header_at));
    w.text(e.name).text(as_text(extra));
    return w.bytes();
}

Bytes end_records(std::uint64_t entries, std::uint64_t size, std::uint64_t at) {
    LittleEndianWriter w;
    if (entries >= 0xffff || size >= kIn64 || at >= kIn64) {
        w.u32(kEnd64Signature).u64(kEnd64Size - 12).u16(kOurMadeBy).u16(kOurNeeded64).u32(0).u32(0);
        w.u64(entries).u64(entries).u64(size).u64(at);
        w.u32(kLocator64Signature).u32(0).u64(at + size).u32(1);
    }
    const std::uint64_t count = std::min<std::uint64_t>(entries, 0xffff);
    w.u32(kEndSignature).u32(0).u16(count).u16(count).u32(in32(size)).u32(in32(at)).u16(0);
    return w.bytes();
}

}  // namespace

DosTime DosTime::of(const Instant& at) {
    const Instant::Wall wall = at.wall();
    if (wall.date.year < 1980 || wall.date.year > 2107) return {0, (1 << 5) | 1};
    return {static_cast<std::uint16_t>(wall.hour << 11 | wall.minute << 5 | wall.second / 2),
            static_cast<std::uint16_t>((wall.date.year - 1980) << 9 | wall.date.month << 5 | wall.date.day)};
}

ZipFile ZipFile::make(std::string name, Bytes bytes, Packing packing) {
    ZipFile file;
    file.name = std::move(name);
    file.size = bytes.size();
    file.crc = crc32_of(bytes);
    file.packing = packing;
    file.packed = packing == Packing::deflate ? deflate_bytes(bytes) : std::move(bytes);
    return file;
}

Result<> ZipWriter::put(ByteView bytes) {
    written_ += bytes.size();
    return out_.write(bytes);
}

Result<> ZipWriter::add(const ZipFile& file) {
    ZipEntry entry;
    entry.name = file.name;
    entry.method = file.packing == Packing::deflate ? kDeflated : kStored;
    entry.at = at_;
    entry.crc = file.crc;
    entry.packed = file.packed.size();
    entry.size = file.size;
    entry.header_at = written_;
    if (std::max(entry.size, entry.packed) >= kIn64)
        return fail(Errc::refused, "a file of 4 GiB or more does not go into a packet", file.name);
    if (entry.header_at >= kIn64) entry.needed = kOurNeeded64;
    COTTER_TRY(put(local_header(entry)));
    COTTER_TRY(put(file.packed));
    entries_.push_back(std::move(entry));
    return {};
}

Result<> ZipWriter::finish() {
    const std::uint64_t at = written_;
    for (const ZipEntry& entry : entries_) COTTER_TRY(put(central_header(entry)));
    return put(end_records(entries_.size(), written_ - at, at));
}

}  // namespace cotter
