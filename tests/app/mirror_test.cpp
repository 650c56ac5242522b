// What a screen reader is told of a frame.
#include <doctest/doctest.h>

#include "app/ui/mirror.h"

using namespace cotter;

namespace {

Target button(std::uint32_t id, const char* label, Rect rect) {
    Target target;
    target.id = id;
    target.label = label;
    target.rect = target.seen = rect;
    return target;
}

TextInk text(const char* words, Rect rect, float size, std::uint32_t target = 0) {
    TextInk ink;
    ink.text = words;
    ink.ink = ink.box = ink.seen = rect;
    ink.size = size;
    ink.target = target;
    return ink;
}

}  // namespace

TEST_CASE("the mirror reads from the top down and from the left, the largest text first of all as heading") {
    TargetLog log;
    log.targets = {button(3, "Take a photo", {200, 800, 100, 60}), button(2, "Choose photos", {8, 800, 100, 60})};
    log.texts = {text("A small line", {8, 300, 200, 20}, 18), text("Add photos", {80, 10, 200, 40}, 28),
                 text("Take a photo", {210, 810, 80, 20}, 18, 3)};
    const auto items = mirror_of(log);
    REQUIRE(items.size() == 4);
    CHECK(items[0].kind == MirrorItem::Kind::heading);
    CHECK(items[0].label == "Add photos");
    CHECK(items[1].kind == MirrorItem::Kind::text);
    CHECK(items[2].label == "Choose photos");
    CHECK(items[3].label == "Take a photo");
    CHECK(items[3].value.empty());  // its own words are not said twice
}

TEST_CASE("a row tells what else stands on it") {
    TargetLog log;
    log.targets = {button(7, "Axle 1, left", {8, 100, 300, 60})};
    log.targets[0].role = Role::row;
    log.texts = {text("Axle 1, left", {20, 105, 100, 20}, 18, 7),
                 text("no torque, no oil level", {20, 130, 200, 20}, 18, 7)};
    const auto items = mirror_of(log);
    REQUIRE(items.size() == 1);
    CHECK(items[0].value == "no torque, no oil level");
}

TEST_CASE("what lies under a sheet is not read") {
    TargetLog log;
    log.layer = 1;
    log.targets = {button(1, "Undo", {0, 0, 60, 60}), button(2, "Sign", {0, 600, 100, 60})};
    log.targets[1].layer = 1;
    log.texts = {text("Hand over", {80, 10, 200, 40}, 28)};
    const auto items = mirror_of(log);
    REQUIRE(items.size() == 1);
    CHECK(items[0].label == "Sign");
}

TEST_CASE("a target that is scrolled away keeps its place") {
    TargetLog log;
    log.targets = {button(1, "Below", {0, 2000, 100, 60})};
    log.targets[0].seen = {};
    CHECK(mirror_of(log).at(0).rect == Rect{0, 2000, 100, 60});
    CHECK(mirror_of(log).at(0).away);
}
