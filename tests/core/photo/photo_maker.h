// Photos made to measure for the tests: pictures, JPEG and PNG files of unusual kinds, Exif blocks with secrets in
// them. Built without the code under test.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/bytes.h"

namespace cotter::made {

// Components of one pixel, 0…255.
using Paint = std::function<std::vector<std::uint8_t>(int x, int y)>;

struct JpegKind {
    int components = 3;  // 1 grey, 3 RGB, 4 CMYK as stored
    bool progressive = false;
    bool adobe = true;  // for CMYK: with the marker that says that 255 means no ink
    int restart_rows = 0;
    int quality = 92;
};
[[nodiscard]] Bytes jpeg(int width, int height, const Paint& paint, const JpegKind& kind = {});

// `bits` 8 or 16 (each component's byte is then the upper one); components 1…4 as PNG colour types 0, 4, 2, 6.
[[nodiscard]] Bytes png(int width, int height, const Paint& paint, int components = 3, int bits = 8);
[[nodiscard]] Bytes png_chunk(std::string_view type, const Bytes& data);
// `chunk` put right behind the header chunk.
[[nodiscard]] Bytes with_chunk(const Bytes& png, const Bytes& chunk);

struct ExifKind {
    int orientation = 0;   // 0: no such tag
    std::string taken{};   // "2026:05:14 08:05:12"; empty: no such tag
    std::string offset{};  // "-05:00"
    bool little_endian = false;
    std::string secret{};  // non-empty: in body serial, owner, artist, comment, maker note, GPS and a thumbnail
};
// A TIFF-structured block, without "Exif\0\0".
[[nodiscard]] Bytes exif(const ExifKind& kind);

[[nodiscard]] Bytes segment(std::uint8_t marker, const Bytes& payload);
// `segments` put right behind SOI (or behind a JFIF segment that follows it).
[[nodiscard]] Bytes with_segments(const Bytes& jpeg, const Bytes& segments);
[[nodiscard]] Bytes with_exif(const Bytes& jpeg, const ExifKind& kind);

// Red upper left, green upper right, blue lower left, white lower right: as stored.
[[nodiscard]] std::vector<std::uint8_t> four_corners(int x, int y, int width, int height);

[[nodiscard]] Bytes joined(std::initializer_list<Bytes> parts);
[[nodiscard]] Bytes fixture(const std::string& name);  // of tests/fixtures/photo

}  // namespace cotter::made
