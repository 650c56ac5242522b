// Blur, darkness and glare on a photo from a file and worsened copies of it.
#include <doctest/doctest.h>

#include "core/photo/quality.h"
#include "tests/core/photo/photo_maker.h"

using namespace cotter;

namespace {

Image sharp_photo() {
    return *decode_upright(made::fixture("with_position.jpg"), 2'048);
}

// Three passes of a box of 7: close to a Gaussian of 3.5 pixels.
Image softened(Image image) {
    for (int pass = 0; pass < 3; ++pass)
        for (const std::ptrdiff_t step : {std::ptrdiff_t{3}, std::ptrdiff_t{3} * image.width}) {
            const Bytes in = image.pixels;
            const auto size = static_cast<std::ptrdiff_t>(in.size());
            for (std::ptrdiff_t i = 3 * step; i < size - 3 * step; ++i) {
                int sum = 0;
                for (std::ptrdiff_t k = -3; k <= 3; ++k) sum += in[std::size_t(i + k * step)];
                image.pixels[std::size_t(i)] = std::uint8_t(sum / 7);
            }
        }
    return image;
}

Image scaled_light(Image image, double factor) {
    for (auto& value : image.pixels) value = std::uint8_t(std::min(255.0, value * factor));
    return image;
}

}  // namespace

TEST_CASE("quality: a good photo raises nothing") {
    const Quality good = measure_quality(sharp_photo());
    CHECK_FALSE(blurred(good));
    CHECK_FALSE(dark(good));
    CHECK_FALSE(glare(good));
}

TEST_CASE("quality: blur, darkness and glare are each seen, and not taken for one another") {
    const Image photo = sharp_photo();
    const Quality soft = measure_quality(softened(photo));
    CHECK(blurred(soft));
    CHECK_FALSE(dark(soft));
    const Quality dim = measure_quality(scaled_light(photo, 0.15));
    CHECK(dark(dim));
    CHECK_FALSE(glare(dim));
    const Quality bright = measure_quality(scaled_light(photo, 2.2));
    CHECK(glare(bright));
    CHECK_FALSE(dark(bright));
    CHECK_FALSE(blurred(bright));
}

TEST_CASE("quality: half the size changes the sharpness by less than half, not fourfold") {
    const Image photo = sharp_photo();
    const double full = measure_quality(photo).sharpness;
    const double half = measure_quality(shrink(photo, 1'008)).sharpness;
    CHECK(half < full * 2);
    CHECK(half > full / 2);
}

TEST_CASE("quality: flat, tiny and empty pictures give finite figures") {
    for (const auto& [w, h] : {std::pair{1, 1}, {2, 2}, {3, 1}, {5'000, 1}, {13, 900}}) {
        const Quality q = measure_quality(make_image(w, h));
        CHECK(q.sharpness == 0);
        CHECK(q.dark_share == doctest::Approx(1));
        CHECK(dark(q));
    }
    CHECK(measure_quality(Image{}).sharpness == 0);
}
