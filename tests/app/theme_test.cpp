// Both looks held to their promises: contrast of every pair, grades apart for every kind of eye, sizes.
#include "app/ui/theme.h"

#include <array>

#include <doctest/doctest.h>

using namespace cotter;

namespace {

constexpr std::array kKinds{ThemeKind::sun, ThemeKind::lantern};
constexpr std::array kVisions{Vision::usual, Vision::protanopia, Vision::deuteranopia, Vision::tritanopia};
constexpr std::array kGrades{Tone::serviceable, Tone::watch, Tone::repair, Tone::do_not_tow};

}  // namespace

TEST_CASE("contrast follows WCAG") {
    CHECK(contrast_ratio(rgb(0x000000), rgb(0xFFFFFF)) == doctest::Approx(21));
    CHECK(contrast_ratio(rgb(0xFFFFFF), rgb(0x777777)) == doctest::Approx(4.478).epsilon(0.001));
    CHECK(contrast_ratio(rgb(0x777777), rgb(0xFFFFFF)) == contrast_ratio(rgb(0xFFFFFF), rgb(0x777777)));
}

TEST_CASE("CIEDE2000 gives the values of Sharma, Wu and Dalal's test data") {
    const auto near = [](Lab a, Lab b, double expected) {
        CHECK(delta_e(a, b) == doctest::Approx(expected).epsilon(0.0001));
        CHECK(delta_e(b, a) == doctest::Approx(expected).epsilon(0.0001));
    };
    near({50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425);
    near({50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000);
    near({50, 0, 0}, {50, -1, 2}, 2.3669);
    near({50, 2.49, -0.001}, {50, -2.49, 0.0009}, 7.1792);
    near({50, 2.5, 0}, {73, 25, -18}, 27.1492);
    near({60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644);
    near({2.0776, 0.0795, -1.135}, {0.9033, -0.0636, -0.5514}, 0.9082);
}

TEST_CASE("colour blindness keeps greys and confuses red with green") {
    for (const Vision vision : kVisions) CHECK(simulate_colour_blindness(rgb(0x808080), vision) == rgb(0x808080));
    const Rgb red = rgb(0xB05030);
    const Rgb green = rgb(0x707A28);
    CHECK(delta_e(red, green) > 30);
    CHECK(delta_e(simulate_colour_blindness(red, Vision::deuteranopia),
                  simulate_colour_blindness(green, Vision::deuteranopia)) < 12);
}

TEST_CASE("every text stands out from its ground by 7:1 and every edge from the page by 3:1") {
    for (const ThemeKind kind : kKinds) {
        const Theme& theme = theme_of(kind);
        CHECK(theme.kind == kind);
        for (std::size_t i = 0; i < kTones; ++i) {
            CAPTURE(i);
            const Paint& paint = theme.paints[i];
            CHECK(contrast_ratio(paint.text, paint.ground) >= 7);
            // The grades' plates carry an outline in their text colour's opposite; see grade_mark.h.
            if (i < static_cast<std::size_t>(Tone::serviceable))
                CHECK(contrast_ratio(paint.edge, theme.of(Tone::page).ground) >= 3);
        }
        for (const Tone ground : {Tone::page, Tone::plate, Tone::bar, Tone::chosen, Tone::quiet})
            CHECK(contrast_ratio(theme.second, theme.of(ground).ground) >= 7);
        for (const Tone ground : {Tone::page, Tone::plate, Tone::bar, Tone::chosen})
            CHECK(contrast_ratio(theme.witness, theme.of(ground).ground) >= 3);
    }
}

TEST_CASE("the four grades stay apart for usual, red-, green- and blue-blind eyes") {
    for (const ThemeKind kind : kKinds)
        for (const Vision vision : kVisions)
            for (std::size_t a = 0; a < kGrades.size(); ++a)
                for (std::size_t b = a + 1; b < kGrades.size(); ++b) {
                    CAPTURE(static_cast<int>(vision));
                    CAPTURE(a);
                    CAPTURE(b);
                    const Theme& theme = theme_of(kind);
                    const Rgb x = simulate_colour_blindness(theme.of(kGrades[a]).ground, vision);
                    const Rgb y = simulate_colour_blindness(theme.of(kGrades[b]).ground, vision);
                    CHECK(delta_e(x, y) >= 15);
                }
}

TEST_CASE("text is 16 dp or more and grows with the type size") {
    for (const TypeSize size : {TypeSize::regular, TypeSize::large, TypeSize::largest}) {
        const Sizes sizes = sizes_of(size);
        CHECK(sizes.small() >= Sizes::min_text * sizes.type);
        CHECK(sizes.body() > sizes.small());
        CHECK(sizes.title() > sizes.body());
    }
    CHECK(sizes_of(TypeSize::largest).body() == 2 * sizes_of(TypeSize::regular).body());
}
