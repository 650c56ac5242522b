// Marks drawn into pictures: they land where they should, show on any background and fit at the edges.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <limits>

#include "core/photo/marks.h"

using namespace cotter;

namespace {

const Bytes& font() {
    static const Bytes bytes = [] {
        std::ifstream in(COTTER_TEST_FONT, std::ios::binary);
        return Bytes(std::istreambuf_iterator<char>(in), {});
    }();
    return bytes;
}

Image background(int width, int height, std::uint8_t grey) {
    Image image = make_image(width, height);
    std::fill(image.pixels.begin(), image.pixels.end(), grey);
    return image;
}

constexpr Rgb kOrange{255, 140, 0};

bool is(const Image& image, int x, int y, Rgb c, int tolerance = 2) {
    const std::uint8_t* p = image.row(y) + 3 * x;
    return std::abs(p[0] - c.r) <= tolerance && std::abs(p[1] - c.g) <= tolerance && std::abs(p[2] - c.b) <= tolerance;
}

int count_changed(const Image& a, const Image& b, int x0 = 0, int x1 = 100'000) {
    int count = 0;
    for (int y = 0; y < a.height; ++y)
        for (int x = x0; x < std::min(x1, a.width); ++x)
            count += !std::equal(a.row(y) + 3 * x, a.row(y) + 3 * x + 3, b.row(y) + 3 * x);
    return count;
}

Mark mark(MarkShape shape, std::vector<MarkPoint> points) {
    return {shape, std::move(points), kOrange, {}, 0, {}};
}

Image drawn(const Image& on, const Mark& m) {
    auto out = draw_marks(on, {&m, 1}, font());
    REQUIRE(out);
    return *out;
}

}  // namespace

TEST_CASE("marks: a box is drawn along its sides, in colour within a dark outline, and not inside") {
    for (const int grey : {0, 128, 255}) {
        const Image image = background(512, 512, std::uint8_t(grey));
        const Image out = drawn(image, mark(MarkShape::box, {{0.25, 0.25}, {0.75, 0.75}}));
        CHECK(is(out, 128, 256, kOrange));
        CHECK(is(out, 256, 384, kOrange));
        CHECK(is(out, 126, 256, {16, 16, 16}, 60));
        CHECK(is(out, 256, 256, {std::uint8_t(grey), std::uint8_t(grey), std::uint8_t(grey)}, 0));
        CHECK(is(out, 60, 60, {std::uint8_t(grey), std::uint8_t(grey), std::uint8_t(grey)}, 0));
    }
}

TEST_CASE("marks: a dark colour gets a light outline") {
    Mark m = mark(MarkShape::arrow, {{0.2, 0.5}, {0.8, 0.5}});
    m.colour = {40, 0, 60};
    const Image out = drawn(background(512, 512, 30), m);
    CHECK(is(out, 200, 256, m.colour));
    CHECK(is(out, 200, 257, {255, 255, 255}, 80));
}

TEST_CASE("marks: arrow, point and stroke reach the places they name") {
    const Image image = background(512, 256, 90);
    const Image arrow = drawn(image, mark(MarkShape::arrow, {{0.1, 0.5}, {0.5, 0.5}}));
    CHECK(is(arrow, 100, 128, kOrange));
    CHECK(is(arrow, 250, 128, kOrange));
    CHECK(count_changed(image, arrow, 262) == 0);
    const Image point = drawn(image, mark(MarkShape::point, {{0.5, 0.5}}));
    CHECK(is(point, 256, 128, kOrange, 40));
    CHECK(is(point, 264, 128, kOrange, 40));
    CHECK(is(point, 260, 128, {90, 90, 90}, 0));
    const Image stroke = drawn(image, mark(MarkShape::stroke, {{0.1, 0.1}, {0.1, 0.9}, {0.9, 0.9}}));
    CHECK(is(stroke, 51, 128, kOrange));
    CHECK(is(stroke, 256, 230, kOrange));
}

TEST_CASE("marks: lines grow with the picture") {
    const auto share = [](int side) {
        const Image image = background(side, side, 90);
        return count_changed(image, drawn(image, mark(MarkShape::box, {{0.2, 0.2}, {0.8, 0.8}}))) / double(side) / side;
    };
    CHECK(share(2'048) == doctest::Approx(share(512)).epsilon(0.1));
}

TEST_CASE("marks: edges are smooth") {
    const Image out = drawn(background(512, 512, 255), mark(MarkShape::arrow, {{0.1, 0.13}, {0.9, 0.77}}));
    int between = 0;
    for (int x = 0; x < 512; ++x) between += out.row(256)[3 * x + 2] > 20 && out.row(256)[3 * x + 2] < 240;
    CHECK(between >= 2);
}

TEST_CASE("marks: a finding's sign is the drawing that screens and tables show") {
    const Image image = background(1'024, 1'024, 90);
    for (const Sign sign : {Sign::whole, Sign::chipped, Sign::sheared, Sign::shattered}) {
        Mark m = mark(MarkShape::point, {{0.5, 0.5}});
        m.sign = sign;
        const Image out = drawn(image, m);
        // The plate stands up and right of the spot, 1 unit of 4 pixels round a sign of 11.
        const double left = 512 + 5 * 4 + 4, top = 512 - 5 * 4 - 4 - 44, scale = 44 / kSignField;
        const auto is_at = [&](SignPoint p, Rgb c) {
            return is(out, static_cast<int>(left + p.x * scale), static_cast<int>(top + p.y * scale), c, 40);
        };
        for (const SignPart& part : parts_of(sign)) {
            const SignPoint a = part.points[0], b = part.points[1];
            if (part.ink == SignInk::line) CHECK(is_at({(a.x + b.x) / 2, (a.y + b.y) / 2}, {16, 16, 16}));
        }
        SignPoint middle{};
        const SignPart& last = parts_of(sign)[sign == Sign::shattered ? 7 : 0];
        for (const SignPoint& p : last.points) middle = {middle.x + p.x, middle.y + p.y};
        const auto n = static_cast<float>(last.points.size());
        CHECK(is_at({middle.x / n, middle.y / n}, tint_of(sign)));
        CHECK(is_at({1, 1}, rgb(0xFFFFFF)));
    }
}

TEST_CASE("marks: a number and a label are written") {
    const Image image = background(1'024, 768, 200);
    Mark m = mark(MarkShape::point, {{0.5, 0.5}});
    m.sign = Sign::whole;
    const Image bare = drawn(image, m);
    m.number = 12;
    const Image numbered = drawn(image, m);
    CHECK(count_changed(bare, numbered) > 50);
    m.label = "oil at the seal, 3 Ω";
    const Image labelled = drawn(image, m);
    CHECK(count_changed(numbered, labelled) > 2'000);
    m.points = {{0.99, 0.02}};
    const Image at_edge = drawn(image, m);
    CHECK(count_changed(image, at_edge, 0, 900) > 1'000);  // the label goes to the left instead
}

TEST_CASE("marks: plates of marks at one place do not cover one another") {
    const Image image = background(1'024, 768, 90);
    Mark m = mark(MarkShape::box, {{0.3, 0.3}, {0.6, 0.6}});
    m.sign = Sign::whole;
    const std::vector<Mark> twice{m, m};
    const auto both = draw_marks(image, twice, font());
    REQUIRE(both);
    const double side = 13 * 4;  // units of 1,024 / 256
    CHECK(count_changed(drawn(image, m), *both) > side * side * 0.9);
}

TEST_CASE("marks: edges, tiny pictures and degenerate shapes are drawn without harm") {
    for (const auto& [w, h] : {std::pair{1, 1}, {3, 200}, {64, 2}})
        for (const MarkShape shape : {MarkShape::box, MarkShape::arrow, MarkShape::stroke}) {
            Mark m = mark(shape, {{-5, 2}, {1, 1}});
            m.sign = Sign::shattered;
            m.number = 999;
            m.label = "x";
            CHECK(drawn(background(w, h, 9), m).pixels.size() == std::size_t(3) * std::size_t(w) * std::size_t(h));
            m.points = {{0.5, 0.5}, {0.5, 0.5}};
            CHECK(drawn(background(w, h, 9), m).width == w);
        }
}

TEST_CASE("marks: what cannot be drawn is refused") {
    const Image image = background(64, 64, 0);
    const auto refused = [&](const Mark& m) {
        return draw_marks(image, {&m, 1}, font()).error().code == Errc::refused;
    };
    CHECK(refused(mark(MarkShape::point, {})));
    CHECK(refused(mark(MarkShape::box, {{0, 0}})));
    CHECK(refused(mark(MarkShape::stroke, {{0, 0}})));
    CHECK(refused(mark(MarkShape::point, {{std::nan(""), 0}})));
    CHECK(refused(mark(MarkShape::point, {{std::numeric_limits<double>::infinity(), 0}})));
    Mark m = mark(MarkShape::point, {{0.5, 0.5}});
    m.label = "\xFF\xFE";
    CHECK(refused(m));
    m.label = std::string(300, 'a');
    CHECK(refused(m));
    m.label = "fine";
    CHECK_FALSE(draw_marks(image, {&m, 1}, as_bytes("not a font at all")));
    CHECK_FALSE(draw_marks(image, {&m, 1}, ByteView(font()).first(5'000)));
    CHECK_FALSE(draw_marks(image, {&m, 1}, {}));
}
