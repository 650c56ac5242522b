// The audit: finds each offence in made-up frames, and none in the gallery at any size and look.
#include "app/driver/audit.h"

#include <doctest/doctest.h>

#include "tests/app/gallery_walk.h"
#include "tests/app/null_host.h"

using namespace cotter;

namespace {

Target target(std::uint32_t id, const char* label, Rect rect) {
    Target t;
    t.id = id;
    t.label = label;
    t.rect = t.seen = rect;
    return t;
}

TextInk text(const char* words, Rect ink) {
    TextInk t;
    t.text = words;
    t.ink = t.seen = ink;
    t.box = grown(ink, 2);
    t.colour = rgb(0x000000);
    t.ground = rgb(0xFFFFFF);
    t.size = 18;
    return t;
}

std::string only(const TargetLog& log) {
    const auto found = audit(log, 412, 915);
    REQUIRE(found.size() == 1);
    return found.front();
}

}  // namespace

TEST_CASE("a sound frame has no offence") {
    TargetLog log;
    log.targets = {target(1, "a", {16, 700, 100, 48}), target(2, "b", {124, 700, 100, 48})};
    log.texts = {text("a", {30, 710, 20, 20}), text("b", {140, 710, 20, 20})};
    CHECK(audit(log, 412, 915).empty());
}

TEST_CASE("each law has its offence") {
    TargetLog log;
    SUBCASE("size") {
        log.targets = {target(1, "thin", {16, 700, 100, 40})};
        CHECK(only(log) == "target smaller than 48 dp: 'thin' at 16,700 100×40");
    }
    SUBCASE("gap") {
        log.targets = {target(1, "a", {16, 700, 100, 48}), target(2, "b", {120, 700, 100, 48})};
        CHECK(only(log).starts_with("4.0 dp between 'a'"));
    }
    SUBCASE("one id twice") {
        log.targets = {target(1, "a", {16, 700, 100, 48}), target(1, "b", {16, 800, 100, 48})};
        CHECK(only(log) == "two targets with one id: 'a' and 'b'");
    }
    SUBCASE("off the screen") {
        log.targets = {target(1, "a", {380, 700, 100, 48})};
        CHECK(only(log).starts_with("target off the screen"));
    }
    SUBCASE("reach") {
        log.targets = {target(1, "a", {16, 20, 100, 64})};
        log.targets[0].main = true;
        CHECK(only(log).starts_with("main action out of the thumb's reach"));
    }
    SUBCASE("no label") {
        log.targets = {target(1, "", {16, 700, 100, 48})};
        CHECK(only(log).starts_with("target without a label: button"));
    }
    SUBCASE("text over its box") {
        log.texts = {text("long", {16, 100, 200, 20})};
        log.texts[0].box.w = 150;
        CHECK(only(log).starts_with("text leaves its box: 'long'"));
    }
    SUBCASE("texts over each other") {
        log.texts = {text("a", {16, 100, 50, 20}), text("b", {50, 110, 50, 20})};
        CHECK(only(log).starts_with("texts overlap: 'a' and 'b'"));
    }
    SUBCASE("contrast") {
        log.texts = {text("faint", {16, 100, 50, 20})};
        log.texts[0].colour = rgb(0x777777);
        CHECK(only(log) == "contrast below 7:1: 'faint' 4.5:1");
    }
    SUBCASE("small text") {
        log.texts = {text("small", {16, 100, 50, 20})};
        log.texts[0].size = 12;
        CHECK(only(log) == "text smaller than 16 dp: 'small' 12.0");
    }
}

TEST_CASE("what a sheet covers is not held against the sheet") {
    TargetLog log;
    log.targets = {target(1, "below", {16, 700, 100, 48}), target(2, "sheet", {20, 710, 100, 48})};
    log.targets[1].layer = log.layer = 1;
    CHECK(audit(log, 412, 915).empty());
    CHECK(list_targets(log) == std::vector<std::string>{"button 'sheet' at 20,710 100×48"});
}

TEST_CASE(
    "the gallery keeps every law on phone, tablet and desk, upright and lying, at each type size, in both looks") {
    int views = 0;
    const MakeHost make_host = [](Point size, const MakeApp& make) {
        return std::make_unique<NullHost>(size, test_fonts(), make);
    };
    walk_gallery(make_host, [&](const GalleryView& view) {
        ++views;
        for (const std::string& line : view.offences) FAIL_CHECK(view.name << ": " << line);
    });
    CHECK(views > 18 * 9);
}
