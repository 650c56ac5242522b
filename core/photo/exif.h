// The few facts of a camera's Exif block that matter, and a minimal block of our own. Any thread.
#pragma once

#include <optional>

#include "core/base/bytes.h"
#include "core/base/error.h"
#include "core/base/time.h"

namespace cotter {

// What a photo carries beyond its picture that could tell who, where or with what it was taken.
struct PrivateData {
    bool position = false;        // where: GPS
    bool serial_numbers = false;  // of camera body or lens, or an id of this one picture
    bool names = false;           // owner, artist, copyright, comments, titles
    bool maker_notes = false;     // the camera maker's own, undocumented block
    bool thumbnail = false;       // a small copy, which may show what was cropped away
    bool texts = false;           // XMP, IPTC, comments, PNG texts
    bool trailing = false;        // bytes after the picture's end, such as a short video
    bool other = false;           // blocks that we do not know

    bool operator==(const PrivateData&) const = default;
    [[nodiscard]] bool any() const { return *this != PrivateData{}; }
};

struct ExifFacts {
    int colour_space = 1;                     // 1 sRGB; 65535: another, which the ICC profile names
    int orientation = 1;                      // 1…8 as Exif defines it; anything else in the file counts as 1
    std::optional<Instant::Wall> taken_wall;  // what the camera's clock showed when the picture was taken
    std::optional<int> taken_offset_min;      // minutes east of UTC, when the camera wrote it
    PrivateData private_data;
};

// Reads a TIFF-structured Exif block (without the "Exif\0\0" in front). Never fails: what cannot be read is not there,
// and a block that cannot be read at all counts as `other` private data.
// Time: DateTimeOriginal with OffsetTimeOriginal; where that is missing DateTimeDigitized with OffsetTimeDigitized.
[[nodiscard]] ExifFacts read_exif(ByteView block);

// A block with orientation, time taken (with its offset), colour space and what the standard demands besides of a JPEG
// of width × height (as stored); nothing else. Big-endian, the same bytes each time.
[[nodiscard]] Bytes minimal_exif(const ExifFacts& facts, int width, int height);

}  // namespace cotter
