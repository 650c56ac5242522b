// The in-memory disk itself: what survives a power cut, and how failures strike. Everything else leans on it.
#include <doctest/doctest.h>

#include "tests/support/memory_files.h"

using namespace cotter;

TEST_CASE("memory disk: a file survives a power cut only when it and its folder were synced") {
    MemoryFiles files;
    files.put("a/old", as_bytes("old"));
    auto writer = files.create("a/new", false);
    REQUIRE(writer);
    REQUIRE((*writer)->write(as_bytes("new")));
    SUBCASE("nothing synced") {
        files.power_cut();
        CHECK(files.all_files() == std::vector<std::string>{"a/old"});
    }
    SUBCASE("only the content synced") {
        REQUIRE((*writer)->sync());
        files.power_cut();
        CHECK_FALSE(files.has("a/new"));
    }
    SUBCASE("only the name survives") {
        files.power_cut(MemoryFiles::Cut::names_survive);
        CHECK(files.has("a/new"));
        CHECK(files.get("a/new").empty());
    }
    SUBCASE("both synced") {
        REQUIRE((*writer)->sync());
        REQUIRE(files.sync_folder("a"));
        files.power_cut();
        CHECK(files.get("a/new") == to_bytes("new"));
    }
}

TEST_CASE("memory disk: new folders, renames and removals need their folder synced") {
    MemoryFiles files;
    files.put("a/1", as_bytes("one"));
    REQUIRE(files.make_folders("a/deep/er"));
    REQUIRE(files.rename("a/1", "a/2"));
    SUBCASE("unsynced") {
        files.power_cut();
        CHECK(files.has("a/1"));
        CHECK_FALSE(files.has("a/2"));
        CHECK_FALSE(files.has("a/deep"));
    }
    SUBCASE("synced") {
        REQUIRE(files.sync_folder("a"));
        files.power_cut();
        CHECK(files.get("a/2") == to_bytes("one"));
        CHECK_FALSE(files.has("a/1"));
        CHECK(files.has("a/deep"));
        CHECK_FALSE(files.has("a/deep/er"));  // its own parent was not synced
    }
}

TEST_CASE("memory disk: an armed failure strikes the n-th call, once or for good") {
    MemoryFiles files;
    files.put("f", as_bytes("abcd"));
    files.fail_call(2, Errc::io, MemoryFiles::Mode::once);
    CHECK(files.info("f"));
    CHECK(files.info("f").error().code == Errc::io);
    CHECK(files.failed());
    CHECK(files.info("f"));
    files.fail_call(1, Errc::no_space, MemoryFiles::Mode::from_then_on);
    CHECK(files.info("f"));  // looking needs no space
    CHECK(files.create("g", false).error().code == Errc::no_space);
    CHECK_FALSE(replace_file(files, "h", as_bytes("x")));
    CHECK(files.all_files() == std::vector<std::string>{"f"});
    files.stop_failing();
    CHECK(replace_file(files, "h", as_bytes("x")));
}

TEST_CASE("memory disk: a lock keeps others out until it goes, or the power does") {
    MemoryFiles files;
    auto lock = files.lock("l");
    REQUIRE(lock);
    CHECK(files.lock("l").error().code == Errc::busy);
    lock->reset();
    auto again = files.lock("l");
    REQUIRE(again);
    files.power_cut();
    CHECK(files.lock("l"));
}

TEST_CASE("memory disk: replace_file leaves the old or the new, whatever fails and whenever the power goes") {
    for_every_failure([](MemoryFiles& f) { f.put("d/x", as_bytes("old")); },
                      [](MemoryFiles& f) { (void)replace_file(f, "d/x", as_bytes("new")); },
                      [](MemoryFiles& f) {
                          const auto now = f.get("d/x");
                          const bool whole = now == to_bytes("old") || now == to_bytes("new");
                          CHECK(whole);
                      });
}
