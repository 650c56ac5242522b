// The walk over a JPEG's markers (ITU-T T.81, annex B).
#include "core/photo/jpeg_parts.h"

#include <algorithm>
#include <cstring>
#include <fmt/format.h>

namespace cotter {

namespace {

using namespace jpeg_marker;

constexpr const char* kCopyAgain = "copy it again from the camera or take it anew";

unexpected<Error> broken(const char* what, std::size_t at, std::size_t size) {
    return fail(Errc::damaged, what, fmt::format("byte {} of {}", at, size), kCopyAgain);
}

bool stands_alone(std::uint8_t marker) {
    return marker == 0x01 || (marker >= rst0 && marker <= soi);
}

// Where the entropy-coded bytes from `at` end: at the first marker that is no restart, or at the end of the bytes.
std::size_t end_of_scan(ByteView bytes, std::size_t at) {
    while (true) {
        if (at >= bytes.size()) return bytes.size();
        const void* found = std::memchr(bytes.data() + at, 0xFF, bytes.size() - at);  // far faster than std::find
        if (found == nullptr) return bytes.size();
        at = static_cast<std::size_t>(static_cast<const std::uint8_t*>(found) - bytes.data());
        if (at + 1 >= bytes.size()) return bytes.size();
        const std::uint8_t next = bytes[at + 1];
        const bool inside = next == 0 || next == 0xFF || (next >= rst0 && next <= rst7);
        if (!inside) return at;
        at += next == 0xFF ? 1 : 2;
    }
}

// The position of the next marker's second byte, skipping fill bytes and stray bytes before it; size() if none.
std::size_t next_marker(ByteView bytes, std::size_t at) {
    while (at < bytes.size() && bytes[at] != 0xFF) ++at;
    while (at < bytes.size() && bytes[at] == 0xFF) ++at;
    return at;
}

bool has_frame_and_scan(const JpegParts& out) {
    const bool scan = std::any_of(out.parts.begin(), out.parts.end(), [](auto& p) { return p.marker == sos; });
    return scan && jpeg_frame(out) != nullptr;
}

}  // namespace

bool is_frame_marker(std::uint8_t marker) {
    return marker >= sof0 && marker <= 0xCF && marker != dht && marker != 0xC8 && marker != dac;
}

bool is_app_with(const JpegPart& part, std::uint8_t marker, std::string_view signature) {
    return part.marker == marker && as_text(part.payload).starts_with(signature);
}

bool is_harmless(const JpegPart& part) {
    const bool app = part.marker >= app0 && part.marker <= app15;
    if (!app) return part.marker < 0xF0 && part.marker != 0x01;  // 0xF0…0xFE: extensions and comments
    return is_app_with(part, app0, kJfifSignature) || is_app_with(part, app2, kIccSignature) ||
           is_app_with(part, app14, kAdobeSignature);
}

const JpegPart* jpeg_frame(const JpegParts& parts) {
    const auto it = std::find_if(parts.parts.begin(), parts.parts.end(),
                                 [](const JpegPart& p) { return is_frame_marker(p.marker); });
    return it == parts.parts.end() ? nullptr : &*it;
}

Result<JpegParts> jpeg_parts(ByteView bytes) {
    JpegParts out;
    std::size_t at = 2;
    while ((at = next_marker(bytes, at)) < bytes.size()) {
        const std::uint8_t marker = bytes[at++];
        if (marker == eoi) {
            if (!has_frame_and_scan(out)) return broken("the photo ends before its picture", at, bytes.size());
            out.trailing = bytes.subspan(at);
            return out;
        }
        if (marker == 0 || stands_alone(marker)) continue;
        if (at + 2 > bytes.size()) break;
        const std::size_t length = static_cast<std::size_t>(bytes[at] << 8 | bytes[at + 1]);
        if (length < 2) return broken("the photo is damaged", at, bytes.size());
        if (length > bytes.size() - at) break;
        JpegPart part{marker, bytes.subspan(at + 2, length - 2), {}};
        at += length;
        if (marker == sos) {
            const std::size_t end = end_of_scan(bytes, at);
            part.data = bytes.subspan(at, end - at);
            at = end;
        }
        out.parts.push_back(part);
    }
    return broken("the photo is cut off", bytes.size(), bytes.size());
}

}  // namespace cotter
