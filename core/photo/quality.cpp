// Sharpness and exposure from the preview's luma.
//
// Method: the luma is averaged down to about 1,024 px, so that sensor noise and the size of the photo do not matter.
// In each of 12 × 12 tiles the variance of the Laplacian (how much fine detail) is divided by the variance of the luma
// (how much contrast there is to have detail in). The mean of the sharpest eighth of the tiles is the sharpness: a
// photo with a sharp wheel before a soft yard is a sharp photo.
#include "core/photo/quality.h"

#include <algorithm>
#include <array>
#include <vector>

namespace cotter {

namespace {

struct Luma {
    int width = 0, height = 0;
    std::vector<std::uint8_t> pixels;
    [[nodiscard]] const std::uint8_t* row(int y) const { return pixels.data() + std::ptrdiff_t{width} * y; }
};

// Rec. 601 weights in 256ths.
unsigned luma_of(const std::uint8_t* rgb) {
    return (77u * rgb[0] + 150u * rgb[1] + 29u * rgb[2]) >> 8;
}

Luma reduced_luma(const Image& image) {
    constexpr int kSide = 1'024;
    const int factor = std::max(1, (std::max(image.width, image.height) + kSide / 2) / kSide);
    Luma out{std::max(1, image.width / factor), std::max(1, image.height / factor), {}};
    out.pixels.reserve(std::size_t(out.width) * out.height);
    std::vector<unsigned> sums(static_cast<std::size_t>(out.width));
    const int block_h = std::min(factor, image.height), block_w = std::min(factor, image.width);
    const auto area = static_cast<unsigned>(block_h * block_w);
    for (int y = 0; y < out.height; ++y) {
        std::fill(sums.begin(), sums.end(), 0u);
        for (int dy = 0; dy < block_h; ++dy) {
            const std::uint8_t* in = image.row(y * factor + dy);
            for (unsigned& sum : sums)
                for (int dx = 0; dx < block_w; ++dx, in += 3) sum += luma_of(in);
        }
        for (const unsigned sum : sums) out.pixels.push_back(static_cast<std::uint8_t>((sum + area / 2) / area));
    }
    return out;
}

struct Sums {
    double count = 0, sum = 0, squares = 0;
    void add(int value) {
        count += 1;
        sum += value;
        squares += double(value) * value;
    }
    [[nodiscard]] double variance() const {
        return count > 0 ? std::max(0.0, squares / count - (sum / count) * (sum / count)) : 0;
    }
};

double tile_sharpness(const Luma& luma, int x0, int y0, int x1, int y1) {
    Sums light, detail;
    for (int y = std::max(1, y0); y < std::min(y1, luma.height - 1); ++y) {
        const std::uint8_t *up = luma.row(y - 1), *here = luma.row(y), *down = luma.row(y + 1);
        for (int x = std::max(1, x0); x < std::min(x1, luma.width - 1); ++x) {
            light.add(here[x]);
            detail.add(4 * here[x] - here[x - 1] - here[x + 1] - up[x] - down[x]);
        }
    }
    // A flat tile has no contrast: 100 (a standard deviation of 10 steps of 255) keeps its noise from counting as
    // detail.
    constexpr double kNoise = 100;
    constexpr double kMostRatio = 20;  // of the Laplacian's variance to the luma's, for independent pixels
    return detail.variance() / (light.variance() + kNoise) / kMostRatio;
}

double sharpness_of(const Luma& luma) {
    constexpr int kTiles = 12;
    std::array<double, std::size_t{kTiles} * kTiles> values{};
    for (int ty = 0; ty < kTiles; ++ty)
        for (int tx = 0; tx < kTiles; ++tx)
            values[static_cast<std::size_t>(ty * kTiles + tx)] =
                tile_sharpness(luma, tx * luma.width / kTiles, ty * luma.height / kTiles,
                               (tx + 1) * luma.width / kTiles, (ty + 1) * luma.height / kTiles);
    constexpr std::size_t kBest = values.size() / 8;
    std::partial_sort(values.begin(), values.begin() + kBest, values.end(), std::greater<>());
    double sum = 0;
    for (std::size_t i = 0; i < kBest; ++i) sum += values[i];
    return sum / kBest;
}

}  // namespace

Quality measure_quality(const Image& preview) {
    if (preview.pixels.empty()) return {};
    const Luma luma = reduced_luma(preview);
    std::array<std::size_t, 256> histogram{};
    for (const std::uint8_t value : luma.pixels) ++histogram[value];
    double sum = 0;
    std::size_t black = 0, white = 0;
    for (std::size_t value = 0; value < histogram.size(); ++value) {
        sum += double(value) * double(histogram[value]);
        if (value <= 8) black += histogram[value];    // below this no screen shows a difference in daylight
        if (value >= 250) white += histogram[value];  // cameras and JPEG seldom reach 255 exactly
    }
    const auto count = static_cast<double>(luma.pixels.size());
    return {sharpness_of(luma), sum / count / 255, double(black) / count, double(white) / count};
}

bool blurred(const Quality& quality) {
    return quality.sharpness < kBlurredBelow;
}
bool dark(const Quality& quality) {
    return quality.mean_light < kDarkMeanBelow || quality.dark_share > kDarkShareAbove;
}
bool glare(const Quality& quality) {
    return quality.bright_share > kGlareShareAbove;
}

}  // namespace cotter
