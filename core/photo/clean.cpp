// A photo put together anew from the parts that say nothing about who, where and with what.
#include "core/photo/clean.h"

#include "core/photo/exif.h"
#include "core/photo/jpeg_parts.h"
#include "core/photo/png_parts.h"
#include "core/photo/probe.h"

namespace cotter {

namespace {

namespace jm = jpeg_marker;

void append(Bytes& out, ByteView bytes) {
    out.insert(out.end(), bytes.begin(), bytes.end());
}

void add_segment(Bytes& out, std::uint8_t marker, std::string_view signature, ByteView payload) {
    const std::size_t length = 2 + signature.size() + payload.size();
    const std::uint8_t head[] = {0xFF, marker, static_cast<std::uint8_t>(length >> 8),
                                 static_cast<std::uint8_t>(length)};
    append(out, head);
    append(out, as_bytes(signature));
    append(out, payload);
}

// Our own Exif block, or none when it would say nothing.
Bytes exif_for(const PhotoInfo& info) {
    if (info.orientation == 1 && !info.taken_wall && info.colour_space == 1) return {};
    ExifFacts facts;
    facts.colour_space = info.colour_space;
    facts.orientation = info.orientation;
    facts.taken_wall = info.taken_wall;
    if (info.taken) facts.taken_offset_min = info.taken->offset_min;
    return minimal_exif(facts, info.stored_width, info.stored_height);
}

// JFIF without its thumbnail: version, unit and densities stay.
void add_jfif(Bytes& out, const JpegPart& part) {
    Bytes fields(part.payload.begin() + static_cast<std::ptrdiff_t>(kJfifSignature.size()), part.payload.end());
    fields.resize(9);
    fields[7] = fields[8] = 0;
    add_segment(out, jm::app0, kJfifSignature, fields);
}

void add_kept(Bytes& out, const JpegPart& part) {
    if (is_app_with(part, jm::app14, kAdobeSignature))
        add_segment(out, part.marker, {}, part.payload.first(std::min<std::size_t>(part.payload.size(), 12)));
    else
        add_segment(out, part.marker, {}, part.payload);
    append(out, part.data);
}

bool is_jfif(const JpegPart& part) {
    return is_app_with(part, jm::app0, kJfifSignature);
}

Result<Bytes> clean_jpeg(ByteView bytes, const PhotoInfo& info) {
    COTTER_ASSIGN(const JpegParts parts, jpeg_parts(bytes));
    Bytes out{0xFF, jm::soi};
    out.reserve(bytes.size());
    if (is_jfif(parts.parts.front())) add_jfif(out, parts.parts.front());
    if (const Bytes exif = exif_for(info); !exif.empty()) add_segment(out, jm::app1, kExifSignature, exif);
    for (const JpegPart& part : parts.parts)
        if (is_harmless(part) && !is_jfif(part)) add_kept(out, part);
    append(out, Bytes{0xFF, jm::eoi});
    return out;
}

Result<Bytes> clean_png(ByteView bytes, const PhotoInfo& info) {
    COTTER_ASSIGN(const PngParts parts, png_parts(bytes));
    Bytes out = to_bytes(kPngSignature);
    out.reserve(bytes.size());
    const Bytes exif = exif_for(info);
    for (const PngChunk& chunk : parts.chunks) {
        if (is_harmless(chunk)) append(out, chunk.whole);
        if (chunk.type == "IHDR" && !exif.empty()) add_chunk(out, "eXIf", exif);
    }
    return out;
}

}  // namespace

Result<Bytes> without_private_data(ByteView bytes) {
    COTTER_ASSIGN(const PhotoInfo info, probe(bytes));
    return info.media == Media::jpeg ? clean_jpeg(bytes, info) : clean_png(bytes, info);
}

}  // namespace cotter
