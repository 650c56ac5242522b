// The letters that are baked: the common ones at the start, all once one of the others is met.
#include <imgui.h>

#include <doctest/doctest.h>

#include "app/ui/fonts.h"
#include "tests/app/screens.h"

using namespace cotter;

namespace {

bool baked(ImWchar letter) {
    return ImGui::GetIO().Fonts->Fonts[0]->FindGlyphNoFallback(letter) != nullptr;
}

}  // namespace

TEST_CASE("rare letters are told from common ones") {
    CHECK_FALSE(has_rare_letters(""));
    CHECK_FALSE(has_rare_letters("Zoë: 90 N·m ≥ 3/8 in, ½ → “fine” – 12 €\n"));
    CHECK_FALSE(has_rare_letters("\xff\xc3"));
    CHECK(has_rare_letters("Łódź"));
    CHECK(has_rare_letters("unit Ж-7"));
    CHECK(has_rare_letters("μ"));
}

TEST_CASE("a rare letter is baked once it is typed, and stays") {
    Shown shown(GalleryPage::words);
    CHECK(baked(0x00EB));
    CHECK_FALSE(baked(0x0141));
    REQUIRE(shown.hands.tap("Customer"));
    shown.hands.type("Łódź");
    shown.hands.settle();
    CHECK(baked(0x0141));
    CHECK(baked(0x0416));
    CHECK(shown.target("Customer").value == "Łódź");
}
