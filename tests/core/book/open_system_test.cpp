// Opening where the system has a say: what a user may write to, on systems with modes.
#include "tests/core/book/bookshelf.h"

#include <filesystem>
#include <unistd.h>

using namespace cotter;
using namespace cotter::test;

TEST_CASE("book open: a folder that may only be read gives a line, not a half-made book") {
    Bookshelf place;
    place.make_job();
    const std::string before = place.bytes();
    std::filesystem::remove(join_path(place.folder.path(), "in-use"));
    std::filesystem::permissions(place.folder.path(), std::filesystem::perms(0555));
    const bool root = ::geteuid() == 0;
    if (root) REQUIRE(::seteuid(65'534) == 0);  // root may write anywhere
    const auto opened = place.open(OpenMode::create);
    if (root) REQUIRE(::seteuid(0) == 0);
    std::filesystem::permissions(place.folder.path(), std::filesystem::perms(0755));
    REQUIRE_FALSE(opened);
    CHECK(opened.error().code == Errc::io);
    CHECK(opened.error().todo == "choose a place that you may write to");
    CHECK(place.bytes() == before);
    (void)good(place.open());
}

TEST_CASE("book open: a book file that may only be read gives a line") {
    Bookshelf place;
    place.make_job();
    std::filesystem::permissions(place.folder.path(), std::filesystem::perms(0777));
    std::filesystem::permissions(place.path, std::filesystem::perms(0444));
    std::filesystem::remove(join_path(place.folder.path(), "in-use"));
    const bool root = ::geteuid() == 0;
    if (root) REQUIRE(::seteuid(65'534) == 0);
    const auto opened = place.open();
    if (root) REQUIRE(::seteuid(0) == 0);
    REQUIRE_FALSE(opened);
    CHECK(opened.error().line() == "the book cannot be written to (it may only be read): " + place.path +
                                       "; keep it in a place that you may write to");
}
