// What probe says of photos good and bad, before a pixel is decoded.
#include <doctest/doctest.h>

#include "core/photo/probe.h"
#include "tests/core/photo/photo_maker.h"

using namespace cotter;
using namespace cotter::made;

namespace {

Bytes small_jpeg(const JpegKind& kind = {}) {
    return jpeg(
        48, 32, [](int x, int y) { return four_corners(x, y, 48, 32); }, kind);
}

Bytes small_png(int components = 3, int bits = 8) {
    return png(
        20, 10, [&](int x, int) { return std::vector<std::uint8_t>(std::size_t(components), std::uint8_t(x * 12)); },
        components, bits);
}

// The frame header's height and width replaced.
Bytes claiming(Bytes photo, unsigned width, unsigned height) {
    for (std::size_t i = 0; i + 9 < photo.size(); ++i)
        if (photo[i] == 0xFF && (photo[i + 1] == 0xC0 || photo[i + 1] == 0xC2)) {
            photo[i + 5] = std::uint8_t(height >> 8), photo[i + 6] = std::uint8_t(height);
            photo[i + 7] = std::uint8_t(width >> 8), photo[i + 8] = std::uint8_t(width);
            break;
        }
    return photo;
}

Error refusal(const Bytes& bytes) {
    const auto info = probe(bytes);
    REQUIRE_FALSE(info);
    CHECK_FALSE(info.error().what.empty());
    CHECK_FALSE(info.error().todo.empty());
    return info.error();
}

}  // namespace

TEST_CASE("probe: a plain JPEG") {
    const auto info = probe(small_jpeg());
    REQUIRE(info);
    CHECK(info->media == Media::jpeg);
    CHECK(info->width == 48);
    CHECK(info->height == 32);
    CHECK(info->components == 3);
    CHECK_FALSE(info->progressive);
    CHECK_FALSE(info->taken);
    CHECK_FALSE(info->private_data.any());
}

TEST_CASE("probe: every orientation, in either byte order, gives upright sides") {
    for (int orientation = 1; orientation <= 8; ++orientation)
        for (const bool little : {false, true}) {
            const auto info = probe(with_exif(small_jpeg(), {.orientation = orientation, .little_endian = little}));
            REQUIRE(info);
            CHECK(info->orientation == orientation);
            CHECK(info->stored_width == 48);
            CHECK(info->width == (orientation < 5 ? 48 : 32));
            CHECK(info->height == (orientation < 5 ? 32 : 48));
        }
    CHECK(probe(with_exif(small_jpeg(), {.orientation = 9}))->orientation == 1);
}

TEST_CASE("probe: time taken is a moment only with its offset") {
    const auto with = probe(with_exif(small_jpeg(), {.taken = "2026:05:14 08:05:12", .offset = "-05:00"}));
    REQUIRE(with->taken);
    CHECK(with->taken->text() == "2026-05-14T08:05:12-05:00");
    const auto without = probe(with_exif(small_jpeg(), {.taken = "2026:05:14 08:05:12"}));
    CHECK_FALSE(without->taken);
    REQUIRE(without->taken_wall);
    CHECK(without->taken_wall->hour == 8);
    CHECK(without->taken_wall->date.text() == "2026-05-14");
    for (const char* nonsense : {"0000:00:00 00:00:00", "2026:13:40 08:05:12", "    :  :     :  :  ", "2026:05:14"})
        CHECK_FALSE(probe(with_exif(small_jpeg(), {.taken = nonsense, .offset = "-05:00"}))->taken_wall);
    const auto odd = probe(with_exif(small_jpeg(), {.taken = "2026:05:14 08:05:12", .offset = "+99:00"}));
    CHECK(odd->taken_wall);
    CHECK_FALSE(odd->taken);
}

TEST_CASE("probe: private data is found") {
    const auto info = probe(with_exif(small_jpeg(), {.secret = "SECRET"}));
    REQUIRE(info);
    const PrivateData expected{.position = true,
                               .serial_numbers = true,
                               .names = true,
                               .maker_notes = true,
                               .thumbnail = true,
                               .texts = false,
                               .trailing = false,
                               .other = false};
    CHECK(info->private_data == expected);
    CHECK(probe(joined({small_jpeg(), to_bytes("a video")}))->private_data.trailing);
    CHECK(probe(with_segments(small_jpeg(), segment(0xFE, to_bytes("hello"))))->private_data.texts);
    CHECK(probe(with_segments(small_jpeg(), segment(0xE2, to_bytes("MPF\0"))))->private_data.other);
    CHECK(probe(with_chunk(small_png(), png_chunk("tEXt", to_bytes("Author"))))->private_data.texts);
    CHECK_FALSE(probe(small_png())->private_data.any());
}

TEST_CASE("probe: a photo with a position, from a file") {
    const auto info = probe(fixture("with_position.jpg"));
    REQUIRE(info);
    CHECK(info->width == 2016);
    CHECK(info->private_data.position);
    CHECK(info->taken->text() == "2026-05-14T08:21:15-05:00");
}

TEST_CASE("probe: progressive, grey and CMYK JPEGs and all PNG kinds are taken") {
    CHECK(probe(small_jpeg({.progressive = true}))->progressive);
    CHECK(probe(jpeg(16, 16, [](int, int) { return std::vector<std::uint8_t>{80}; }, {.components = 1}))->components ==
          1);
    const auto cmyk = jpeg(16, 16, [](int, int) { return std::vector<std::uint8_t>{1, 2, 3, 4}; }, {.components = 4});
    CHECK(probe(cmyk)->components == 4);
    for (int components = 1; components <= 4; ++components) {
        const auto info = probe(small_png(components, 16));
        REQUIRE(info);
        CHECK(info->media == Media::png);
        CHECK(info->components == components);
        CHECK(info->bits == 16);
        CHECK(info->width == 20);
    }
}

TEST_CASE("probe: a PNG turned by its Exif chunk") {
    const auto info =
        probe(with_chunk(small_png(), png_chunk("eXIf", exif({.orientation = 6, .taken = "2026:05:14 08:05:12"}))));
    REQUIRE(info);
    CHECK(info->orientation == 6);
    CHECK(info->width == 10);
    CHECK(info->taken_wall);
}

TEST_CASE("probe: other kinds of file are named and refused with advice") {
    const auto heic = refusal(joined({{0, 0, 0, 24}, to_bytes("ftypheic"), Bytes(40)}));
    CHECK(heic.code == Errc::refused);
    CHECK(heic.line().find("HEIC") != std::string::npos);
    CHECK(heic.todo.find("JPEG") != std::string::npos);
    CHECK(refusal(joined({{0, 0, 0, 24}, to_bytes("ftypavif"), Bytes(40)})).what.find("AVIF") != std::string::npos);
    CHECK(refusal(joined({{0, 0, 0, 24}, to_bytes("ftypisom"), Bytes(40)})).what.find("video") != std::string::npos);
    CHECK(refusal(to_bytes("GIF89a............")).what.find("GIF") != std::string::npos);
    CHECK(refusal(to_bytes("BM................")).what.find("BMP") != std::string::npos);
    CHECK(refusal(to_bytes("RIFF....WEBPVP8 ..")).what.find("WebP") != std::string::npos);
    CHECK(refusal(to_bytes("%PDF-1.7 .........")).what.find("PDF") != std::string::npos);
    CHECK(refusal(joined({to_bytes("II*"), Bytes(20)})).what.find("TIFF") != std::string::npos);
    CHECK(refusal(to_bytes("hello")).what.find("not a photo") != std::string::npos);
    CHECK(refusal({}).what.find("empty") != std::string::npos);
}

TEST_CASE("probe: every cut through a JPEG or PNG is refused, with where it ends") {
    for (const Bytes& whole : {with_exif(small_jpeg(), {.orientation = 6}), small_png()}) {
        REQUIRE(probe(whole));
        for (std::size_t size = 8; size < whole.size(); ++size) {
            const auto info = probe(ByteView(whole).first(size));
            REQUIRE_FALSE(info);
            CHECK(info.error().code == Errc::damaged);
            CHECK(info.error().where.find("byte") != std::string::npos);
        }
    }
}

TEST_CASE("probe: claims beyond the bounds are refused before anything is decoded") {
    CHECK(refusal(claiming(small_jpeg(), 40'000, 100)).what.find("too large") != std::string::npos);
    CHECK(refusal(claiming(small_jpeg(), 32'000, 32'000)).code == Errc::refused);
    CHECK(refusal(claiming(small_jpeg(), 0, 10)).code == Errc::damaged);
    CHECK(refusal(claiming(small_jpeg({.progressive = true}), 10'000, 10'000)).what.find("of this kind") !=
          std::string::npos);
    CHECK(probe(claiming(small_jpeg(), 16'000, 12'000)));  // 192 megapixels: for the decoder to judge
    Bytes png_bomb = small_png();
    const Bytes header = png_chunk("IHDR", {0, 0, 0x7F, 0xFF, 0, 0, 0x7F, 0xFF, 8, 2, 0, 0, 0});
    std::copy(header.begin(), header.end(), png_bomb.begin() + 8);
    CHECK(refusal(png_bomb).what.find("too large") != std::string::npos);
    Bytes huge(kMostPhotoBytes + 1, 0);
    CHECK(refusal(huge).what.find("128 MiB") != std::string::npos);
}

TEST_CASE("probe: a PNG with a wrong checksum or an unknown critical chunk is refused") {
    Bytes flipped = small_png();
    flipped[flipped.size() / 2] ^= 1;
    CHECK(refusal(flipped).code == Errc::damaged);
    CHECK(refusal(with_chunk(small_png(), png_chunk("CgBI", {1, 2, 3, 4}))).code == Errc::refused);
}

TEST_CASE("probe: hostile Exif blocks never harm, they only say nothing") {
    const Bytes good = exif({.orientation = 6, .taken = "2026:05:14 08:05:12", .offset = "-05:00", .secret = "S"});
    const Bytes photo = small_jpeg();
    const auto probe_with = [&](const Bytes& block) {
        const auto info =
            probe(with_segments(photo, segment(0xE1, joined({to_bytes(std::string_view("Exif\0\0", 6)), block}))));
        REQUIRE(info);
        CHECK(info->orientation >= 1);
        CHECK(info->orientation <= 8);
        return *info;
    };
    for (std::size_t size = 0; size < good.size(); ++size)
        probe_with(Bytes(good.begin(), good.begin() + std::ptrdiff_t(size)));
    for (std::size_t i = 0; i < good.size(); ++i)
        for (const int value : {0x00, 0x7F, 0xFF}) {
            Bytes bad = good;
            bad[i] = std::uint8_t(value);
            probe_with(bad);
        }
    CHECK(probe_with(Bytes(500, 0xFF)).private_data.other);
    Bytes circle = exif({.orientation = 6});
    std::copy_n(circle.begin() + 4, 4, circle.end() - 4);  // a directory that follows itself
    probe_with(circle);
}

TEST_CASE("probe: a JPEG of a hundred scans is refused") {
    const Bytes photo = small_jpeg();
    Bytes scans;
    for (int i = 0; i < 100; ++i) scans = joined({scans, {0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0, 0x55}});
    Bytes many(photo.begin(), photo.end() - 2);
    many = joined({many, scans, {0xFF, 0xD9}});
    CHECK(refusal(many).code == Errc::refused);
}
