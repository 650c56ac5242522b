// Pictures made ready for leaving.
#include "core/packet/pictures.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/photo/clean.h"
#include "core/survey/grade_sign.h"

namespace cotter {

namespace {

// For the report: pixels of the longer side, and quality. The first is about 280 dots an inch at the size in which a
// picture is printed, the last still shows what is in it; the first whose file is small enough is taken.
struct ReportSize {
    int side;
    int quality;
};
constexpr ReportSize kReportSizes[]{{1'000, 80}, {800, 75}, {640, 70}, {500, 60}, {360, 50}, {240, 40}};
constexpr std::size_t kReportBytes = 10'500'000;  // all pictures of a report, which stays under 12 MB
constexpr std::size_t kMostReportPicture = 400'000;
constexpr int kTaggedQuality = 90;  // thin coloured lines stay clean

MarkShape mark_shape(TagShape shape) {
    switch (shape) {
        case TagShape::box:
            return MarkShape::box;
        case TagShape::arrow:
            return MarkShape::arrow;
        case TagShape::stroke:
            return MarkShape::stroke;
        case TagShape::point:
            break;
    }
    return MarkShape::point;
}

// Points and arrows stand for what is around their spot.
constexpr double kSpotRadius = 0.03;

PhotoRegion region_of(const Tag& tag) {
    PhotoRegion out;
    out.id = "urn:uuid:" + tag.id.text();
    const auto add = [&](const TagPoint& p) { out.points.push_back({p.x, p.y}); };
    if (tag.points.empty()) return out;
    const bool spot = tag.shape == TagShape::point || tag.shape == TagShape::arrow;
    if (spot) {
        out.shape = RegionShape::circle;
        out.radius = kSpotRadius;
        add(tag.points.back());
        return out;
    }
    for (const TagPoint& p : tag.points) add(p);
    out.shape = tag.shape == TagShape::stroke && tag.points.size() >= 3 ? RegionShape::polygon : RegionShape::rectangle;
    return out;
}

}  // namespace

std::vector<PhotoRegion> PictureMaker::regions_of(const Shot& shot) const {
    std::vector<PhotoRegion> out;
    for (const Tag& tag : job_.all<Tag>()) {
        const Finding* finding = tag.shot == shot.id ? job_.find(tag.finding) : nullptr;
        if (finding == nullptr) continue;
        PhotoRegion region = region_of(tag);
        region.name =
            fmt::format("No. {}, {}: {}", finding_number(job_, finding->id), finding->component, finding->defect);
        region.role = fmt::format("finding, {}", name_of(finding->grade));
        out.push_back(std::move(region));
    }
    return out;
}

std::vector<Mark> PictureMaker::marks_of(const Shot& shot) const {
    std::vector<Mark> out;
    for (const Tag& tag : job_.all<Tag>()) {
        const Finding* finding = tag.shot == shot.id ? job_.find(tag.finding) : nullptr;
        if (finding == nullptr) continue;
        const Sign sign = sign_of(finding->grade);
        Mark mark;
        mark.shape = mark_shape(tag.shape);
        for (const TagPoint& p : tag.points) mark.points.push_back({p.x, p.y});
        mark.colour = tint_of(sign);
        mark.sign = sign;
        mark.number = finding_number(job_, finding->id);
        out.push_back(std::move(mark));
    }
    return out;
}

Result<Image> PictureMaker::tagged_image(const Shot& shot, int max_side) const {
    COTTER_ASSIGN(const Bytes preview, vault_.preview(shot.photo.sha256));
    COTTER_ASSIGN(Image image, decode_upright(preview, max_side));
    const auto marks = marks_of(shot);
    if (marks.empty()) return image;
    return draw_marks(image, marks, font_);
}

Result<ReadyShot> PictureMaker::ready(const Shot& shot, const PacketPhoto& names) const {
    COTTER_ASSIGN(Bytes original, vault_.original(shot.photo.sha256));
    ReadyShot out;
    out.cleaned = !job_.only<Visit>()->keep_private_data;
    if (out.cleaned) {
        COTTER_ASSIGN(original, without_private_data(original));
        COTTER_ASSIGN(original, with_regions(original, regions_of(shot)));
    }
    out.photo = SealedFile::make(names.file, std::move(original));
    if (!names.tagged_file.empty()) {
        COTTER_ASSIGN(const Image image, tagged_image(shot, kPreviewSide));
        COTTER_ASSIGN(Bytes jpeg, encode_jpeg(image, kTaggedQuality));
        out.tagged = SealedFile::make(names.tagged_file, std::move(jpeg));
    }
    COTTER_ASSIGN(out.report, for_report(shot));
    return out;
}

Result<ReportPicture> PictureMaker::for_report(const Shot& shot) const {
    const std::size_t share = kReportBytes / std::max<std::size_t>(1, job_.all<Shot>().size());
    const std::size_t most = std::min(share, kMostReportPicture);
    ReportPicture out;
    for (const ReportSize& size : kReportSizes) {
        COTTER_ASSIGN(const Image image, tagged_image(shot, size.side));
        COTTER_ASSIGN(out.jpeg, encode_jpeg(image, size.quality));
        out.width = image.width;
        out.height = image.height;
        if (out.jpeg.size() <= most) break;
    }
    return out;
}

}  // namespace cotter
