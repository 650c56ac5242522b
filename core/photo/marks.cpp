// Where each line, badge and letter goes. All sizes are in units of 1/256 of the picture's longer side.
#include "core/photo/marks.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace cotter {

namespace {

constexpr Rgb kBlack{16, 16, 16}, kWhite{255, 255, 255};

// The contrasting companion of a colour, for outlines around it and numbers on it.
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
        return badge_and_label(mark, anchor(mark.shape, points));
    }

private:
    [[nodiscard]] double outline() const { return std::max(1.0, unit_ * 0.45); }
    [[nodiscard]] double badge_radius() const { return unit_ * 5; }

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

    // Where the badge's centre would best be: beside the mark, not on what it shows.
    [[nodiscard]] Px anchor(MarkShape shape, const std::vector<Px>& p) const {
        const double away = badge_radius() + unit_;
        switch (shape) {
            case MarkShape::point:
                return {p[0].x + away * 1.1, p[0].y - away * 1.1};
            case MarkShape::box:
                return {std::min(p[0].x, p[1].x), std::min(p[0].y, p[1].y) - away};
            case MarkShape::arrow:
                break;
            case MarkShape::stroke:
                return {p[0].x, p[0].y - away};
        }
        const double length = std::max(1e-6, std::hypot(p[1].x - p[0].x, p[1].y - p[0].y));
        return {p[0].x - (p[1].x - p[0].x) / length * away, p[0].y - (p[1].y - p[0].y) / length * away};
    }

    [[nodiscard]] Px inside(Px at) const {
        const double margin = badge_radius() * 1.3 + outline();
        const auto keep = [&](double v, int side) {
            return side <= 2 * margin ? side / 2.0 : std::clamp(v, margin, side - margin);
        };
        return {keep(at.x, image_.width), keep(at.y, image_.height)};
    }

    // Moved down, column by column, until it covers no earlier badge; after 40 tries it may.
    [[nodiscard]] Px free_place(Px wanted) const {
        const double step = badge_radius() * 2.6;
        for (int i = 0; i < 40; ++i) {
            const Px at = inside({wanted.x + (i / 5) * step, wanted.y + (i % 5) * step});
            const bool taken = std::any_of(placed_.begin(), placed_.end(), [&](Px other) {
                return std::hypot(other.x - at.x, other.y - at.y) < step * 0.95;
            });
            if (!taken) return at;
        }
        return inside(wanted);
    }

    Result<> badge_and_label(const Mark& mark, Px wanted) {
        if (mark.badge == BadgeShape::none && mark.label.empty()) return {};
        const Px at = free_place(wanted);
        placed_.push_back(at);
        if (!mark.label.empty()) COTTER_TRY(label(mark, at));
        if (mark.badge == BadgeShape::none) return {};
        badge_body(mark.badge, at, outline());
        canvas_.paint(against(mark.colour));
        badge_body(mark.badge, at, 0);
        canvas_.paint(mark.colour);
        return mark.number > 0 ? number(mark, at) : Result<>{};
    }

    void badge_body(BadgeShape shape, Px c, double grow) {
        const double r = badge_radius();
        const auto corners = [&](int count, double first_degrees, double radius, double down) {
            std::vector<Px> out;
            for (int i = 0; i < count; ++i) {
                const double turn = (first_degrees + 360.0 * i / count) * 3.14159265358979323846 / 180;
                out.push_back({c.x + radius * std::cos(turn), c.y + down + radius * std::sin(turn)});
            }
            return out;
        };
        switch (shape) {
            case BadgeShape::disc:
                canvas_.disc(c, r + grow);
                break;
            case BadgeShape::diamond:
                canvas_.polygon(corners(4, -90, r * 1.25, 0), grow);
                break;
            case BadgeShape::triangle:
                canvas_.polygon(corners(3, -90, r * 1.45, r * 0.25), grow);
                break;
            case BadgeShape::octagon:
                canvas_.polygon(corners(8, 22.5, r * 1.08, 0), grow);
                break;
            case BadgeShape::none:
                break;
        }
    }

    Result<> number(const Mark& mark, Px at) {
        const std::string digits = std::to_string(mark.number);
        const double size = badge_radius() * (digits.size() == 1 ? 1.5 : digits.size() == 2 ? 1.2 : 0.9);
        COTTER_ASSIGN(const TextMask text, draw_text(font_, digits, height(size)));
        const double low = mark.badge == BadgeShape::triangle ? badge_radius() * 0.25 : 0;
        canvas_.text(text, static_cast<int>(std::lround(at.x - text.width / 2.0)),
                     static_cast<int>(std::lround(at.y + low - text.height / 2.0)));
        canvas_.paint(against(mark.colour));
        return {};
    }

    // A dark plate with light letters to the right of the badge, or to the left where the picture ends.
    Result<> label(const Mark& mark, Px at) {
        COTTER_ASSIGN(const TextMask text, draw_text(font_, mark.label, height(unit_ * 6.5)));
        const double clear = mark.badge == BadgeShape::none ? 0 : badge_radius() * 1.3, pad = unit_ * 1.5;
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
    Canvas canvas_;
    ByteView font_;
    double unit_;
    std::vector<Px> placed_;  // centres of the badges drawn so far
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
