// The walk over a PNG's chunks. The only file of this library that includes zlib (for the checksum).
#include "core/photo/png_parts.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <zlib.h>

namespace cotter {

namespace {

constexpr const char* kCopyAgain = "copy it again from where it came";
constexpr std::array<std::string_view, 4> kCritical{"IHDR", "PLTE", "IDAT", "IEND"};

constexpr std::array<std::string_view, 11> kColour{"tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT",
                                                   "bKGD", "pHYs", "cICP", "mDCV", "cLLI"};

unexpected<Error> broken(const char* what, std::size_t at, std::size_t size) {
    return fail(Errc::damaged, what, fmt::format("byte {} of {}", at, size), kCopyAgain);
}

std::uint32_t big_endian(ByteView bytes, std::size_t at) {
    return std::uint32_t{bytes[at]} << 24 | std::uint32_t{bytes[at + 1]} << 16 | std::uint32_t{bytes[at + 2]} << 8 |
           bytes[at + 3];
}

void put_big_endian(Bytes& out, std::uint32_t value) {
    for (int shift = 24; shift >= 0; shift -= 8) out.push_back(static_cast<std::uint8_t>(value >> shift));
}

std::uint32_t checksum(ByteView type_and_data) {
    return static_cast<std::uint32_t>(::crc32_z(0, type_and_data.data(), type_and_data.size()));
}

template <class List>
bool among(const List& list, std::string_view type) {
    return std::find(list.begin(), list.end(), type) != list.end();
}

bool is_unknown_critical(std::string_view type) {
    return (type[0] & 0x20) == 0 && !among(kCritical, type);
}

}  // namespace

Result<PngParts> png_parts(ByteView bytes) {
    PngParts out;
    std::size_t at = kPngSignature.size();
    while (at + 12 <= bytes.size()) {
        const std::size_t length = big_endian(bytes, at);
        if (length > bytes.size() - at - 12) break;
        const ByteView whole = bytes.subspan(at, length + 12);
        const std::string_view type = as_text(whole.subspan(4, 4));
        if (checksum(whole.subspan(4, length + 4)) != big_endian(whole, length + 8))
            return broken("the picture is damaged", at, bytes.size());
        if (is_unknown_critical(type))
            return fail(Errc::refused, "this kind of PNG picture is not known", fmt::format("byte {}", at),
                        "save it as JPEG and add that");
        if (out.chunks.empty() != (type == "IHDR")) return broken("the picture is damaged", at, bytes.size());
        out.chunks.push_back({type, whole.subspan(8, length), whole});
        at += length + 12;
        if (type != "IEND") continue;
        const PngChunk* pixels = find_chunk(out, "IDAT");
        if (pixels == nullptr || pixels->data.empty()) return broken("the picture has no pixels", at, bytes.size());
        out.trailing = bytes.subspan(at);
        return out;
    }
    return broken("the picture is cut off", bytes.size(), bytes.size());
}

bool is_harmless(const PngChunk& chunk) {
    return among(kCritical, chunk.type) || among(kColour, chunk.type);
}

const PngChunk* find_chunk(const PngParts& parts, std::string_view type) {
    const auto it =
        std::find_if(parts.chunks.begin(), parts.chunks.end(), [&](const PngChunk& c) { return c.type == type; });
    return it == parts.chunks.end() ? nullptr : &*it;
}

void add_chunk(Bytes& out, std::string_view type, ByteView data) {
    put_big_endian(out, static_cast<std::uint32_t>(data.size()));
    const std::size_t start = out.size();
    out.insert(out.end(), type.begin(), type.end());
    out.insert(out.end(), data.begin(), data.end());
    put_big_endian(out, checksum(ByteView(out).subspan(start)));
}

}  // namespace cotter
