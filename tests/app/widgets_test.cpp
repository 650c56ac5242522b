// The widgets under fingers and keys, drawn without pixels.
#include <imgui.h>

#include <algorithm>

#include <doctest/doctest.h>

#include "tests/app/screens.h"

using namespace cotter;

namespace {

using Words = std::vector<std::string>;

bool rests(Shown& shown) {
    return !shown.host.stage().pacer().may_sleep(shown.hands.now()).has_value();
}

}  // namespace

TEST_CASE("a tap gives one command, and nothing stays lit") {
    Shown shown(GalleryPage::start);
    REQUIRE(shown.hands.tap("Axle 1 left"));
    CHECK(shown.gallery->log() == Words{"a1l"});
    CHECK(rests(shown));
    CHECK_FALSE(ImGui::IsMousePosValid());
    REQUIRE(shown.hands.tap("Axle 1 left"));
    CHECK(shown.gallery->log() == Words{"a1l", "a1l"});
}

TEST_CASE("a resting screen draws no frame") {
    Shown shown(GalleryPage::start);
    CHECK(rests(shown));
    const int before = shown.hands.frames();
    shown.hands.pass(3600);
    CHECK(shown.hands.frames() == before);
}

TEST_CASE("a drag scrolls the list by its way and taps nothing") {
    Shown shown(GalleryPage::start, {412, 915}, {}, 30);
    const Point at = shown.target("Axle 1 left").rect.middle();
    shown.hands.drag(at, {at.x, at.y - 200}, 0.5);
    CHECK(shown.scrolled() == doctest::Approx(200).epsilon(0.01));
    CHECK(shown.gallery->log().empty());
    shown.hands.drag({at.x, 300}, {at.x, 800}, 0.5);
    CHECK(shown.scrolled() == doctest::Approx(0));
}

TEST_CASE("a target that is scrolled away is brought to sight when it is asked for") {
    Shown shown(GalleryPage::start, {412, 915}, {}, 30);
    const Target away = shown.log().targets[25];
    REQUIRE(away.seen.empty());
    shown.host.stage().reach(away.id);
    shown.hands.pass(0.1);
    CHECK(shown.scrolled() > 0);
    CHECK(inside(shown.target(away.label).rect, shown.log().scrolls.front().rect));
    CHECK(shown.gallery->log().empty());  // it is shown, not pressed
    CHECK(rests(shown));
    REQUIRE(shown.hands.tap(away.label));
    CHECK(shown.gallery->log().size() == 1);
}

TEST_CASE("what is asked for and not there scrolls nothing, now or later") {
    Shown shown(GalleryPage::start, {412, 915}, {}, 30);
    shown.host.stage().reach(12345);
    shown.hands.pass(0.1);
    CHECK(shown.scrolled() == 0);
    CHECK(rests(shown));
}

TEST_CASE("a fling goes on after the finger left, then the screen rests") {
    Shown shown(GalleryPage::start, {412, 915}, {}, 200);
    UiStage& stage = shown.host.stage();
    double now = shown.hands.now();
    stage.finger({now, 1, {200, 700}, FingerPhase::down});
    for (int i = 1; i <= 6; ++i) {
        now += 1.0 / 60;
        stage.finger({now, 1, {200, 700.0F - 30.0F * static_cast<float>(i)}, FingerPhase::move});
        shown.host.frame(now);
    }
    stage.finger({now, 1, {200, 520}, FingerPhase::up});
    shown.host.frame(now);
    const float at_release = shown.scrolled();
    for (int i = 0; i < 600 && stage.pacer().may_sleep(now); ++i) {
        now += 1.0 / 60;
        shown.host.frame(now);
    }
    CHECK(at_release < 185);
    CHECK(shown.scrolled() > at_release + 200);
    CHECK_FALSE(stage.pacer().may_sleep(now));
    CHECK(shown.gallery->log().empty());
}

TEST_CASE("turning the device amid a press taps nothing") {
    Shown shown(GalleryPage::start);
    const Point at = shown.target("Axle 1 left").rect.middle();
    UiStage& stage = shown.host.stage();
    const double now = shown.hands.now();
    stage.finger({now, 1, at, FingerPhase::down});
    shown.host.frame(now);
    REQUIRE(shown.host.resize(915, 412, now));
    stage.finger({now, 1, at, FingerPhase::up});
    shown.hands.settle();
    CHECK(shown.gallery->log().empty());
    CHECK(rests(shown));
}

TEST_CASE("what cannot be used now takes no tap and says why not") {
    Shown shown(GalleryPage::start);
    const auto tapped = shown.hands.tap("Lights and wiring");
    REQUIRE_FALSE(tapped);
    CHECK(tapped.error().line() == "'Lights and wiring' cannot be tapped: it is off");
    shown.hands.tap(shown.target("Lights and wiring").rect.middle());
    CHECK(shown.gallery->log().empty());
}

TEST_CASE("a sheet takes all input until it is closed; back closes it first") {
    Shown shown(GalleryPage::start);
    const Point behind = shown.target("NUR-07 deck trailer").rect.middle();
    REQUIRE(shown.hands.tap("Help"));
    CHECK(shown.log().layer == 1);
    shown.hands.tap(behind);
    CHECK(shown.log().shows("How a grade is chosen"));
    CHECK(shown.log().find("NUR-07 deck trailer").empty());
    shown.host.stage().key(ImGuiKey_AppBack, true);
    shown.hands.settle();
    shown.host.stage().key(ImGuiKey_AppBack, false);
    shown.hands.settle();
    CHECK(shown.log().layer == 0);
    CHECK(shown.gallery->log().empty());
    shown.host.stage().key(ImGuiKey_AppBack, true);
    shown.hands.settle();
    CHECK(shown.gallery->log() == Words{"back"});
}

TEST_CASE("chips, grades, choices and switches") {
    Shown shown(GalleryPage::choices);
    REQUIRE(shown.hands.tap("worn"));
    REQUIRE(shown.hands.tap("loose"));
    CHECK(shown.target("worn").chosen);
    CHECK(shown.target("loose").chosen);
    REQUIRE(shown.hands.tap("worn"));
    CHECK_FALSE(shown.target("worn").chosen);
    REQUIRE(shown.hands.tap("do not tow"));
    CHECK(shown.target("do not tow").chosen);
    CHECK_FALSE(shown.target("repair").chosen);
    const float right = shown.target("Save").rect.right();
    REQUIRE(shown.hands.tap("Left hand"));
    CHECK(shown.target("Left hand").value == "on");
    CHECK(shown.target("Save").rect.right() < right);  // the main action moves to the other thumb
}

TEST_CASE("the keypad hands over what was keyed") {
    Shown shown(GalleryPage::start);
    REQUIRE(shown.hands.tap("New job"));
    CHECK_FALSE(shown.target("Done").enabled);
    for (const char* key : {"3", ".", "2"}) REQUIRE(shown.hands.tap(key));
    CHECK(shown.log().shows("3.2"));
    REQUIRE(shown.hands.tap("Next point"));
    for (const char* key : {"4", ".", "0", "5"}) REQUIRE(shown.hands.tap(key));
    CHECK(shown.log().shows("least 3.2 mm · spread 0.85 mm"));
    REQUIRE(shown.hands.tap("Done"));
    CHECK(shown.gallery->log() == Words{"keyed 3.2"});
    CHECK(shown.gallery->keypad().points()[1] == "4.05");
    CHECK(shown.log().layer == 0);
}

TEST_CASE("a picture takes taps, strokes and long presses in its own coordinates, and scrolls nothing") {
    Shown shown(GalleryPage::photos);
    ScriptCommand to;
    to.verb = ScriptVerb::scroll_to;
    to.text = "Photo to mark";
    REQUIRE(shown.hands.run(std::vector{to}));
    const Rect area = shown.target("Photo to mark").rect;
    const float before = shown.scrolled();
    shown.hands.tap({area.x + 20, area.y + 30});
    shown.hands.drag({area.x + 50, area.y + 50}, {area.x + 150, area.y + 90}, 0.3);
    shown.hands.drag({area.x + 60, area.y + 60}, {area.x + 60, area.y + 60}, 0.8);
    CHECK(shown.gallery->log() == Words{"mark 20,30", "drew 50,50 to 150,90", "held"});
    CHECK(shown.scrolled() == before);
}

TEST_CASE("two fingers zoom a picture") {
    Shown shown(GalleryPage::photos);
    ScriptCommand pinch;
    pinch.verb = ScriptVerb::scroll_to;
    pinch.text = "Photo to mark";
    REQUIRE(shown.hands.run(std::vector{pinch}));
    pinch.verb = ScriptVerb::pinch;
    pinch.from = shown.target("Photo to mark").rect.middle();
    pinch.to = {60, 180};
    REQUIRE(shown.hands.run(std::vector{pinch}));
    CHECK(shown.gallery->zoom() == doctest::Approx(3).epsilon(0.01));
}

TEST_CASE("a strip scrolls sideways, the page stays") {
    Shown shown(GalleryPage::photos);
    REQUIRE(shown.hands.tap("9"));
    CHECK(shown.gallery->log() == Words{"strip 8"});
    const auto& scrolls = shown.log().scrolls;
    const auto strip = std::find_if(scrolls.begin(), scrolls.end(), [](const ScrollArea& a) { return a.sideways; });
    REQUIRE(strip != scrolls.end());
    CHECK(strip->at > 100);
}

TEST_CASE("lists of none, one and a thousand keep their sizes; what is far down can be reached") {
    for (const int rows : {0, 1, 1000}) {
        Shown shown(GalleryPage::start, {412, 915}, {}, rows);
        CAPTURE(rows);
        for (const Target& target : shown.log().targets) CHECK(std::min(target.rect.w, target.rect.h) >= 48);
        if (rows < 1000) continue;
        CHECK(shown.target("Visit 1000").seen.empty());
        REQUIRE(shown.hands.tap("Visit 60"));
        CHECK(shown.gallery->log() == Words{"old-59"});
    }
}

TEST_CASE("a mouse taps, wheels and rolls over") {
    Shown shown(GalleryPage::start, {1280, 800}, {}, 40);
    UiStage& stage = shown.host.stage();
    const Point at = shown.target("Axle 1 left").rect.middle();
    stage.mouse_at(at, shown.hands.now());
    shown.hands.settle();
    stage.mouse_button(0, true, shown.hands.now());
    stage.mouse_button(0, false, shown.hands.now());
    shown.hands.settle();
    CHECK(shown.gallery->log() == Words{"a1l"});
    stage.wheel(0, -2);
    shown.hands.settle();
    CHECK(shown.scrolled() > 20);
}

TEST_CASE("keys reach every row") {
    Shown shown(GalleryPage::start);
    UiStage& stage = shown.host.stage();
    const auto press = [&](ImGuiKey key) {
        stage.key(key, true);
        shown.hands.settle();
        stage.key(key, false);
        shown.hands.settle();
    };
    for (int i = 0; i < 12 && shown.gallery->log().empty(); ++i) {
        press(ImGuiKey_DownArrow);
        press(ImGuiKey_Space);
    }
    CHECK_FALSE(shown.gallery->log().empty());
}
