// What a photo is, found out from its headers before any pixel is decoded; and the refusals for what cannot be used.
// Everything that takes photos in or checks those of others goes through here first. Any thread.
#pragma once

#include <optional>

#include "core/base/bytes.h"
#include "core/base/error.h"
#include "core/base/time.h"
#include "core/photo/exif.h"
#include "core/photo/media.h"

namespace cotter {

// Bounds, so that no file can take more memory or time than a phone has. The largest phone sensors have 200 megapixels.
inline constexpr std::size_t kMostPhotoBytes = std::size_t{128} << 20;
inline constexpr int kMostPhotoSide = 32'768;
inline constexpr std::int64_t kMostPhotoPixels = 200'000'000;
// Progressive JPEGs and PNGs must be held in memory as a whole while they are decoded (3 to 8 bytes a pixel).
inline constexpr std::int64_t kMostWholePixels = 50'000'000;
// Each scan of a progressive JPEG is another pass over the picture; encoders make about 10.
inline constexpr std::size_t kMostScans = 64;

struct PhotoInfo {
    Media media = Media::unknown;  // jpeg or png
    int stored_width = 0, stored_height = 0;
    int orientation = 1;        // 1…8: how the stored picture must be turned to be upright
    int width = 0, height = 0;  // of the upright picture
    int bits = 8;               // per component
    int components = 3;         // colour components: 1 grey, 2 grey with alpha, 3 colour, 4 CMYK (jpeg) or alpha (png)
    int colour_space = 1;       // as Exif has it: 1 sRGB, 65535 another
    bool progressive = false;   // JPEG in several scans, or interlaced PNG

    // When it was taken by the camera's own clock. A moment only when the camera also wrote its offset from UTC;
    // without one the wall time is kept as it stands, because guessing the offset would make up a fact.
    std::optional<Instant> taken;
    std::optional<Instant::Wall> taken_wall;

    std::size_t picture_end = 0;  // where the picture ends in the file; what follows is not part of it
    PrivateData private_data;
};

// Fails `refused` (empty, not a photo, a kind that is not taken in, over a bound; each with what to do) or `damaged`
// (with the byte where it breaks). Success means: the structure is whole to the end, not that every pixel decodes.
[[nodiscard]] Result<PhotoInfo> probe(ByteView bytes);

}  // namespace cotter
