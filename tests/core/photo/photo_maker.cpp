// Container formats written out by hand; the JPEG encoder is in jpeg_maker.cpp.
#include "tests/core/photo/photo_maker.h"
#include "tests/support/project_files.h"

#include <fstream>
#include <iterator>
#include <zlib.h>

namespace cotter::made {

namespace {

void append(Bytes& out, const Bytes& bytes) {
    out.insert(out.end(), bytes.begin(), bytes.end());
}

Bytes be32(std::size_t v) {
    return {std::uint8_t(v >> 24), std::uint8_t(v >> 16), std::uint8_t(v >> 8), std::uint8_t(v)};
}

// One TIFF field; `value` is already in the block's byte order.
struct Field {
    unsigned tag, type, count;
    Bytes value;
};

struct Writer {
    bool little;
    Bytes out{};
    [[nodiscard]] Bytes number(std::size_t v, int size) const {
        Bytes bytes = be32(v);
        bytes.erase(bytes.begin(), bytes.end() - size);
        if (little) std::reverse(bytes.begin(), bytes.end());
        return bytes;
    }
    [[nodiscard]] Field ascii(unsigned tag, const std::string& text) const {
        return {tag, 2, unsigned(text.size() + 1), to_bytes(text + '\0')};
    }
    [[nodiscard]] Field pointer(unsigned tag, std::size_t to) const { return {tag, 4, 1, number(to, 4)}; }

    // Adds a directory at the end of `out` and says where it is; `next` is the offset of the one that follows.
    std::size_t directory(std::vector<Field> fields, std::size_t next = 0) {
        const std::size_t at = out.size();
        std::size_t heap = at + 2 + fields.size() * 12 + 4;
        Bytes tail;
        append(out, number(fields.size(), 2));
        for (Field& f : fields) {
            append(out, number(f.tag, 2));
            append(out, number(f.type, 2));
            append(out, number(f.count, 4));
            if (f.value.size() <= 4) {
                f.value.resize(4);
                append(out, f.value);
                continue;
            }
            append(out, number(heap + tail.size(), 4));
            append(tail, f.value);
            if (tail.size() % 2 != 0) tail.push_back(0);
        }
        append(out, number(next, 4));
        append(out, tail);
        return at;
    }
};

}  // namespace

Bytes joined(std::initializer_list<Bytes> parts) {
    Bytes out;
    for (const Bytes& part : parts) append(out, part);
    return out;
}

Bytes fixture(const std::string& name) {
    std::ifstream in(test::project_file("tests/fixtures/photo/" + name), std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

Bytes exif(const ExifKind& kind) {
    Writer w{kind.little_endian};
    w.out = to_bytes(kind.little_endian ? "II" : "MM");
    append(w.out, w.number(42, 2));
    append(w.out, Bytes(4));  // the first directory's offset, filled in at the end
    const bool secrets = !kind.secret.empty();

    std::vector<Field> camera;
    if (!kind.taken.empty()) camera.push_back(w.ascii(0x9003, kind.taken));
    if (!kind.offset.empty()) camera.push_back(w.ascii(0x9011, kind.offset));
    std::vector<Field> first;
    if (secrets) first.push_back(w.ascii(0x010F, kind.secret + " maker"));
    if (kind.orientation != 0) first.push_back({0x0112, 3, 1, w.number(std::size_t(kind.orientation), 2)});
    std::size_t second = 0;
    if (secrets) {
        camera.push_back({0x927C, 7, 40, to_bytes((kind.secret + std::string(40, 'n')).substr(0, 40))});
        camera.push_back({0x9286, 7, 40, to_bytes("ASCII\0\0\0" + (kind.secret + std::string(40, 'c')).substr(0, 32))});
        camera.push_back(w.ascii(0xA430, kind.secret + " owner"));
        camera.push_back(w.ascii(0xA431, kind.secret + " body"));
        camera.push_back(w.ascii(0xA435, kind.secret + " lens"));
        first.push_back(w.ascii(0x013B, kind.secret + " artist"));
        const Bytes thumbnail = joined({{0xFF, 0xD8, 0xFF, 0xFE}, to_bytes("xx" + kind.secret), {0xFF, 0xD9}});
        const std::size_t at = w.out.size();
        append(w.out, thumbnail);
        second =
            w.directory({{0x0103, 3, 1, w.number(6, 2)}, w.pointer(0x0201, at), w.pointer(0x0202, thumbnail.size())});
    }
    const std::size_t camera_at = w.directory(camera);
    first.push_back(w.pointer(0x8769, camera_at));
    if (secrets) {
        const Bytes degrees =
            joined({w.number(10, 4), w.number(1, 4), w.number(20, 4), w.number(1, 4), w.number(30, 4), w.number(1, 4)});
        first.push_back(w.pointer(0x8825, w.directory({{0, 1, 4, {2, 3, 0, 0}},
                                                       w.ascii(1, "N"),
                                                       {2, 5, 3, degrees},
                                                       w.ascii(3, "E"),
                                                       {4, 5, 3, degrees},
                                                       w.ascii(0x1D, kind.secret)})));
    }
    const Bytes first_at = w.number(w.out.size(), 4);
    std::copy(first_at.begin(), first_at.end(), w.out.begin() + 4);
    w.directory(first, second);
    return w.out;
}

Bytes segment(std::uint8_t marker, const Bytes& payload) {
    const std::size_t length = payload.size() + 2;
    return joined({{0xFF, marker, std::uint8_t(length >> 8), std::uint8_t(length)}, payload});
}

Bytes with_segments(const Bytes& jpeg, const Bytes& segments) {
    const bool jfif = jpeg[3] == 0xE0;
    const std::ptrdiff_t at = jfif ? 4 + jpeg[4] * 256 + jpeg[5] : 2;
    Bytes out(jpeg.begin(), jpeg.begin() + at);
    append(out, segments);
    out.insert(out.end(), jpeg.begin() + at, jpeg.end());
    return out;
}

Bytes with_exif(const Bytes& jpeg, const ExifKind& kind) {
    return with_segments(jpeg, segment(0xE1, joined({to_bytes(std::string_view("Exif\0\0", 6)), exif(kind)})));
}

Bytes png_chunk(std::string_view type, const Bytes& data) {
    const Bytes checked = joined({to_bytes(type), data});
    return joined({be32(data.size()), checked, be32(::crc32(0, checked.data(), unsigned(checked.size())))});
}

Bytes with_chunk(const Bytes& png, const Bytes& chunk) {
    constexpr std::ptrdiff_t kHeader = 8 + 25;
    Bytes out(png.begin(), png.begin() + kHeader);
    append(out, chunk);
    out.insert(out.end(), png.begin() + kHeader, png.end());
    return out;
}

Bytes png(int width, int height, const Paint& paint, int components, int bits) {
    static constexpr std::uint8_t kTypes[] = {0, 4, 2, 6};
    Bytes rows;
    for (int y = 0; y < height; ++y) {
        rows.push_back(0);  // no filter
        for (int x = 0; x < width; ++x)
            for (const std::uint8_t c : paint(x, y)) {
                rows.push_back(c);
                if (bits == 16) rows.push_back(0x7F);
            }
    }
    uLongf size = ::compressBound(rows.size());
    Bytes packed(size);
    ::compress2(packed.data(), &size, rows.data(), rows.size(), 6);
    packed.resize(size);
    const Bytes header = joined(
        {be32(std::size_t(width)), be32(std::size_t(height)), {std::uint8_t(bits), kTypes[components - 1], 0, 0, 0}});
    return joined(
        {to_bytes("\x89PNG\r\n\x1A\n"), png_chunk("IHDR", header), png_chunk("IDAT", packed), png_chunk("IEND", {})});
}

std::vector<std::uint8_t> four_corners(int x, int y, int width, int height) {
    const bool right = x >= width / 2, low = y >= height / 2;
    if (low) return right ? std::vector<std::uint8_t>{255, 255, 255} : std::vector<std::uint8_t>{0, 0, 255};
    return right ? std::vector<std::uint8_t>{0, 255, 0} : std::vector<std::uint8_t>{255, 0, 0};
}

}  // namespace cotter::made
