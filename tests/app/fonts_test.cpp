// The letters that are baked: the common ones at the start, all once one of the others is met.
#include <imgui.h>

#include <algorithm>
#include <cstring>

#include <doctest/doctest.h>

#include "app/ui/fonts.h"
#include "app/ui/kept_letters.h"
#include "tests/app/screens.h"

using namespace cotter;

namespace {

bool baked(ImWchar letter) {
    return ImGui::GetIO().Fonts->Fonts[0]->FindGlyphNoFallback(letter) != nullptr;
}

constexpr float kPxPerDp = 2;

struct Baked {
    explicit Baked(ByteView kept = {}, float px_per_dp = kPxPerDp, Letters letters = Letters::plain)
        : faces(bake_fonts(atlas, files, Sizes{}, px_per_dp, letters, kept)) {}

    [[nodiscard]] Bytes keep() const { return keep_letters(atlas, {Sizes{}.type, kPxPerDp, Letters::plain}); }

    FontFiles files = test_fonts();
    ImFontAtlas atlas;
    Faces faces;
};

bool same_pixels(const ImFontAtlas& a, const ImFontAtlas& b) {
    return a.TexWidth == b.TexWidth && a.TexHeight == b.TexHeight &&
           std::equal(a.TexPixelsAlpha8, a.TexPixelsAlpha8 + a.TexWidth * a.TexHeight, b.TexPixelsAlpha8);
}

bool same_glyphs(const ImFont& a, const ImFont& b) {
    return a.FontSize == b.FontSize && a.Ascent == b.Ascent && a.Descent == b.Descent && a.Scale == b.Scale &&
           a.Glyphs.Size == b.Glyphs.Size &&
           std::memcmp(a.Glyphs.Data, b.Glyphs.Data, static_cast<std::size_t>(a.Glyphs.size_in_bytes())) == 0;
}

}  // namespace

TEST_CASE("the least letters that a text needs") {
    CHECK(letters_for("") == Letters::plain);
    CHECK(letters_for("90 N·m ≥ 3/8 in, ½ → “fine” – 12 × 4 …\n") == Letters::plain);
    CHECK(letters_for("\xff\xc3") == Letters::plain);
    CHECK(letters_for("Zoë") == Letters::western);
    CHECK(letters_for("12 €, ¾") == Letters::western);
    CHECK(letters_for("Łódź") == Letters::all);
    CHECK(letters_for("Zoë, unit Ж-7") == Letters::all);
    CHECK(letters_for("unit Ж-7, Zoë") == Letters::all);
    CHECK(letters_for("μ") == Letters::all);
}

TEST_CASE("a letter that is not plain is baked once it is typed, and stays") {
    Shown shown(GalleryPage::words);
    const auto type = [&](const char* text) {
        REQUIRE(shown.hands.tap("Customer"));
        shown.hands.type(text);
        shown.hands.settle();
    };
    CHECK(baked('Z'));
    CHECK_FALSE(baked(0x0141));
    type("Zoë");
    CHECK(baked(0x00EB));
    CHECK_FALSE(baked(0x0141));
    type("Łódź");
    CHECK(baked(0x0141));
    CHECK(baked(0x0416));
    CHECK(shown.target("Customer").value == "ZoëŁódź");
    type("Zoe");
    CHECK(baked(0x0416));
}

TEST_CASE("letters that an earlier start has baked are put back as they were") {
    const Baked first;
    const Bytes kept = first.keep();
    CHECK(kept_for(kept) == BakedFor{1, kPxPerDp, Letters::plain});
    const Baked second(kept);
    CHECK_FALSE(first.faces.put_back);
    REQUIRE(second.faces.put_back);
    CHECK(same_pixels(first.atlas, second.atlas));
    CHECK(second.atlas.TexUvWhitePixel.x == first.atlas.TexUvWhitePixel.x);
    CHECK(second.atlas.TexUvWhitePixel.y == first.atlas.TexUvWhitePixel.y);
    REQUIRE(second.atlas.Fonts.Size == first.atlas.Fonts.Size);
    for (int i = 0; i < first.atlas.Fonts.Size; ++i) CHECK(same_glyphs(*first.atlas.Fonts[i], *second.atlas.Fonts[i]));
    CHECK(second.faces.body.font->CalcTextSizeA(18, 1000, 0, "Axle 1, left").x ==
          first.faces.body.font->CalcTextSizeA(18, 1000, 0, "Axle 1, left").x);
    CHECK(second.keep() == kept);
}

TEST_CASE("kept letters of another size or set, or damaged ones, are baked anew") {
    const Baked first;
    const Bytes kept = first.keep();
    CHECK_FALSE(Baked(kept, 3).faces.put_back);
    CHECK_FALSE(Baked(kept, kPxPerDp, Letters::western).faces.put_back);
    const auto baked_anew = [&](const Bytes& damaged) {
        const Baked second(damaged);
        return !second.faces.put_back && same_pixels(first.atlas, second.atlas);
    };
    for (const std::size_t left :
         {std::size_t{0}, std::size_t{3}, std::size_t{40}, std::size_t{60}, std::size_t{500}, kept.size() - 1})
        CHECK(baked_anew(Bytes(kept.begin(), kept.begin() + static_cast<std::ptrdiff_t>(left))));
    for (const std::size_t at : {0, 16, 20, 24, 28, 32, 36, 40, 44, 56, 62}) {
        Bytes damaged = kept;
        damaged[at] ^= 0xFF;
        damaged[at + 1] ^= 0x7F;
        CHECK_MESSAGE(baked_anew(damaged), at);
    }
    Bytes longer = kept;
    longer.push_back(0);
    CHECK(baked_anew(longer));
}

TEST_CASE("a stage gives its letters to keep, and takes those that were kept, with all their letters") {
    NullPictures pictures;
    NotedKeyboard keyboard;
    const auto stage = [&](Bytes kept) {
        auto made = std::make_unique<UiStage>(test_fonts(), pictures, keyboard);
        made->resize(412, 915, kPxPerDp, {}, 0);
        CHECK(made->letters_to_keep().empty());
        made->offer_letters(std::move(kept));
        made->begin(0, {});
        return made;
    };
    const Bytes kept = stage({})->letters_to_keep();
    REQUIRE(kept_for(kept) == BakedFor{1, kPxPerDp, Letters::plain});
    CHECK(stage(kept)->letters_to_keep().empty());
    const Baked western({}, kPxPerDp, Letters::western);
    CHECK(stage(keep_letters(western.atlas, {1, kPxPerDp, Letters::western}))->letters_to_keep().empty());
    Bytes damaged = kept;
    damaged.pop_back();
    CHECK(stage(damaged)->letters_to_keep() == kept);
    damaged = kept;
    damaged[12] = 0x70;  // of which letters they are
    CHECK_FALSE(kept_for(damaged));
    CHECK(stage(damaged)->letters_to_keep() == kept);
}
