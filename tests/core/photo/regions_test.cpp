// Marks written into a photo as image regions: the picture stays, only the regions are added.
#include <doctest/doctest.h>

#include <algorithm>

#include "core/photo/clean.h"
#include "core/photo/image.h"
#include "core/photo/jpeg_parts.h"
#include "core/photo/png_parts.h"
#include "core/photo/probe.h"
#include "core/photo/regions.h"
#include "tests/core/photo/photo_maker.h"

using namespace cotter;
using namespace cotter::made;

namespace {

Bytes photo_of(bool as_png) {
    const Paint paint = [](int x, int y) { return four_corners(x, y, 64, 48); };
    return as_png ? png(64, 48, paint)
                  : with_exif(jpeg(64, 48, paint), {6, "2026:05:14 08:05:12", "-05:00", false, ""});
}

std::vector<PhotoRegion> three_regions() {
    return {
        {RegionShape::rectangle, {{0.75, 0.5}, {0.25, 0.125}}, 0, "urn:uuid:1", "No. 1, pads <worn> & \x01", "finding"},
        {RegionShape::circle, {{0.5, 1.5}}, 0.03, "urn:uuid:2", "No. 2", ""},
        {RegionShape::polygon, {{0.1, 0.1}, {0.2, 0.1}, {0.2, 0.3}}, 0, "urn:uuid:3", "", "finding"}};
}

std::string xmp_in(const Bytes& photo) {
    const std::string_view text = as_text(photo);
    const auto from = text.find("<?xpacket begin");
    const auto to = text.find("<?xpacket end=\"r\"?>");
    return from == text.npos || to == text.npos ? "" : std::string(text.substr(from, to - from));
}

bool has(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("regions: written in shares of the picture, in order, with their names") {
    for (const bool as_png : {false, true}) {
        CAPTURE(as_png);
        const Bytes clean = without_private_data(photo_of(as_png)).value();
        const Bytes marked = with_regions(clean, three_regions()).value();
        const std::string xmp = xmp_in(marked);
        CHECK(has(xmp,
                  "<Iptc4xmpExt:rbX>0.2500</Iptc4xmpExt:rbX><Iptc4xmpExt:rbY>0.1250</Iptc4xmpExt:rbY>"
                  "<Iptc4xmpExt:rbW>0.5000</Iptc4xmpExt:rbW><Iptc4xmpExt:rbH>0.3750</Iptc4xmpExt:rbH>"));
        CHECK(has(xmp, "<Iptc4xmpExt:rbY>1.0000</Iptc4xmpExt:rbY><Iptc4xmpExt:rbRx>0.0300</Iptc4xmpExt:rbRx>"));
        CHECK(has(xmp, "pads &lt;worn&gt; &amp;  </rdf:li>"));
        CHECK(xmp.find("urn:uuid:1") < xmp.find("urn:uuid:2"));
        CHECK(has(xmp, "polygon"));
        CHECK(marked == with_regions(clean, three_regions()).value());
    }
}

TEST_CASE("regions: the picture, its way up and its time stay; taking private data out takes them out again") {
    for (const bool as_png : {false, true}) {
        CAPTURE(as_png);
        const Bytes clean = without_private_data(photo_of(as_png)).value();
        const Bytes marked = with_regions(clean, three_regions()).value();
        const PhotoInfo before = probe(clean).value(), after = probe(marked).value();
        CHECK(after.orientation == before.orientation);
        CHECK(after.taken == before.taken);
        CHECK(decode_upright(marked, 4'000).value().pixels == decode_upright(clean, 4'000).value().pixels);
        CHECK(without_private_data(marked).value() == clean);
    }
}

TEST_CASE("regions: in a JPEG behind its Exif, in one segment") {
    const Bytes clean = without_private_data(photo_of(false)).value();
    const Bytes marked = with_regions(clean, three_regions()).value();
    const JpegParts parts = jpeg_parts(marked).value();
    const auto xmp = std::find_if(parts.parts.begin(), parts.parts.end(), [](const JpegPart& part) {
        return is_app_with(part, jpeg_marker::app1, std::string_view("http://ns.adobe.com/xap/1.0/\0", 29));
    });
    REQUIRE(xmp != parts.parts.end());
    const auto exif = std::find_if(parts.parts.begin(), parts.parts.end(), [](const JpegPart& part) {
        return is_app_with(part, jpeg_marker::app1, kExifSignature);
    });
    CHECK(exif < xmp);
    CHECK(parts.parts.size() == jpeg_parts(clean).value().parts.size() + 1);
}

TEST_CASE("regions: none leaves the bytes alone; those that cannot be drawn are left out") {
    const Bytes clean = without_private_data(photo_of(false)).value();
    CHECK(with_regions(clean, {}).value() == clean);
    CHECK(with_regions(clean, {{RegionShape::polygon, {{0.1, 0.1}}, 0, "", "", ""}}).value() == clean);
    CHECK(with_regions(clean, {{RegionShape::circle, {}, 0, "", "", ""}}).value() == clean);
    CHECK_FALSE(with_regions(to_bytes("no photo"), three_regions()));
}

TEST_CASE("regions: long strokes lose points, and more than a segment holds is left out at the end") {
    PhotoRegion stroke;
    stroke.shape = RegionShape::polygon;
    stroke.name = std::string(2'000, 'n');
    for (int i = 0; i < 500; ++i) stroke.points.push_back({i / 500.0, 0.5});
    const Bytes clean = without_private_data(photo_of(false)).value();
    const std::string one = xmp_in(with_regions(clean, {stroke}).value());
    CHECK(std::count(one.begin(), one.end(), '\n') == 4);  // one region
    CHECK(one.size() < 8'000);
    const Bytes many = with_regions(clean, std::vector<PhotoRegion>(100, stroke)).value();
    CHECK(jpeg_parts(many).has_value());
    CHECK(many.size() - clean.size() < 65'536);
    CHECK(has(xmp_in(many), "</rdf:Bag></Iptc4xmpExt:ImageRegion>"));
}
