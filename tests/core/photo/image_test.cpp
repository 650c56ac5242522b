// From bytes to upright pixels: turning, scaling, colours, and damage that only decoding can find.
#include <doctest/doctest.h>

#include <array>
#include <cstdlib>
#include <map>

#include "core/photo/image.h"
#include "tests/core/photo/photo_maker.h"

using namespace cotter;
using namespace cotter::made;

namespace {

bool near(const Image& image, int x, int y, std::array<int, 3> rgb, int tolerance = 12) {
    for (std::size_t c = 0; c < 3; ++c)
        if (std::abs(image.row(y)[3 * x + int(c)] - rgb[c]) > tolerance) return false;
    return true;
}

// 'r', 'g', 'b', 'w' for the four corners' colours, read at upper left, upper right, lower left, lower right.
std::string corners_of(const Image& image) {
    const std::map<char, std::array<int, 3>> colours{
        {'r', {255, 0, 0}}, {'g', {0, 255, 0}}, {'b', {0, 0, 255}}, {'w', {255, 255, 255}}};
    std::string out;
    for (const int y : {3, image.height - 4})
        for (const int x : {3, image.width - 4})
            for (const auto& [letter, rgb] : colours)
                if (near(image, x, y, rgb, 40)) out += letter;
    return out;
}

Bytes photo(int width, int height, const JpegKind& kind = {}) {
    return jpeg(
        width, height, [=](int x, int y) { return four_corners(x, y, width, height); }, kind);
}

// A picture of fine detail, so that every part of the data counts.
Bytes busy(int width, int height, const JpegKind& kind = {}) {
    return jpeg(
        width, height,
        [](int x, int y) {
            const unsigned v = unsigned(x * 7919 + y * 104729 + x * y * 31);
            return std::vector<std::uint8_t>{std::uint8_t(v >> 2), std::uint8_t(v >> 4), std::uint8_t(v >> 6)};
        },
        kind);
}

}  // namespace

TEST_CASE("image: each of the eight orientations comes out upright") {
    // Where Exif says that the stored first row and first column belong, worked out by hand.
    const std::array<std::string, 9> expected{"", "rgbw", "grwb", "wbgr", "bwrg", "rbgw", "brwg", "wgbr", "gwrb"};
    for (int orientation = 1; orientation <= 8; ++orientation) {
        CAPTURE(orientation);
        const auto image = decode_upright(with_exif(photo(96, 64), {.orientation = orientation}), 1'000);
        REQUIRE(image);
        CHECK(image->width == (orientation < 5 ? 96 : 64));
        CHECK(image->height == (orientation < 5 ? 64 : 96));
        CHECK(corners_of(*image) == expected[std::size_t(orientation)]);
    }
}

TEST_CASE("image: turning there and back gives the same picture, at sizes around the block") {
    for (const int width : {1, 31, 32, 33, 70}) {
        Image image = make_image(width, 45);
        for (std::size_t i = 0; i < image.pixels.size(); ++i) image.pixels[i] = std::uint8_t(i * 37);
        for (const auto& [there, back] : {std::pair{2, 2}, {3, 3}, {4, 4}, {5, 5}, {6, 8}, {7, 7}, {8, 6}})
            CHECK(upright(upright(image, there), back).pixels == image.pixels);
    }
}

TEST_CASE("image: the longest side is at most what was asked for, and close to it") {
    const Bytes bytes = with_exif(photo(1'000, 600), {.orientation = 6});
    for (const int side : {1, 7, 64, 120, 250, 256, 470, 500, 640, 999, 1'000, 5'000}) {
        CAPTURE(side);
        const auto image = decode_upright(bytes, side);
        REQUIRE(image);
        CHECK(image->height <= side);
        CHECK(image->height >= std::min(side, 1'000) * 15 / 16);
        CHECK(std::abs(image->width * 1'000 - image->height * 600) <= 1'000);
        CHECK(image->pixels.size() == std::size_t(3) * std::size_t(image->width) * std::size_t(image->height));
        if (side >= 64) CHECK(corners_of(*image) == "brwg");
    }
}

TEST_CASE("image: shrinking keeps the mean colour and flat areas flat") {
    Image image = make_image(999, 333);
    for (std::size_t i = 0; i < image.pixels.size(); ++i) image.pixels[i] = std::uint8_t((i / 3) % 2 == 0 ? 250 : 150);
    const Image small = shrink(image, 100);
    CHECK(small.width == 100);
    CHECK(small.height == 33);
    CHECK(near(small, 50, 16, {200, 200, 200}, 3));
    const Image flat = shrink(make_image(700, 5), 64);
    CHECK(flat.width == 64);
    CHECK(flat.height == 1);
    CHECK(flat.pixels == Bytes(flat.pixels.size(), 0));
}

TEST_CASE("image: progressive, grey and restart-marked JPEGs decode") {
    CHECK(corners_of(*decode_upright(photo(96, 64, {.progressive = true}), 96)) == "rgbw");
    CHECK(corners_of(*decode_upright(photo(96, 64, {.restart_rows = 1}), 96)) == "rgbw");
    const auto grey =
        decode_upright(jpeg(40, 40, [](int, int) { return std::vector<std::uint8_t>{90}; }, {.components = 1}), 40);
    REQUIRE(grey);
    CHECK(near(*grey, 20, 20, {90, 90, 90}, 2));
}

TEST_CASE("image: CMYK becomes RGB, whichever way round it was stored") {
    // Full cyan and a quarter of black, as ink amounts 255, 0, 0, 64.
    const auto inks = [](bool inverted) {
        return [=](int, int) {
            const int flip = inverted ? 255 : 0;
            return std::vector<std::uint8_t>{std::uint8_t(255 ^ flip), std::uint8_t(0 ^ flip), std::uint8_t(0 ^ flip),
                                             std::uint8_t(64 ^ flip)};
        };
    };
    for (const bool adobe : {true, false}) {
        const auto image = decode_upright(jpeg(32, 32, inks(adobe), {.components = 4, .adobe = adobe}), 32);
        REQUIRE(image);
        CHECK(near(*image, 16, 16, {0, 191, 191}, 4));
    }
}

TEST_CASE("image: PNGs of 8 and 16 bits, with and without transparency") {
    const auto decode = [](std::vector<std::uint8_t> pixel, int bits) {
        const auto file = png(
            24, 24, [&](int, int) { return pixel; }, int(pixel.size()), bits);
        auto image = decode_upright(file, 24);
        REQUIRE(image);
        return *image;
    };
    for (const int bits : {8, 16}) {
        CHECK(near(decode({77}, bits), 5, 5, {77, 77, 77}, 1));
        CHECK(near(decode({200, 100, 50}, bits), 5, 5, {200, 100, 50}, 1));
        CHECK(near(decode({0, 0}, bits), 5, 5, {255, 255, 255}, 1));
        CHECK(near(decode({255, 0, 0, 128}, bits), 5, 5, {255, 127, 127}, 2));
    }
}

TEST_CASE("image: a JPEG cut off with an end put behind it is found out, with the row") {
    for (const bool progressive : {false, true}) {
        const Bytes whole = busy(320, 240, {.progressive = progressive});
        REQUIRE(decode_upright(whole, 320));
        Bytes cut(whole.begin(), whole.begin() + std::ptrdiff_t(whole.size() / 2));
        cut = joined({cut, {0xFF, 0xD9}});
        for (const int side : {320, 40}) {
            const auto image = decode_upright(cut, side);
            REQUIRE_FALSE(image);
            CHECK(image.error().code == Errc::damaged);
            CHECK(image.error().where.find("row ") != std::string::npos);
        }
    }
}

TEST_CASE("image: a hole in the data is found out") {
    Bytes holed = busy(320, 240);
    std::fill(holed.begin() + std::ptrdiff_t(holed.size() / 2),
              holed.begin() + std::ptrdiff_t(holed.size() / 2 + 4'000), 0);
    const auto image = decode_upright(holed, 320);
    REQUIRE_FALSE(image);
    CHECK(image.error().code == Errc::damaged);
}

TEST_CASE("image: a small file that claims 192 megapixels ends quickly as damaged") {
    Bytes bomb = photo(48, 32);
    for (std::size_t i = 0; i + 9 < bomb.size(); ++i)
        if (bomb[i] == 0xFF && bomb[i + 1] == 0xC0) {
            const Bytes sides{0x2E, 0xE0, 0x3E, 0x80};  // 12,000 × 16,000
            std::copy(sides.begin(), sides.end(), bomb.begin() + std::ptrdiff_t(i + 5));
            break;
        }
    REQUIRE(probe(bomb));
    CHECK(decode_upright(bomb, 256).error().code == Errc::damaged);
}

TEST_CASE("image: a PNG whose data is too short, or no data at all, is damaged") {
    const Bytes whole = png(
        40, 40, [](int x, int y) { return std::vector<std::uint8_t>{std::uint8_t(x * y)}; }, 1);
    Bytes longer = whole;
    const Bytes header = png_chunk("IHDR", {0, 0, 0, 40, 0, 0, 0, 200, 8, 0, 0, 0, 0});
    std::copy(header.begin(), header.end(), longer.begin() + 8);
    REQUIRE(probe(longer));
    CHECK(decode_upright(longer, 100).error().code == Errc::damaged);
    Bytes empty(whole.begin(), whole.begin() + 33);
    empty = joined({empty, png_chunk("IDAT", {}), png_chunk("IEND", {})});
    CHECK(probe(empty).error().code == Errc::damaged);
}

TEST_CASE("image: a few padding bytes before the end are no damage") {
    const Bytes whole = busy(64, 64);
    Bytes padded(whole.begin(), whole.end() - 2);
    padded = joined({padded, Bytes(12, 0), {0xFF, 0xD9}});
    CHECK(decode_upright(padded, 64));
}

TEST_CASE("image: the colour profile goes along into the preview") {
    Bytes profile(600, 0x11);
    const Bytes with = with_segments(
        photo(96, 64), segment(0xE2, joined({to_bytes(std::string_view("ICC_PROFILE\0\1\1", 14)), profile})));
    const auto image = decode_upright(with_exif(with, {.orientation = 6}), 24);
    REQUIRE(image);
    CHECK(image->icc == profile);
    const auto again = encode_jpeg(*image, 85);
    CHECK(decode_upright(*again, 100)->icc == profile);
}

TEST_CASE("image: encoding is the same each time and close to the picture") {
    const auto image = decode_upright(busy(200, 100), 200);
    for (const int quality : {60, 85, 95}) {
        const auto once = encode_jpeg(*image, quality);
        REQUIRE(once);
        CHECK(*once == *encode_jpeg(*image, quality));
        CHECK(probe(*once)->width == 200);
    }
    CHECK(encode_jpeg(*image, 60)->size() < encode_jpeg(*image, 95)->size());
    CHECK_FALSE(encode_jpeg(make_image(0, 5), 80));
}
