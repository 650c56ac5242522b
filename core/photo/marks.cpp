// Where each line, plate and letter goes. All sizes are in units of 1/256 of the picture's longer side.
#include "core/photo/marks.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace cotter {

namespace {

constexpr Rgb kBlack = rgb(0x101010), kWhite = rgb(0xFFFFFF);

// The contrasting companion of a color, for outlines around it.
Rgb against(Rgb colour) {
    const unsigned luma = 77u * colour.r + 150u * colour.g + 29u * colour.b;
    return luma >= 90u * 256 ? kBlack : kWhite;
}

Result<> check(const Mark& mark) {
    const std::size_t n = mark.points.size();
    const bool right_count = mark.shape == MarkShape::point    ? n == 1
                             : mark.shape == MarkShape::stroke ? n >= 2 && n <= 10'000
                                                               : n == 2;
    const bool numbers = std::all_of(mark.points.begin(), mark.points.end(),
                                     [](MarkPoint p) { return std::isfinite(p.x) && std::isfinite(p.y); });
    if (right_count && numbers && mark.number >= 0 && mark.number <= 999) return {};
    return fail(Errc::refused, "a mark on a photo cannot be drawn", {}, "remove the mark and draw it again");
}

class Drawing {
public:
    Drawing(Image& image, ByteView font)
        : image_(image),
          canvas_(image),
          font_(font),
          unit_(std::max(1.0, std::max(image.width, image.height) / 256.0)) {}

    Result<> draw(const Mark& mark) {
        std::vector<Px> points;
        for (const MarkPoint p : mark.points)
            points.push_back({std::clamp(p.x, 0.0, 1.0) * image_.width, std::clamp(p.y, 0.0, 1.0) * image_.height});
        const double half = unit_ / 2;
        lines(mark.shape, points, half + outline());
        canvas_.paint(against(mark.colour));
        lines(mark.shape, points, half);
        canvas_.paint(mark.colour);
        return plate_and_label(mark, points);
    }

private:
    struct Half {  // of a plate, in pixels
        double wide = 0, high = 0;
    };
    struct Placed {
        Px at;  // its middle
        Half half;
    };

    [[nodiscard]] double outline() const { return std::max(1.0, unit_ * 0.45); }
    [[nodiscard]] double sign_side() const { return unit_ * 11; }

    void lines(MarkShape shape, const std::vector<Px>& p, double half) {
        switch (shape) {
            case MarkShape::point:
                canvas_.ring(p[0], unit_ * 4, half);
                canvas_.disc(p[0], half * 1.2);
                break;
            case MarkShape::box:
                box(p[0], p[1], half);
                break;
            case MarkShape::arrow:
                arrow(p[0], p[1], half);
                break;
            case MarkShape::stroke:
                for (std::size_t i = 1; i < p.size(); ++i) canvas_.segment(p[i - 1], p[i], half);
                break;
        }
    }

    void box(Px a, Px b, double half) {
        canvas_.segment(a, {b.x, a.y}, half);
        canvas_.segment({b.x, a.y}, b, half);
        canvas_.segment(b, {a.x, b.y}, half);
        canvas_.segment({a.x, b.y}, a, half);
    }

    void arrow(Px tail, Px tip, double half) {
        const double length = std::max(1e-6, std::hypot(tip.x - tail.x, tip.y - tail.y));
        const Px along{(tip.x - tail.x) / length, (tip.y - tail.y) / length};
        const double head = unit_ * 5, wing = unit_ * 2.6;
        const Px neck{tip.x - along.x * head, tip.y - along.y * head};
        const std::array<Px, 3> corners{tip, Px{neck.x - along.y * wing, neck.y + along.x * wing},
                                        Px{neck.x + along.y * wing, neck.y - along.x * wing}};
        canvas_.segment(tail, neck, half);
        canvas_.polygon(corners, half - unit_ / 2);
    }

    // Where the plate's middle would best be: beside the mark, not on what it shows.
    [[nodiscard]] Px anchor(MarkShape shape, const std::vector<Px>& p, const Half& half) const {
        switch (shape) {
            case MarkShape::point:
                return {p[0].x + unit_ * 5 + half.wide, p[0].y - unit_ * 5 - half.high};
            case MarkShape::box:
                return {std::min(p[0].x, p[1].x) + half.wide, std::min(p[0].y, p[1].y) - unit_ - half.high};
            case MarkShape::arrow:
                break;
            case MarkShape::stroke:
                return {p[0].x, p[0].y - unit_ - half.high};
        }
        const double length = std::max(1e-6, std::hypot(p[1].x - p[0].x, p[1].y - p[0].y));
        const double x = (p[0].x - p[1].x) / length, y = (p[0].y - p[1].y) / length;
        return {p[0].x + x * (half.wide + unit_), p[0].y + y * (half.high + unit_)};
    }

    [[nodiscard]] Px inside(Px at, const Half& half) const {
        const auto keep = [&](double v, double margin, int side) {
            return side <= 2 * margin ? side / 2.0 : std::clamp(v, margin, side - margin);
        };
        return {keep(at.x, half.wide + outline(), image_.width), keep(at.y, half.high + outline(), image_.height)};
    }

    // Moved down, column by column, until it covers no earlier plate; after 40 tries it may.
    [[nodiscard]] Px free_place(Px wanted, const Half& half) const {
        const double right = 2 * half.wide + 2 * unit_, down = 2 * half.high + 2 * unit_;
        for (int i = 0; i < 40; ++i) {
            const Px at = inside({wanted.x + (i / 5) * right, wanted.y + (i % 5) * down}, half);
            const bool taken = std::any_of(placed_.begin(), placed_.end(), [&](const Placed& other) {
                return std::abs(other.at.x - at.x) < half.wide + other.half.wide + unit_ &&
                       std::abs(other.at.y - at.y) < half.high + other.half.high + unit_;
            });
            if (!taken) return at;
        }
        return inside(wanted, half);
    }

    Result<> plate_and_label(const Mark& mark, const std::vector<Px>& points) {
        if (!mark.sign && mark.label.empty()) return {};
        std::optional<TextMask> number;
        if (mark.sign && mark.number > 0) {
            COTTER_ASSIGN(number, draw_text(font_, std::to_string(mark.number), height(unit_ * 9)));
        }
        const double room = number ? number->width + unit_ : 0;
        const Half half = mark.sign ? Half{(sign_side() + room) / 2 + unit_, sign_side() / 2 + unit_} : Half{};
        const Px at = free_place(anchor(mark.shape, points, half), half);
        placed_.push_back({at, half});
        if (!mark.label.empty()) COTTER_TRY(label(mark, at, half.wide));
        if (!mark.sign) return {};
        plate(at, half);
        draw_sign(*mark.sign, {at.x - half.wide + unit_, at.y - sign_side() / 2});
        if (!number) return {};
        canvas_.text(*number, static_cast<int>(std::lround(at.x + half.wide - unit_ - number->width)),
                     static_cast<int>(std::lround(at.y - number->height / 2.0)));
        canvas_.paint(kBlack);
        return {};
    }

    // Light, with the cut corner of our plates and a dark edge, so that the sign looks on any photo as it does on
    // paper.
    void plate(Px at, const Half& half) {
        const double cut = unit_ * 2.5, right = at.x + half.wide, top = at.y - half.high, low = at.y + half.high;
        const std::array<Px, 5> corners{Px{at.x - half.wide, top}, Px{right - cut, top}, Px{right, top + cut},
                                        Px{right, low}, Px{at.x - half.wide, low}};
        canvas_.polygon(corners, outline());
        canvas_.paint(kBlack);
        canvas_.polygon(corners, 0);
        canvas_.paint(kWhite);
    }

    void draw_sign(Sign sign, Px corner) {
        const double scale = sign_side() / kSignField;
        for (const SignPart& part : parts_of(sign)) {
            std::vector<Px> points;
            for (const SignPoint& p : part.points) points.push_back({corner.x + p.x * scale, corner.y + p.y * scale});
            if (part.ink != SignInk::line)
                canvas_.polygon(points, 0);
            else
                for (std::size_t i = 0; i < points.size(); ++i)
                    canvas_.segment(points[i], points[(i + 1) % points.size()], part.width * scale / 2);
            canvas_.paint(part.ink == SignInk::tint ? tint_of(sign) : kBlack);
        }
    }

    // A dark plate with light letters to the right of the sign's, or to the left where the picture ends.
    Result<> label(const Mark& mark, Px at, double half_wide) {
        COTTER_ASSIGN(const TextMask text, draw_text(font_, mark.label, height(unit_ * 6.5)));
        const double clear = half_wide + (mark.sign ? outline() : 0), pad = unit_ * 2;
        double left = at.x + clear + pad;
        if (left + text.width + pad > image_.width) left = std::max(pad, at.x - clear - pad - text.width);
        const double top =
            std::clamp(at.y - text.height / 2.0, 0.0, std::max(0.0, double(image_.height - text.height)));
        const double right = left + text.width, middle = top + text.height / 2.0;
        canvas_.segment({left, middle}, {right, middle}, text.height / 2.0 + outline());
        canvas_.paint(kBlack);
        canvas_.text(text, static_cast<int>(std::lround(left)), static_cast<int>(std::lround(top)));
        canvas_.paint(kWhite);
        return {};
    }

    static int height(double pixels) { return std::clamp(static_cast<int>(std::lround(pixels)), 6, 2'000); }

    Image& image_;
    Raster canvas_;
    ByteView font_;
    double unit_;
    std::vector<Placed> placed_;  // the plates drawn so far
};

}  // namespace

Result<Image> draw_marks(const Image& picture, std::span<const Mark> marks, ByteView font) {
    Image out = picture;
    Drawing drawing(out, font);
    for (const Mark& mark : marks) {
        COTTER_TRY(check(mark));
        COTTER_TRY(drawing.draw(mark));
    }
    return out;
}

}  // namespace cotter
