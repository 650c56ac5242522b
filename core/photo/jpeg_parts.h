// A JPEG file cut into its segments, without decoding: where each begins and ends, and where the picture ends.
// For probe and for taking private data out. Any thread.
#pragma once

#include <string_view>
#include <vector>

#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

// The second byte of the markers that matter here (ITU-T T.81, table B.1).
namespace jpeg_marker {
inline constexpr std::uint8_t sof0 = 0xC0, sof2 = 0xC2, dht = 0xC4, dac = 0xCC, rst0 = 0xD0, rst7 = 0xD7, soi = 0xD8,
                              eoi = 0xD9, sos = 0xDA, dqt = 0xDB, dnl = 0xDC, dri = 0xDD, app0 = 0xE0, app1 = 0xE1,
                              app2 = 0xE2, app14 = 0xEE, app15 = 0xEF, com = 0xFE;
}

struct JpegPart {
    std::uint8_t marker = 0;
    ByteView payload;  // after the length field; for a scan (sos) its header only
    ByteView data;     // of a scan: the entropy-coded bytes after its header, restart markers included
};

struct JpegParts {
    std::vector<JpegPart> parts;  // in file order, without SOI and EOI; views into the bytes given
    ByteView trailing;            // what follows EOI
};

// Fails `damaged` with the byte where it breaks: no EOI, a segment that runs past the end, no frame, no scan.
[[nodiscard]] Result<JpegParts> jpeg_parts(ByteView bytes);

// The frame header (SOF0…SOF15), or nullptr when there is none.
[[nodiscard]] const JpegPart* jpeg_frame(const JpegParts& parts);

[[nodiscard]] bool is_frame_marker(std::uint8_t marker);
[[nodiscard]] bool is_app_with(const JpegPart& part, std::uint8_t marker, std::string_view signature);

// True for segments that say nothing about who, where and with what: the picture itself, JFIF (its thumbnail apart),
// ICC profile, Adobe colour transform.
[[nodiscard]] bool is_harmless(const JpegPart& part);

// Signatures at the start of application segments.
inline constexpr std::string_view kExifSignature{"Exif\0\0", 6};
inline constexpr std::string_view kJfifSignature{"JFIF\0", 5};
inline constexpr std::string_view kIccSignature{"ICC_PROFILE\0", 12};
inline constexpr std::string_view kAdobeSignature{"Adobe", 5};

}  // namespace cotter
