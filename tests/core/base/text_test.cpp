// UTF-8 and safe names.
#include <doctest/doctest.h>

#include "core/base/text.h"

using namespace cotter;

TEST_CASE("text: UTF-8 is told from what only looks like it") {
    for (const char* good : {"", "plain", "Gärtnerei", "一号轴", "😀"}) CHECK(is_utf8(good));
    for (const char* bad : {"\x80", "\xC0\xAF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "abc\xE2\x82"})
        CHECK_FALSE(is_utf8(bad));
}

TEST_CASE("text: file names keep only what every system takes") {
    CHECK(file_safe("NUR-07") == "NUR-07");
    CHECK(file_safe("../../etc/passwd") == "-..-etc-passwd");
    CHECK(file_safe("a b/c") == "a-b-c");
    CHECK(file_safe("…") == "x");
}

TEST_CASE("text: one line stays one line") {
    CHECK(one_line("a\nb\x1b[2J") == "a?b?[2J");
    CHECK(one_line("ééé", 4) == "éé…");
}

TEST_CASE("text: a list is split at its separators, empty parts too") {
    using Parts = std::vector<std::string>;
    CHECK(split("a, b, c", ", ") == Parts{"a", "b", "c"});
    CHECK(split(",a,", ",") == Parts{"", "a", ""});
    CHECK(split("a,b", ", ") == Parts{"a,b"});
    CHECK(split("", ",") == Parts{""});
}
