// Paths that are refused, paths that are only odd, paths that become one file on another system.
#include <doctest/doctest.h>

#include "core/packet/path_rules.h"
#include "core/packet/unicode.h"

using namespace cotter;

TEST_CASE("paths: ordinary names of any script are safe and portable") {
    for (const char* path :
         {"data/job.json", "a", "photos/axle1-left_cap_before_01.jpg", "\u00e9t\u00e9/\u5199\u771f.jpg", "~tilde",
          ".hidden", "con-rod.txt", "com.txt", "console", "a..b", "100%"}) {
        CHECK_MESSAGE(unsafe_path(path) == "", path);
        CHECK_MESSAGE(unportable_path(path) == "", path);
    }
}

TEST_CASE("paths: what nobody should create") {
    for (const char* path : {"",        "/a",         "a/",   "a//b",     ".",         "..",     "a/../b", "a/...",
                             "a/. ./b", "a\\b",       "C:a",  "a:stream", "a\nb",      "a\x7f",  "con",    "CON.txt",
                             "aux ",    "nul.tar.gz", "COM1", "lpt9.x",   "com\u00b9", "CONIN$", "\xc3"})
        CHECK_MESSAGE(unsafe_path(path) != "", path);
    CHECK(unsafe_path(std::string(300, 'a')) == "its name is too long");
    CHECK(unsafe_path(std::string(1'001, 'a')) == "its path is too long");
    std::string deep = "a";
    for (int i = 0; i < 32; ++i) deep += "/a";
    CHECK(unsafe_path(deep) == "its path has too many levels");
    CHECK(unsafe_path(deep.substr(2)) == "");
}

TEST_CASE("paths: what only some systems hold is a warning") {
    for (const char* path : {"what?", "a*b", "\"a\"", "a|b", "<a>", "end.", "folder /a"}) {
        CHECK_MESSAGE(unsafe_path(path) == "", path);
        CHECK_MESSAGE(unportable_path(path) != "", path);
    }
}

TEST_CASE("paths: collisions by case, accents, invisible characters and dots at the end") {
    const auto collide = [](std::string_view a, std::string_view b) { return !check_collisions({a, b}).has_value(); };
    CHECK(collide("a/B", "A/b"));
    CHECK(collide("stra\u00dfe", "STRASSE"));
    CHECK(collide("\u00c9", "e\u0301"));
    CHECK(collide("\u0391", "\u03b1"));
    CHECK(collide("ab", "a\u200db"));
    CHECK(collide("\ud55c", "\u1112\u1161\u11ab"));
    CHECK(collide("a.", "a"));
    CHECK(collide("x /y", "x/z"));
    CHECK(collide("a/", "a"));
    CHECK_FALSE(collide("a/", "a/b"));
    CHECK_FALSE(collide("a/b", "a/c"));
    CHECK_FALSE(collide("e", "\u00e9"));
    CHECK_FALSE(collide("a.b", "ab"));
    CHECK(check_collisions({"t/a/b/c", "t/a/b/d", "t/a/", "t/"}));
}

TEST_CASE("paths: composing leaves everything else alone") {
    CHECK(composed("e\u0301") == "\u00e9");
    CHECK(composed("plain.txt") == "plain.txt");
    CHECK(composed("\xff") == "\xff");
}
