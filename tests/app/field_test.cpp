// The text field: typing, wrapping, the caret, the platform's own keyboard.
#include <imgui.h>

#include <doctest/doctest.h>

#include "tests/app/screens.h"

using namespace cotter;

namespace {

const TextInk& ink_of(Shown& shown, std::string_view text) {
    for (const TextInk& ink : shown.log().texts)
        if (ink.text == text) return ink;
    FAIL(std::string(text));
    return shown.log().texts.front();
}

}  // namespace

TEST_CASE("typing goes into the field that was tapped, and asks for the keyboard meanwhile") {
    Shown shown(GalleryPage::words);
    CHECK(shown.log().shows("who brought it"));
    CHECK_FALSE(shown.host.keyboard().shown);
    REQUIRE(shown.hands.tap("Customer"));
    REQUIRE(shown.host.keyboard().shown);
    CHECK(shown.host.keyboard().shown->label == "Customer");
    shown.hands.type("Zoë Ångström");
    CHECK(shown.target("Customer").value == "Zoë Ångström");
    CHECK(shown.host.keyboard().shown->text == "Zoë Ångström");
    REQUIRE(shown.hands.tap("Done"));
    CHECK(shown.gallery->log() == std::vector<std::string>{"done"});
    CHECK_FALSE(shown.host.keyboard().shown);
    CHECK_FALSE(shown.host.stage().pacer().may_sleep(shown.hands.now()));
}

TEST_CASE("a long note wraps, also while it is edited, and the caret goes where the finger pointed") {
    Shown shown(GalleryPage::words);
    const TextInk note = ink_of(shown, shown.gallery->note());
    CHECK(note.ink.h > 2 * note.size);
    CHECK(note.ink.right() <= 412);
    // The start of the second line: the caret lands before its first word.
    shown.hands.tap({note.ink.x + 1, note.ink.y + note.ink.h * 0.75F});
    shown.hands.type("XX");
    const std::string& text = shown.gallery->note();
    const auto at = text.find("XX");
    REQUIRE(at != std::string::npos);
    CHECK(at > 10);
    CHECK(at < text.size() - 20);
    CHECK(text[at - 1] == ' ');
    REQUIRE(shown.hands.tap("Done"));
    CHECK(shown.log().shows("XX"));
}

TEST_CASE("what a keyboard of the platform's own typed replaces the text") {
    Shown shown(GalleryPage::words);
    REQUIRE(shown.hands.tap("Customer"));
    shown.host.keyboard().next = "R. Alder";
    shown.host.stage().happened();
    shown.hands.settle();
    CHECK(shown.target("Customer").value == "R. Alder");
    shown.hands.type("!");
    CHECK(shown.target("Customer").value == "R. Alder!");
}

TEST_CASE("an error stands below its field and a fixed field takes no text") {
    Shown shown(GalleryPage::words);
    CHECK(shown.log().shows("17 characters are needed"));
    CHECK_FALSE(shown.target("Order").enabled);
    shown.hands.tap(shown.target("Order").rect.middle());
    CHECK_FALSE(shown.host.keyboard().shown);
}

TEST_CASE("a field that the keyboard covers comes to sight") {
    Shown shown(GalleryPage::words, {412, 500});
    REQUIRE(shown.hands.tap("Customer"));
    const float before = shown.target("Customer").rect.y;
    shown.host.stage().resize(412, 500, 1, {0, 0, 0, 220}, shown.hands.now());
    shown.hands.settle();
    CHECK(shown.target("Customer").rect.y < before);
    CHECK(inside(shown.target("Customer").rect, shown.target("Customer").seen));
    CHECK(shown.host.stage().editing());
}
