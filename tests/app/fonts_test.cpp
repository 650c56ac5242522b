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
