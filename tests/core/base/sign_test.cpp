// The signs held to their promises as they are drawn at 16 dp: apart by outline, ordered by weight on every ground.
#include "core/base/sign.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <doctest/doctest.h>

using namespace cotter;

namespace {

constexpr int kSide = 16;  // dp: the smallest size in use
constexpr int kLooks = 8;  // into each pixel, across and down
constexpr std::array kGrades{Sign::whole, Sign::chipped, Sign::sheared, Sign::shattered};  // best to worst
constexpr std::array kAnswers{Sign::whole_on_road, Sign::shaded_on_road, Sign::fading_on_road, Sign::sheared_on_road,
                              Sign::shattered_on_road};
constexpr std::array kAll{Sign::whole,          Sign::chipped,         Sign::sheared,
                          Sign::shattered,      Sign::whole_on_road,   Sign::shaded_on_road,
                          Sign::fading_on_road, Sign::sheared_on_road, Sign::shattered_on_road};

enum class Seen { ground, tint, ink };

bool in_polygon(const SignPart& part, SignPoint at) {
    for (std::size_t i = 0; i < part.points.size(); ++i) {
        const SignPoint a = part.points[i], b = part.points[(i + 1) % part.points.size()];
        if ((b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x) < 0) return false;
    }
    return true;
}

float to_edge(SignPoint a, SignPoint b, SignPoint at) {
    const float dx = b.x - a.x, dy = b.y - a.y;
    const float t = std::clamp(((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx * dx + dy * dy), 0.0F, 1.0F);
    return std::hypot(at.x - a.x - t * dx, at.y - a.y - t * dy);
}

bool on_line(const SignPart& part, SignPoint at) {
    for (std::size_t i = 0; i < part.points.size(); ++i)
        if (to_edge(part.points[i], part.points[(i + 1) % part.points.size()], at) <= part.width / 2) return true;
    return false;
}

Seen look_at(Sign sign, SignPoint at) {
    Seen seen = Seen::ground;
    for (const SignPart& part : parts_of(sign)) {
        if (part.ink == SignInk::tint && in_polygon(part, at)) seen = Seen::tint;
        if (part.ink == SignInk::ink && in_polygon(part, at)) seen = Seen::ink;
        if (part.ink == SignInk::line && on_line(part, at)) seen = Seen::ink;
    }
    return seen;
}

double luminance_of(Rgb color) {  // 0…1
    const auto linear = [](std::uint8_t channel) {
        const double v = channel / 255.0;
        return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(color.r) + 0.7152 * linear(color.g) + 0.0722 * linear(color.b);
}

double lightness_of(double luminance) {  // CIE L*, 0…100
    return luminance <= 0.008856 ? 903.3 * luminance : 116 * std::cbrt(luminance) - 16;
}

// `each(tint, ink)`: the shares of every pixel of the small picture that these two cover.
template <class Each>
void draw_small(Sign sign, const Each& each) {
    constexpr float kStep = kSignField / kSide / kLooks;
    for (int pixel = 0; pixel < kSide * kSide; ++pixel) {
        int tint = 0, ink = 0;
        for (int look = 0; look < kLooks * kLooks; ++look) {
            const auto x = static_cast<float>(pixel % kSide * kLooks + look % kLooks);
            const auto y = static_cast<float>(pixel / kSide * kLooks + look / kLooks);
            const Seen seen = look_at(sign, {(x + 0.5F) * kStep, (y + 0.5F) * kStep});
            tint += seen == Seen::tint ? 1 : 0;
            ink += seen == Seen::ink ? 1 : 0;
        }
        each(tint / double{kLooks * kLooks}, ink / double{kLooks * kLooks});
    }
}

std::vector<double> covered(Sign sign) {
    std::vector<double> out;
    draw_small(sign, [&](double tint, double ink) { out.push_back(tint + ink); });
    return out;
}

struct Ground {
    const char* name;
    Rgb ground, ink;
};
constexpr Ground kGrounds[]{{"sun", rgb(0xF3F0E6), rgb(0x13201F)},
                            {"lantern", rgb(0x0D1415), rgb(0xF4F1E8)},
                            {"paper", rgb(0xFFFFFF), rgb(0x000000)}};

// How far a sign stands out from its ground on the whole: the mean difference in lightness, as a grey picture shows it.
double weight(Sign sign, const Ground& on) {
    const double base = luminance_of(on.ground), writing = luminance_of(on.ink), own = luminance_of(tint_of(sign));
    double sum = 0;
    draw_small(sign, [&](double tint, double ink) {
        const double mixed = own * tint + writing * ink + base * (1 - tint - ink);
        sum += std::abs(lightness_of(mixed) - lightness_of(base));
    });
    return sum / (kSide * kSide);
}

// 1: nothing in common, 0: the same.
double apart(Sign one, Sign other) {
    const auto a = covered(one), b = covered(other);
    double both = 0, either = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        both += std::min(a[i], b[i]);
        either += std::max(a[i], b[i]);
    }
    return 1 - both / either;
}

}  // namespace

TEST_CASE("signs: every point with its line lies in the field") {
    for (const Sign sign : kAll)
        for (const SignPart& part : parts_of(sign)) {
            REQUIRE(part.points.size() >= 2);
            REQUIRE(part.points.size() <= kMostSignPoints);
            CHECK((part.ink == SignInk::line) == (part.width > 0));
            const float room = part.points.size() == 2 ? 0 : part.width / 2;  // a stroke ends flat
            for (const SignPoint& p : part.points) {
                CHECK(p.x - room >= 0.3F);
                CHECK(p.x + room <= kSignField - 0.3F);
                CHECK(p.y - part.width / 2 >= 0.3F);
                CHECK(p.y + part.width / 2 <= kSignField - 0.3F);
            }
        }
}

TEST_CASE("signs: what is filled turns one way only") {
    for (const Sign sign : kAll)
        for (const SignPart& part : parts_of(sign)) {
            const std::size_t n = part.points.size();
            if (part.ink == SignInk::line) continue;
            for (std::size_t i = 0; i < n; ++i) {
                const SignPoint a = part.points[i], b = part.points[(i + 1) % n], c = part.points[(i + 2) % n];
                CAPTURE(static_cast<int>(sign));
                CHECK((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= 0);
            }
        }
}

TEST_CASE("signs: outlines differ at 16 dp, with no color to tell them apart") {
    for (std::size_t i = 0; i < kAll.size(); ++i)
        for (std::size_t k = i + 1; k < kAll.size(); ++k) {
            CAPTURE(i);
            CAPTURE(k);
            const bool same_word = kAll[i] == Sign::shattered && kAll[k] == Sign::shattered_on_road;
            CHECK(apart(kAll[i], kAll[k]) >= (same_word ? 0.2 : 0.33));
        }
}

TEST_CASE("signs: 'cannot tell' and 'from outside' never resemble 'serviceable' or 'nothing found'") {
    for (const Sign silent : {Sign::fading_on_road, Sign::shaded_on_road})
        for (const Sign good : {Sign::whole, Sign::whole_on_road}) CHECK(apart(silent, good) >= 0.6);
}

TEST_CASE("signs: the worse, the heavier, in both looks of the screen and on paper") {
    for (const Ground& on : kGrounds) {
        CAPTURE(on.name);
        for (std::size_t i = 1; i < kGrades.size(); ++i) {
            CAPTURE(i);
            CHECK(weight(kGrades[i], on) >= weight(kGrades[i - 1], on) + 2);
        }
        for (std::size_t i = 1; i < kAnswers.size(); ++i) {
            CAPTURE(i);
            CHECK(weight(kAnswers[i], on) >= weight(kAnswers[i - 1], on) + 0.5);
        }
    }
}

TEST_CASE("signs: the worse, the darker the color, so that a grey print keeps the order") {
    for (std::size_t i = 1; i < kGrades.size(); ++i)
        CHECK(lightness_of(luminance_of(tint_of(kGrades[i - 1]))) >=
              lightness_of(luminance_of(tint_of(kGrades[i]))) + 5);
}
