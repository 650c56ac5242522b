// The XMP packet (ISO 16684-1) put together by hand: a fixed frame and a few fields, so that no library is needed that
// would also rewrite the rest of a photo.
#include "core/photo/regions.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/photo/jpeg_parts.h"
#include "core/photo/png_parts.h"
#include "core/photo/probe.h"

namespace cotter {

namespace {

namespace jm = jpeg_marker;

constexpr std::string_view kXmpSignature{"http://ns.adobe.com/xap/1.0/\0", 29};
constexpr std::string_view kPngKeyword{"XML:com.adobe.xmp\0\0\0\0\0",
                                       22};  // not compressed, no language, no translation
constexpr std::size_t kMostXmp = 65'000;     // a segment holds 65,533 bytes
constexpr std::size_t kMostName = 300;       // bytes
constexpr std::size_t kMostVertices = 48;

constexpr std::string_view kHead =
    "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
    "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">"
    "<rdf:Description rdf:about=\"\" xmlns:Iptc4xmpExt=\"http://iptc.org/std/Iptc4xmpExt/2008-02-29/\">"
    "<Iptc4xmpExt:ImageRegion><rdf:Bag>\n";
constexpr std::string_view kTail =
    "</rdf:Bag></Iptc4xmpExt:ImageRegion></rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>";

// As text of an element; control characters, which XML cannot hold, become blanks, a long text is cut between signs.
std::string escaped(std::string_view text) {
    if (text.size() > kMostName) {
        std::size_t end = kMostName;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
        text = text.substr(0, end);
    }
    std::string out;
    for (const char c : text) {
        if (c == '&')
            out += "&amp;";
        else if (c == '<')
            out += "&lt;";
        else if (c == '>')
            out += "&gt;";
        else
            out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
    return out;
}

std::string field(std::string_view name, std::string_view value) {
    return fmt::format("<Iptc4xmpExt:{0}>{1}</Iptc4xmpExt:{0}>", name, value);
}

std::string share(double value) {
    return fmt::format("{:.4f}", std::clamp(value, 0.0, 1.0));
}

std::string language_text(std::string_view name, std::string_view text) {
    return field(name, fmt::format("<rdf:Alt><rdf:li xml:lang=\"x-default\">{}</rdf:li></rdf:Alt>", escaped(text)));
}

std::string vertices(const std::vector<PhotoRegion::Point>& points) {
    const std::size_t step = (points.size() + kMostVertices - 1) / kMostVertices;  // a long stroke loses points
    std::string out = "<rdf:Seq>";
    for (std::size_t i = 0; i < points.size(); i += step)
        out += "<rdf:li rdf:parseType=\"Resource\">" + field("rbX", share(points[i].x)) +
               field("rbY", share(points[i].y)) + "</rdf:li>";
    return field("rbVertices", out + "</rdf:Seq>");
}

std::string boundary(const PhotoRegion& region) {
    std::string out;
    switch (region.shape) {
        case RegionShape::rectangle: {
            const auto [left, right] = std::minmax(region.points[0].x, region.points[1].x);
            const auto [top, bottom] = std::minmax(region.points[0].y, region.points[1].y);
            out = field("rbShape", "rectangle") + field("rbX", share(left)) + field("rbY", share(top)) +
                  field("rbW", share(right - left)) + field("rbH", share(bottom - top));
            break;
        }
        case RegionShape::circle:
            out = field("rbShape", "circle") + field("rbX", share(region.points[0].x)) +
                  field("rbY", share(region.points[0].y)) + field("rbRx", share(region.radius));
            break;
        case RegionShape::polygon:
            out = field("rbShape", "polygon") + vertices(region.points);
            break;
    }
    return "<Iptc4xmpExt:RegionBoundary rdf:parseType=\"Resource\">" + out + field("rbUnit", "relative") +
           "</Iptc4xmpExt:RegionBoundary>";
}

bool can_be_drawn(const PhotoRegion& region) {
    constexpr std::size_t kLeast[]{2, 1, 3};
    return region.points.size() >= kLeast[static_cast<std::size_t>(region.shape)];
}

std::string region_text(const PhotoRegion& region) {
    std::string out = "<rdf:li rdf:parseType=\"Resource\">" + boundary(region);
    if (!region.id.empty()) out += field("rId", escaped(region.id));
    if (!region.name.empty()) out += language_text("Name", region.name);
    if (!region.role.empty())
        out += field("rRole", "<rdf:Bag><rdf:li rdf:parseType=\"Resource\">" + language_text("Name", region.role) +
                                  "</rdf:li></rdf:Bag>");
    return out + "</rdf:li>\n";
}

std::string xmp_of(const std::vector<PhotoRegion>& regions) {
    std::string out(kHead);
    bool any = false;
    for (const PhotoRegion& region : regions) {
        if (!can_be_drawn(region)) continue;
        const std::string text = region_text(region);
        if (out.size() + text.size() + kTail.size() > kMostXmp) break;
        out += text;
        any = true;
    }
    return any ? out + std::string(kTail) : std::string();
}

void append(Bytes& out, ByteView bytes) {
    out.insert(out.end(), bytes.begin(), bytes.end());
}

// The position behind the JFIF and Exif segments that a JPEG may begin with.
std::size_t behind_head(ByteView photo) {
    std::size_t at = 2;  // SOI
    while (at + 4 <= photo.size() && photo[at] == 0xFF) {
        const std::size_t length = static_cast<std::size_t>(photo[at + 2] << 8 | photo[at + 3]);
        const std::string_view payload = as_text(photo.subspan(at + 4, std::min(length - 2, photo.size() - at - 4)));
        const bool head = (photo[at + 1] == jm::app0 && payload.starts_with(kJfifSignature)) ||
                          (photo[at + 1] == jm::app1 && payload.starts_with(kExifSignature));
        if (!head) return at;
        at += 2 + length;
    }
    return at;
}

Bytes with_segment(ByteView photo, const std::string& xmp) {
    const std::size_t at = behind_head(photo);
    const std::size_t length = 2 + kXmpSignature.size() + xmp.size();
    Bytes out(photo.begin(), photo.begin() + static_cast<std::ptrdiff_t>(at));
    out.reserve(photo.size() + length + 2);
    const std::uint8_t head[] = {0xFF, jm::app1, static_cast<std::uint8_t>(length >> 8),
                                 static_cast<std::uint8_t>(length)};
    append(out, head);
    append(out, as_bytes(kXmpSignature));
    append(out, as_bytes(xmp));
    append(out, photo.subspan(at));
    return out;
}

Result<Bytes> with_chunk(ByteView photo, const std::string& xmp) {
    COTTER_ASSIGN(const PngParts parts, png_parts(photo));
    Bytes out = to_bytes(kPngSignature);
    Bytes data = to_bytes(kPngKeyword);
    append(data, as_bytes(xmp));
    for (const PngChunk& chunk : parts.chunks) {
        append(out, chunk.whole);
        if (chunk.type == "IHDR") add_chunk(out, "iTXt", data);
    }
    append(out, parts.trailing);
    return out;
}

}  // namespace

Result<Bytes> with_regions(ByteView photo, const std::vector<PhotoRegion>& regions) {
    COTTER_ASSIGN(const PhotoInfo info, probe(photo));
    const std::string xmp = xmp_of(regions);
    if (xmp.empty()) return Bytes(photo.begin(), photo.end());
    return info.media == Media::jpeg ? Result<Bytes>(with_segment(photo, xmp)) : with_chunk(photo, xmp);
}

}  // namespace cotter
