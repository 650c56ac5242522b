// Headers put together as texts.
#include "tests/support/raw_zip.h"

#include <zlib.h>

namespace cotter::test {

namespace {

std::uint32_t crc_of(const std::string& text) {
    return static_cast<std::uint32_t>(
        ::crc32(0, reinterpret_cast<const Bytef*>(text.data()), static_cast<uInt>(text.size())));
}

std::string deflated(const std::string& text) {
    z_stream stream{};
    deflateInit2(&stream, 6, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY);
    std::string out(deflateBound(&stream, text.size()), '\0');
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
    stream.avail_in = static_cast<uInt>(text.size());
    stream.next_out = reinterpret_cast<Bytef*>(out.data());
    stream.avail_out = static_cast<uInt>(out.size());
    deflate(&stream, Z_FINISH);
    out.resize(stream.total_out);
    deflateEnd(&stream);
    return out;
}

std::string common(const RawHeader& h) {
    return le(h.needed, 2) + le(h.flags, 2) + le(h.method, 2) + le(h.time, 2) + le(h.date, 2) + le(h.crc, 4) +
           le(h.packed, 4) + le(h.size, 4) + le(h.name.size(), 2) + le(h.extra.size(), 2);
}

std::string local(const RawHeader& h) {
    return "PK\x03\x04" + common(h) + h.name + h.extra;
}

std::string central(const RawHeader& h, std::uint64_t offset) {
    return "PK\x01\x02" + le(h.made_by, 2) + common(h) + le(h.comment.size(), 2) + le(h.disk, 2) + le(0, 2) +
           le(h.attributes, 4) + le(h.offset.value_or(static_cast<std::uint32_t>(offset)), 4) + h.name + h.extra +
           h.comment;
}

}  // namespace

std::string le(std::uint64_t value, int bytes) {
    std::string out;
    for (int i = 0; i < bytes; ++i) out += static_cast<char>(value >> (8 * i) & 0xff);
    return out;
}

RawEntry& RawZip::add_packed(const std::string& name, const std::string& text, std::string packed,
                             std::uint16_t method) {
    RawEntry entry;
    entry.local.name = name;
    entry.local.method = method;
    entry.local.crc = crc_of(text);
    entry.local.packed = static_cast<std::uint32_t>(packed.size());
    entry.local.size = static_cast<std::uint32_t>(text.size());
    entry.central = entry.local;
    entry.packed = std::move(packed);
    all_.push_back(std::move(entry));
    return all_.back();
}

RawEntry& RawZip::add(const std::string& name, const std::string& text) {
    return add_packed(name, text, text, 0);
}

RawEntry& RawZip::add_deflated(const std::string& name, const std::string& text) {
    return add_packed(name, text, deflated(text), 8);
}

Bytes RawZip::bytes() const {
    std::string out = before, directory;
    std::uint64_t count = 0;
    for (const RawEntry& entry : all_) {
        if (!entry.hidden) out += entry.gap;
        if (!entry.unlisted) {
            directory += central(entry.central, out.size());
            ++count;
        }
        if (!entry.hidden) out += local(entry.local) + entry.packed + entry.descriptor;
    }
    out += before_directory;
    const std::uint64_t at = out.size();
    out += directory + before_end;
    const std::uint64_t record_at = out.size();
    if (zip64)
        out += "PK\x06\x06" + le(44, 8) + le(0x0314, 2) + le(45, 2) + le(0, 8) + le(entries64.value_or(count), 8) +
               le(entries64.value_or(count), 8) + le(directory.size(), 8) + le(directory_at64.value_or(at), 8) +
               "PK\x06\x07" + le(0, 4) + le(record_at64.value_or(record_at), 8) + le(1, 4);
    const std::uint64_t said = entries.value_or(zip64 ? 0xffff : count);
    out += "PK\x05\x06" + le(0, 4) + le(said, 2) + le(said, 2);
    out += le(directory_size.value_or(zip64 ? 0xffffffffu : directory.size()), 4);
    out += le(directory_at.value_or(zip64 ? 0xffffffffu : at), 4) + le(comment.size(), 2) + comment + behind;
    return to_bytes(out);
}

}  // namespace cotter::test
