// Pictures made ready for leaving.
#include "core/packet/pictures.h"

#include "core/photo/clean.h"

namespace cotter {

namespace {

constexpr int kReportSide = 1'000;  // pixels; about 150 dots an inch at the size the report prints a picture
constexpr int kReportQuality = 80;
constexpr int kTaggedQuality = 90;  // thin coloured lines stay clean

// Shape and colour of a grade. The shapes alone tell them apart; the colours differ in lightness too, for the
// common kinds of colour blindness and for black-and-white prints.
struct GradeLook {
    BadgeShape shape;
    Rgb colour;
};

GradeLook look_of(Grade grade) {
    switch (grade) {
        case Grade::serviceable:
            return {BadgeShape::disc, {120, 200, 255}};
        case Grade::watch:
            return {BadgeShape::diamond, {255, 224, 90}};
        case Grade::repair:
            return {BadgeShape::triangle, {255, 140, 30}};
        case Grade::do_not_tow:
            break;
    }
    return {BadgeShape::octagon, {200, 20, 60}};
}

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

}  // namespace

std::vector<Mark> PictureMaker::marks_of(const Shot& shot) const {
    std::vector<Mark> out;
    for (const Tag& tag : job_.all<Tag>()) {
        const Finding* finding = tag.shot == shot.id ? job_.find(tag.finding) : nullptr;
        if (finding == nullptr) continue;
        const GradeLook look = look_of(finding->grade);
        Mark mark;
        mark.shape = mark_shape(tag.shape);
        for (const TagPoint& p : tag.points) mark.points.push_back({p.x, p.y});
        mark.colour = look.colour;
        mark.badge = look.shape;
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
    COTTER_ASSIGN(const Image image, tagged_image(shot, kReportSide));
    COTTER_ASSIGN(Bytes jpeg, encode_jpeg(image, kReportQuality));
    return ReportPicture{std::move(jpeg), image.width, image.height};
}

}  // namespace cotter
