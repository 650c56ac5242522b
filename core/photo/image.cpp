// Which decoder, what comes after it, and turning.
#include "core/photo/image.h"

#include <algorithm>
#include <vector>

#include "core/photo/jpeg_codec.h"
#include "core/photo/stb_parts.h"

namespace cotter {

namespace {

// Where the stored pixel (x, y) of a w×h picture belongs in the upright one, as: start + x × across + y × down.
struct Walk {
    std::ptrdiff_t start, across, down;  // in pixels
};

Walk walk_for(int orientation, std::ptrdiff_t w, std::ptrdiff_t h) {
    switch (orientation) {
        case 2:
            return {w - 1, -1, w};
        case 3:
            return {w * h - 1, -1, -w};
        case 4:
            return {w * (h - 1), 1, -w};
        case 5:
            return {0, h, 1};
        case 6:
            return {h - 1, h, -1};
        case 7:
            return {w * h - 1, -h, -1};
        case 8:
            return {h * (w - 1), -h, 1};
        default:
            return {0, 1, w};
    }
}

// Copies in square blocks, so that both pictures stay in the cache however the walk runs.
void copy_block(const Image& from, std::uint8_t* to, const Walk& walk, int x0, int y0, int block) {
    const int x1 = std::min(from.width, x0 + block), y1 = std::min(from.height, y0 + block);
    for (int y = y0; y < y1; ++y) {
        const std::uint8_t* in = from.row(y) + 3 * std::ptrdiff_t{x0};
        std::uint8_t* out = to + 3 * (walk.start + x0 * walk.across + y * walk.down);
        for (int x = x0; x < x1; ++x, in += 3, out += 3 * walk.across) {
            out[0] = in[0];
            out[1] = in[1];
            out[2] = in[2];
        }
    }
}

// The mean of each block of factor × factor pixels; the less than a block that is left over is
// dropped at both edges alike.
Image box_reduced(const Image& image, int factor) {
    Image out = make_image(image.width / factor, image.height / factor);
    std::vector<unsigned> sums(std::size_t{3} * out.width);
    const auto area = static_cast<unsigned>(factor * factor);
    const int left = (image.width - out.width * factor) / 2, top = (image.height - out.height * factor) / 2;
    for (int y = 0; y < out.height; ++y) {
        std::fill(sums.begin(), sums.end(), area / 2);
        for (int dy = 0; dy < factor; ++dy) {
            const std::uint8_t* in = image.row(top + y * factor + dy) + 3 * std::ptrdiff_t{left};
            for (std::size_t x = 0; x < sums.size(); x += 3)
                for (int dx = 0; dx < factor; ++dx, in += 3)
                    for (std::size_t c = 0; c < 3; ++c) sums[x + c] += in[c];
        }
        std::transform(sums.begin(), sums.end(), out.row(y), [&](unsigned s) { return std::uint8_t(s / area); });
    }
    return out;
}

}  // namespace

Image make_image(int width, int height) {
    return {width, height, Bytes(std::size_t{3} * width * height), {}};
}

Image upright(Image image, int orientation) {
    if (orientation <= 1 || orientation > 8) return image;
    const bool swaps = orientation >= 5;
    Image out = swaps ? make_image(image.height, image.width) : make_image(image.width, image.height);
    const Walk walk = walk_for(orientation, image.width, image.height);
    constexpr int kBlock = 32;
    for (int y = 0; y < image.height; y += kBlock)
        for (int x = 0; x < image.width; x += kBlock) copy_block(image, out.pixels.data(), walk, x, y, kBlock);
    out.icc = std::move(image.icc);
    return out;
}

Image shrink(Image image, int max_side) {
    const int longest = std::max(image.width, image.height);
    if (longest <= max_side) return image;
    const auto scaled = [&](int side) {
        return std::max(1, static_cast<int>((std::int64_t{side} * max_side + longest / 2) / longest));
    };
    Image out = make_image(scaled(image.width), scaled(image.height));
    // The fine filter costs the more the larger its input: a plain mean first, down to 2 to 3 times the size wanted.
    const int factor = std::min(longest / (2 * max_side), std::min(image.width, image.height));
    if (factor > 1)
        resize_pixels(box_reduced(image, factor), out);
    else
        resize_pixels(image, out);
    out.icc = std::move(image.icc);
    return out;
}

Result<Image> decode_upright(ByteView bytes, const PhotoInfo& info, int max_side) {
    const bool jpeg = info.media == Media::jpeg;
    bytes = bytes.first(std::min(bytes.size(), info.picture_end));
    COTTER_ASSIGN(Image image, jpeg ? decode_jpeg(bytes, info, max_side) : decode_png(bytes, info));
    return upright(shrink(std::move(image), max_side), info.orientation);
}

Result<Image> decode_upright(ByteView bytes, int max_side) {
    COTTER_ASSIGN(const PhotoInfo info, probe(bytes));
    return decode_upright(bytes, info, max_side);
}

}  // namespace cotter
