// A gallery on a screen without pixels, and hands to use it. For the tests of widgets.
#pragma once

#include "app/driver/runner.h"
#include "tests/app/gallery.h"
#include "tests/app/null_host.h"

#include <doctest/doctest.h>

namespace cotter {

struct Shown {
    explicit Shown(GalleryPage page, Point size = {412, 915}, const Appearance& look = {}, int rows = 6)
        : host(size, test_fonts(),
               [&](const HostParts& parts) {
                   auto made = std::make_unique<Gallery>(parts.pictures, look);
                   gallery = made.get();
                   gallery->open(page);
                   gallery->rows = rows;
                   return made;
               }),
          hands(host, {[](std::string_view) {}, {}, false}) {}

    [[nodiscard]] const TargetLog& log() { return host.stage().log(); }
    [[nodiscard]] const Target& target(std::string_view label) {
        const auto found = log().find(label);
        REQUIRE_MESSAGE(found.size() == 1, std::string(label));
        return *found.front();
    }
    [[nodiscard]] float scrolled() { return log().scrolls.front().at; }

    Gallery* gallery = nullptr;
    NullHost host;
    ScriptRunner hands;
};

}  // namespace cotter
