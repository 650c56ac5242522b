// Private data out of photos: nothing of it is left, nothing of the picture is changed.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "core/photo/clean.h"
#include "core/photo/image.h"
#include "tests/core/photo/photo_maker.h"

using namespace cotter;
using namespace cotter::made;

namespace {

constexpr const char* kSecret = "HIDE-ME";

bool has_text(const Bytes& bytes, std::string_view text) {
    return std::search(bytes.begin(), bytes.end(), text.begin(), text.end()) != bytes.end();
}

Bytes picture(const JpegKind& kind = {}) {
    return jpeg(
        64, 48, [](int x, int y) { return four_corners(x, y, 64, 48); }, kind);
}

// A reader of its own for the checks: the segments before the first scan, as (marker, payload).
std::vector<std::pair<int, Bytes>> segments_of(const Bytes& jpeg) {
    std::vector<std::pair<int, Bytes>> out;
    for (std::size_t at = 2; at + 4 <= jpeg.size() && jpeg[at] == 0xFF && jpeg[at + 1] != 0xDA;) {
        const std::size_t length = std::size_t(jpeg[at + 2]) * 256 + jpeg[at + 3];
        out.emplace_back(jpeg[at + 1],
                         Bytes(jpeg.begin() + std::ptrdiff_t(at + 4), jpeg.begin() + std::ptrdiff_t(at + 2 + length)));
        at += 2 + length;
    }
    return out;
}

// Everything from the first scan's marker to the end-of-image marker.
Bytes picture_data(const Bytes& jpeg) {
    std::size_t at = 2;
    while (jpeg[at + 1] != 0xDA) at += 2 + std::size_t(jpeg[at + 2]) * 256 + jpeg[at + 3];
    constexpr std::array<std::uint8_t, 2> end{0xFF, 0xD9};
    const auto begin = jpeg.begin() + std::ptrdiff_t(at);
    return {begin, std::search(begin, jpeg.end(), end.begin(), end.end())};
}

std::set<unsigned> tags_at(const Bytes& tiff, std::size_t at, std::size_t* camera = nullptr) {
    std::set<unsigned> tags;
    const unsigned count = tiff[at] * 256u + tiff[at + 1];
    for (std::size_t i = at + 2; i < at + 2 + count * 12; i += 12) {
        tags.insert(tiff[i] * 256u + tiff[i + 1]);
        if (camera && tiff[i] == 0x87 && tiff[i + 1] == 0x69) *camera = tiff[i + 10] * 256u + tiff[i + 11];
    }
    const std::size_t next = at + 2 + count * 12;
    CHECK(std::all_of(tiff.begin() + std::ptrdiff_t(next), tiff.begin() + std::ptrdiff_t(next + 4),
                      [](auto b) { return b == 0; }));
    return tags;
}

Bytes loaded_with_secrets() {
    const std::string s = kSecret;
    const Bytes before = joined({
        segment(0xE1, joined({to_bytes("http://ns.adobe.com/xap/1.0/"), {0}, to_bytes("<x:xmpmeta>" + s)})),
        segment(0xE2, to_bytes("MPF" + s)),
        segment(0xE2, joined({to_bytes(std::string_view("ICC_PROFILE\0\1\1", 14)), Bytes(300, 0x22)})),
        segment(0xE5, to_bytes("unknown " + s)),
        segment(0xED, joined({to_bytes("Photoshop 3.0"), {0}, to_bytes("8BIM" + s)})),
        segment(0xFE, to_bytes("comment " + s)),
        segment(0xE0, joined({to_bytes("JFXX"), {0, 0x10}, to_bytes(s)})),
    });
    const ExifKind kind{.orientation = 8, .taken = "2026:05:14 08:05:12", .offset = "-05:00", .secret = s};
    return joined({with_exif(with_segments(picture(), before), kind), to_bytes("....ftypmp42 video " + s)});
}

}  // namespace

TEST_CASE("clean: no secret is left of a photo full of them, and the picture is the same to the bit") {
    const Bytes before = loaded_with_secrets();
    REQUIRE(has_text(before, kSecret));
    const auto cleaned = without_private_data(before);
    REQUIRE(cleaned);
    CHECK_FALSE(has_text(*cleaned, kSecret));
    CHECK_FALSE(probe(*cleaned)->private_data.any());
    CHECK(picture_data(*cleaned) == picture_data(before));
    CHECK(picture_data(before).size() > 100);
    std::multiset<int> markers;
    for (const auto& [marker, payload] : segments_of(*cleaned)) markers.insert(marker);
    CHECK(markers == std::multiset<int>{0xE0, 0xE1, 0xE2, 0xDB, 0xDB, 0xC0, 0xC4, 0xC4, 0xC4, 0xC4});
    CHECK(cleaned->back() == 0xD9);
}

TEST_CASE("clean: orientation, time taken, offset and colour profile stay") {
    const Bytes before = loaded_with_secrets();
    const auto cleaned = without_private_data(before);
    const auto info = probe(*cleaned);
    CHECK(info->orientation == 8);
    CHECK(info->taken->text() == "2026-05-14T08:05:12-05:00");
    const auto image = decode_upright(*cleaned, 64), original = decode_upright(before, 64);
    CHECK(image->icc == Bytes(300, 0x22));
    CHECK(image->pixels == original->pixels);
}

TEST_CASE("clean: the new Exif block holds what it must and no more, read by a reader of the test's own") {
    for (const auto& [marker, payload] : segments_of(*without_private_data(loaded_with_secrets()))) {
        if (marker != 0xE1) continue;
        const Bytes tiff(payload.begin() + 6, payload.end());
        REQUIRE(Bytes(tiff.begin(), tiff.begin() + 8) == Bytes{'M', 'M', 0, 42, 0, 0, 0, 8});
        std::size_t camera = 0;
        CHECK(tags_at(tiff, 8, &camera) == std::set<unsigned>{0x0112, 0x011A, 0x011B, 0x0128, 0x0213, 0x8769});
        REQUIRE(camera > 0);
        CHECK(tags_at(tiff, camera) ==
              std::set<unsigned>{0x9000, 0x9003, 0x9011, 0x9101, 0xA000, 0xA001, 0xA002, 0xA003});
    }
}

TEST_CASE("clean: every orientation survives; a photo without facts gets no Exif at all") {
    for (int orientation = 1; orientation <= 8; ++orientation)
        CHECK(probe(*without_private_data(with_exif(picture(), {.orientation = orientation})))->orientation ==
              orientation);
    CHECK_FALSE(has_text(*without_private_data(picture()), "Exif"));
    const auto wall = without_private_data(with_exif(picture(), {.taken = "2026:05:14 08:05:12"}));
    CHECK(probe(*wall)->taken_wall->minute == 5);
    CHECK_FALSE(probe(*wall)->taken);
}

TEST_CASE("clean: doing it again changes nothing") {
    for (const Bytes& photo : {loaded_with_secrets(), picture({.progressive = true}), picture({.restart_rows = 1})}) {
        const auto once = without_private_data(photo);
        REQUIRE(once);
        CHECK(*without_private_data(*once) == *once);
    }
}

TEST_CASE("clean: segments between the scans of a progressive photo are looked at too") {
    Bytes photo = picture({.progressive = true});
    const Bytes scan{0xFF, 0xDA}, table{0xFF, 0xC4};
    const auto first_scan = std::search(photo.begin(), photo.end(), scan.begin(), scan.end());
    const auto between = std::search(first_scan, photo.end(), table.begin(), table.end());
    REQUIRE(between != photo.end());
    const Bytes comment = segment(0xFE, to_bytes(kSecret));
    photo.insert(between, comment.begin(), comment.end());
    const auto cleaned = without_private_data(photo);
    REQUIRE(cleaned);
    CHECK_FALSE(has_text(*cleaned, kSecret));
    CHECK(*cleaned == *without_private_data(picture({.progressive = true})));
}

TEST_CASE("clean: a CMYK photo keeps its colours, without what hides behind the Adobe marker") {
    Bytes photo = jpeg(32, 32, [](int, int) { return std::vector<std::uint8_t>{0, 200, 200, 100}; }, {.components = 4});
    const auto cleaned = without_private_data(photo);
    CHECK(decode_upright(*cleaned, 32)->pixels == decode_upright(photo, 32)->pixels);
    const auto at = std::search(photo.begin(), photo.end(), std::begin("Adobe"), std::end("Adobe") - 1);
    REQUIRE(at != photo.end());
    const auto offset = at - photo.begin();
    photo[std::size_t(offset - 1)] = std::uint8_t(photo[std::size_t(offset - 1)] + 7);
    photo.insert(photo.begin() + offset + 12, kSecret, kSecret + 7);
    CHECK(*without_private_data(photo) == *cleaned);
}

TEST_CASE("clean: a JFIF thumbnail goes, the densities stay") {
    Bytes photo = picture();
    REQUIRE(photo[3] == 0xE0);
    const Bytes jfif =
        segment(0xE0, joined({to_bytes(std::string_view("JFIF\0\1\2\1\0\x48\0\x48\1\1", 14)), {9, 9, 9}}));
    const Bytes with = joined({{0xFF, 0xD8}, jfif, Bytes(photo.begin() + 20, photo.end())});
    CHECK(probe(with)->private_data.thumbnail);
    const auto cleaned = without_private_data(with);
    REQUIRE(cleaned);
    CHECK_FALSE(probe(*cleaned)->private_data.any());
    CHECK(Bytes(cleaned->begin() + 6, cleaned->begin() + 20) ==
          to_bytes(std::string_view("JFIF\0\1\2\1\0\x48\0\x48\0\0", 14)));
}

TEST_CASE("clean: a photo with a position, from a file") {
    const Bytes before = fixture("with_position.jpg");
    REQUIRE(probe(before)->private_data.position);
    const auto cleaned = without_private_data(before);
    REQUIRE(cleaned);
    CHECK_FALSE(probe(*cleaned)->private_data.any());
    CHECK(probe(*cleaned)->taken->text() == "2026-05-14T08:21:15-05:00");
    CHECK(picture_data(*cleaned) == picture_data(before));
    CHECK_FALSE(has_text(*cleaned, "Demo"));  // the camera's make
}

TEST_CASE("clean: a PNG keeps picture and colour chunks only, with right checksums") {
    const std::string s = kSecret;
    const Bytes plain = png(30, 20, [](int x, int y) { return four_corners(x, y, 30, 20); });
    const Bytes gamma = png_chunk("gAMA", {0, 0, 0xB1, 0x8F});
    Bytes photo = with_chunk(plain, gamma);
    for (const char* type : {"tEXt", "zTXt", "iTXt", "tIME", "prVt", "acTL"})
        photo = with_chunk(photo, png_chunk(type, to_bytes(s)));
    photo = with_chunk(photo, png_chunk("eXIf", exif({.orientation = 6, .taken = "2026:05:14 08:05:12", .secret = s})));
    photo = joined({photo, to_bytes(s)});
    const auto cleaned = without_private_data(photo);
    REQUIRE(cleaned);
    CHECK_FALSE(has_text(*cleaned, s));
    const auto info = probe(*cleaned);  // checks every checksum
    REQUIRE(info);
    CHECK(info->orientation == 6);
    CHECK(info->taken_wall);
    CHECK_FALSE(info->private_data.any());
    CHECK(has_text(*cleaned, "gAMA"));
    CHECK(decode_upright(*cleaned, 30)->pixels == decode_upright(photo, 30)->pixels);
    CHECK(*without_private_data(*cleaned) == *cleaned);
    CHECK(*without_private_data(with_chunk(plain, png_chunk("tEXt", to_bytes(s)))) == plain);
}

TEST_CASE("clean: what cannot be used is refused, not passed on") {
    CHECK(without_private_data({}).error().code == Errc::refused);
    const Bytes whole = loaded_with_secrets();
    CHECK(without_private_data(ByteView(whole).first(600)).error().code == Errc::damaged);
}
