// Pictures in memory: from a photo's bytes to upright pixels and back to JPEG. Any thread.
#pragma once

#include "core/base/bytes.h"
#include "core/base/error.h"
#include "core/photo/probe.h"

namespace cotter {

// 8-bit RGB, rows from the top, no padding: pixels.size() == 3 × width × height.
struct Image {
    int width = 0, height = 0;
    Bytes pixels;
    Bytes icc;  // the ICC profile that gives the pixels their colours; empty means sRGB

    [[nodiscard]] std::uint8_t* row(int y) { return pixels.data() + std::size_t{3} * width * y; }
    [[nodiscard]] const std::uint8_t* row(int y) const { return pixels.data() + std::size_t{3} * width * y; }
};

[[nodiscard]] Image make_image(int width, int height);  // black

// The photo upright, its longest side at most `max_side` (1…32,768) and never larger than stored. A JPEG is decoded at
// 1/8, 1/4 or 1/2 when that comes within 1/16 of the side asked for, so the result may be up to that much smaller.
// 16-bit PNGs are reduced to 8, transparency is laid over white, CMYK becomes RGB by the plain formula (no profile).
// Fails as probe() does, and `damaged` with the row where the picture breaks.
[[nodiscard]] Result<Image> decode_upright(ByteView bytes, int max_side);
[[nodiscard]] Result<Image> decode_upright(ByteView bytes, const PhotoInfo& info, int max_side);  // probed before

// Baseline JPEG, the same bytes for the same picture on every machine. quality 1…100; from 90 on colours are kept at
// full resolution (as thin coloured lines need), below at half.
[[nodiscard]] Result<Bytes> encode_jpeg(const Image& image, int quality);

// A smaller copy whose longest side is `max_side`; the same picture when it is not longer than that.
[[nodiscard]] Image shrink(Image image, int max_side);

// Turned and mirrored as the Exif orientation 1…8 says, so that the result is upright.
[[nodiscard]] Image upright(Image image, int orientation);

}  // namespace cotter
