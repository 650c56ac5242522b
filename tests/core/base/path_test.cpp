// Paths of both styles, whichever system the tests run on.
#include <doctest/doctest.h>

#include "core/base/path.h"

using namespace cotter;

namespace {
constexpr PathStyle kSlash = PathStyle::slash;
constexpr PathStyle kWindows = PathStyle::windows;
}  // namespace

TEST_CASE("the folder of a path") {
    CHECK(parent_folder("a/b/c", kSlash) == "a/b");
    CHECK(parent_folder("/a", kSlash) == "/");
    CHECK(parent_folder("a", kSlash) == ".");
    CHECK(parent_folder("a\\b/c\\d", kSlash) == "a\\b");  // a name like any other
    CHECK(parent_folder("C:\\yard\\a.zip", kWindows) == "C:\\yard");
    CHECK(parent_folder("C:\\yard/a.zip", kWindows) == "C:\\yard");
    CHECK(parent_folder("C:\\a.zip", kWindows) == "C:\\");
    CHECK(parent_folder("C:/a.zip", kWindows) == "C:/");
    CHECK(parent_folder("C:a.zip", kWindows) == "C:");
    CHECK(parent_folder("a.zip", kWindows) == ".");
    CHECK(parent_folder("\\\\office\\inbox\\a.zip", kWindows) == "\\\\office\\inbox");
}

TEST_CASE("the name at the end of a path") {
    CHECK(base_name("a/b", kSlash) == "b");
    CHECK(base_name("a\\b", kSlash) == "a\\b");
    CHECK(base_name("C:\\yard\\a.zip", kWindows) == "a.zip");
    CHECK(base_name("yard/a.zip", kWindows) == "a.zip");
    CHECK(base_name("C:a.zip", kWindows) == "a.zip");
}

TEST_CASE("a folder and a name put together") {
    CHECK(join_path("", "a", kSlash) == "a");
    CHECK(join_path("/", "a", kSlash) == "/a");
    CHECK(join_path("b/", "a", kSlash) == "b/a");
    CHECK(join_path("b\\", "a", kSlash) == "b\\/a");
    CHECK(join_path("C:\\yard", "a", kWindows) == "C:\\yard/a");
    CHECK(join_path("C:\\yard\\", "a", kWindows) == "C:\\yard\\a");
    CHECK(join_path("C:\\", "a", kWindows) == "C:\\a");
    CHECK(join_path("C:", "a", kWindows) == "C:a");  // in the drive's current folder
}

TEST_CASE("a path without the slash at its end") {
    CHECK(without_end_slash("a//", kSlash) == "a");
    CHECK(without_end_slash("/", kSlash) == "/");
    CHECK(without_end_slash("a\\", kSlash) == "a\\");
    CHECK(without_end_slash("C:\\yard\\", kWindows) == "C:\\yard");
    CHECK(without_end_slash("C:\\", kWindows) == "C:\\");
    CHECK(without_end_slash("", kWindows).empty());
}

TEST_CASE("a path in a hint is one of the system it is shown on") {
    CHECK(example_on_drive("packets", kSlash) == "/media/usb/packets");
    CHECK(example_on_drive("packets", kWindows) == "E:\\packets");
    CHECK(parent_folder(example_on_drive("packets")) == parent_folder(example_on_drive("other")));
}
