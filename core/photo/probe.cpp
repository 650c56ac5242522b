// Headers read with our own walkers; only Exif goes through a library.
#include "core/photo/probe.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/photo/jpeg_parts.h"
#include "core/photo/png_parts.h"

namespace cotter {

namespace {

namespace jm = jpeg_marker;

int big_endian16(ByteView bytes, std::size_t at) {
    return bytes[at] << 8 | bytes[at + 1];
}

std::int64_t big_endian32(ByteView bytes, std::size_t at) {
    return std::int64_t{big_endian16(bytes, at)} << 16 | big_endian16(bytes, at + 2);
}

unexpected<Error> damaged_header() {
    return fail(Errc::damaged, "the photo's header is damaged", {}, "copy it again from the camera or take it anew");
}

unexpected<Error> unusual(const char* what) {
    return fail(Errc::refused, what, {}, "open it in a photo program, save it as plain JPEG and add that");
}

Result<> check_size(std::int64_t width, std::int64_t height, bool whole_in_memory) {
    if (width <= 0 || height <= 0) return damaged_header();
    const std::int64_t most = whole_in_memory ? kMostWholePixels : kMostPhotoPixels;
    if (width <= kMostPhotoSide && height <= kMostPhotoSide && width * height <= most) return {};
    return fail(Errc::refused,
                fmt::format("the photo is too large: {} × {} pixels; at most {} megapixels and {} a side can be taken "
                            "{}",
                            width, height, most / 1'000'000, kMostPhotoSide, whole_in_memory ? "of this kind" : "in"),
                {}, "save a smaller copy and add that");
}

void set_exif(PhotoInfo& info, const ExifFacts& facts) {
    info.orientation = facts.orientation;
    info.colour_space = facts.colour_space;
    info.taken_wall = facts.taken_wall;
    if (facts.taken_wall && facts.taken_offset_min)
        info.taken = Instant::from_wall(*facts.taken_wall, *facts.taken_offset_min);
    const bool turned = facts.orientation >= 5;  // 5…8 swap the sides
    info.width = turned ? info.stored_height : info.stored_width;
    info.height = turned ? info.stored_width : info.stored_height;
}

// --- JPEG

Result<> read_frame(const JpegParts& parts, PhotoInfo& info) {
    const JpegPart& frame = *jpeg_frame(parts);
    if (frame.payload.size() < 6) return damaged_header();
    if (frame.marker > jm::sof2)
        return unusual("this kind of JPEG (lossless, hierarchical or arithmetic) is not known");
    info.bits = frame.payload[0];
    info.components = frame.payload[5];
    if (info.bits != 8) return unusual("this JPEG has other than 8 bits a colour");
    if (info.components != 1 && info.components != 3 && info.components != 4)
        return unusual("this JPEG has an unusual number of colours");
    const auto scans = static_cast<std::size_t>(
        std::count_if(parts.parts.begin(), parts.parts.end(), [](const JpegPart& p) { return p.marker == jm::sos; }));
    if (scans > kMostScans) return unusual("this JPEG is made of too many layers");
    info.progressive = frame.marker == jm::sof2 || scans > 1;
    const int height = big_endian16(frame.payload, 1), width = big_endian16(frame.payload, 3);
    COTTER_TRY(check_size(width, height, info.progressive));
    info.stored_width = width;
    info.stored_height = height;
    return {};
}

void note_segment(const JpegPart& part, PrivateData& found) {
    if (part.marker == jm::com || is_app_with(part, jm::app1, "http://ns.adobe.com/") ||
        is_app_with(part, 0xED, "Photoshop 3.0"))
        found.texts = true;
    else if (is_app_with(part, jm::app0, kJfifSignature))
        found.thumbnail |= part.payload.size() > 14;
    else if (!is_harmless(part))
        found.other = true;
}

Result<PhotoInfo> probe_jpeg(ByteView bytes) {
    COTTER_ASSIGN(const JpegParts parts, jpeg_parts(bytes));
    PhotoInfo info;
    info.media = Media::jpeg;
    COTTER_TRY(read_frame(parts, info));
    ExifFacts facts;
    bool seen_exif = false;
    PrivateData segments;
    for (const JpegPart& part : parts.parts) {
        const bool exif = is_app_with(part, jm::app1, kExifSignature);
        if (exif && !seen_exif)
            facts = read_exif(part.payload.subspan(kExifSignature.size()));
        else
            note_segment(part, segments);
        seen_exif |= exif;
    }
    info.private_data = facts.private_data;
    info.private_data.thumbnail |= segments.thumbnail;
    info.private_data.texts |= segments.texts;
    info.private_data.other |= segments.other;
    info.picture_end = bytes.size() - parts.trailing.size();
    info.private_data.trailing = !parts.trailing.empty();
    set_exif(info, facts);
    return info;
}

// --- PNG

Result<> read_png_header(const PngChunk& header, PhotoInfo& info) {
    const ByteView data = header.data;
    if (data.size() != 13) return damaged_header();
    const std::int64_t width = big_endian32(data, 0), height = big_endian32(data, 4);
    info.progressive = data[12] != 0;
    COTTER_TRY(check_size(width, height, true));
    info.stored_width = static_cast<int>(width);
    info.stored_height = static_cast<int>(height);
    info.bits = data[8];
    switch (data[9]) {
        case 0:
            info.components = 1;
            return {};
        case 2:
        case 3:
            info.components = 3;
            return {};
        case 4:
            info.components = 2;
            return {};
        case 6:
            info.components = 4;
            return {};
        default:
            return damaged_header();
    }
}

void note_chunk(const PngChunk& chunk, PrivateData& found) {
    if (chunk.type == "tEXt" || chunk.type == "zTXt" || chunk.type == "iTXt" || chunk.type == "tIME")
        found.texts = true;
    else if (chunk.type != "eXIf" && !is_harmless(chunk))
        found.other = true;
}

Result<PhotoInfo> probe_png(ByteView bytes) {
    COTTER_ASSIGN(const PngParts parts, png_parts(bytes));
    PhotoInfo info;
    info.media = Media::png;
    COTTER_TRY(read_png_header(parts.chunks.front(), info));
    ExifFacts facts;
    if (const PngChunk* exif = find_chunk(parts, "eXIf")) facts = read_exif(exif->data);
    info.private_data = facts.private_data;
    for (const PngChunk& chunk : parts.chunks) note_chunk(chunk, info.private_data);
    info.picture_end = bytes.size() - parts.trailing.size();
    info.private_data.trailing = !parts.trailing.empty();
    set_exif(info, facts);
    return info;
}

}  // namespace

Result<PhotoInfo> probe(ByteView bytes) {
    if (bytes.empty()) return fail(Errc::refused, "the photo is empty", {}, "copy it again or take it anew");
    if (bytes.size() > kMostPhotoBytes)
        return fail(Errc::refused, "the photo is larger than 128 MiB", {}, "save a smaller copy and add that");
    const Media media = recognise(bytes);
    COTTER_TRY(accept_media(media));
    return media == Media::jpeg ? probe_jpeg(bytes) : probe_png(bytes);
}

}  // namespace cotter
