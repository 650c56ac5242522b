// The contract of core/base/files.h, held against the system that the tests run on.
#include <doctest/doctest.h>

#include "platform/desktop/ports.h"
#include "tests/support/good.h"
#include "tests/support/temp_folder.h"

using namespace cotter;
using namespace cotter::test;

namespace {

struct Disk {
    TempFolder folder;
    std::unique_ptr<Files> files = make_system_files();
    [[nodiscard]] std::string path(const std::string& name) const { return join_path(folder.path(), name); }
    void put(const std::string& name, const std::string& text) {
        good(replace_file(*files, path(name), to_bytes(text)));
    }
    [[nodiscard]] std::string get(const std::string& name) {
        return std::string(as_text(good(read_file(*files, path(name), 1000))));
    }
};

}  // namespace

TEST_CASE("files: what was written is read, from any place in it") {
    Disk disk;
    disk.put("a", "towed trailer");
    const auto reader = good(disk.files->open(disk.path("a")));
    CHECK(reader->size() == 13);
    Bytes part(7);
    good(reader->read_at(6, part));
    CHECK(as_text(part) == "trailer");
    const auto beyond = reader->read_at(7, part);
    REQUIRE_FALSE(beyond);
    CHECK(beyond.error().code == Errc::damaged);
}

TEST_CASE("files: a file is replaced whole, and its temporary is gone") {
    Disk disk;
    disk.put("a", "old");
    disk.put("a", "new");
    CHECK(disk.get("a") == "new");
    CHECK(good(disk.files->list(disk.folder.path())) == std::vector<std::string>{"a"});
}

TEST_CASE("files: a secret file is written, and written again") {
    Disk disk;
    good(replace_file(*disk.files, disk.path("key"), to_bytes("one"), true));
    good(replace_file(*disk.files, disk.path("key"), to_bytes("two"), true));
    CHECK(disk.get("key") == "two");
}

TEST_CASE("files: names in any script, listed by their bytes") {
    Disk disk;
    for (const char* name : {"Zaun", "anhänger", "прицеп", "トレーラー.zip"}) disk.put(name, name);
    CHECK(good(disk.files->list(disk.folder.path())) ==
          std::vector<std::string>{"Zaun", "anhänger", "прицеп", "トレーラー.zip"});
    CHECK(disk.get("прицеп") == "прицеп");
}

TEST_CASE("files: what something is") {
    Disk disk;
    disk.put("a", "four");
    const auto file = good(disk.files->info(disk.path("a")));
    CHECK(file.kind == FileInfo::Kind::file);
    CHECK(file.size == 4);
    CHECK(file.modified_unix_s > make_system_clock()->now().unix_s - 3600);
    CHECK(file.modified_unix_s < make_system_clock()->now().unix_s + 3600);
    CHECK(good(disk.files->info(disk.folder.path())).kind == FileInfo::Kind::folder);
    CHECK(disk.files->info(disk.path("b")).error().code == Errc::not_found);
    CHECK(disk.files->info(disk.path("b/c")).error().code == Errc::not_found);
    CHECK(disk.files->open(disk.path("b")).error().code == Errc::not_found);
    CHECK(disk.files->open(disk.folder.path()).error().code == Errc::refused);
}

TEST_CASE("files: folders with their parents, and a file in their way") {
    Disk disk;
    good(disk.files->make_folders(disk.path("a/b/c")));
    good(disk.files->make_folders(disk.path("a/b/c")));
    disk.put("a/b/c/d", "x");
    good(disk.files->sync_folder(disk.path("a/b")));
    CHECK_FALSE(disk.files->sync_folder(disk.path("a/none")));
    CHECK(disk.files->make_folders(disk.path("a/b/c/d")).error().code == Errc::refused);
    CHECK_FALSE(disk.files->make_folders(disk.path("a/b/c/d/e")));
    CHECK_FALSE(disk.files->remove(disk.path("a/b/c")));  // not empty
    good(disk.files->remove(disk.path("a/b/c/d")));
    good(disk.files->remove(disk.path("a/b/c")));
    CHECK(disk.files->info(disk.path("a/b/c")).error().code == Errc::not_found);
    CHECK(disk.files->remove(disk.path("a/b/c")).error().code == Errc::not_found);
}

TEST_CASE("files: a file being read can be removed") {
    Disk disk;
    disk.put("a", "still here");
    const auto reader = good(disk.files->open(disk.path("a")));
    good(disk.files->remove(disk.path("a")));
    Bytes part(5);
    good(reader->read_at(0, part));
    CHECK(as_text(part) == "still");
}

TEST_CASE("files: a path of a thousand characters") {
    Disk disk;
    std::string folder = "deep";
    while (folder.size() < 1000) folder += "/a folder with a rather long name";
    good(disk.files->make_folders(disk.path(folder)));
    disk.put(folder + "/a", "far down");
    CHECK(disk.get(folder + "/a") == "far down");
    CHECK(good(disk.files->list(disk.path(folder))) == std::vector<std::string>{"a"});
    good(disk.files->remove(disk.path(folder + "/a")));
    for (; folder.find('/') != std::string::npos; folder = parent_folder(folder))
        good(disk.files->remove(disk.path(folder)));
}

TEST_CASE("files: a lock is one program's until it lets go") {
    Disk disk;
    auto first = good(disk.files->lock(disk.path("lock")));
    const auto second = disk.files->lock(disk.path("lock"));
    REQUIRE_FALSE(second);
    CHECK(second.error().code == Errc::busy);
    first.reset();
    (void)good(disk.files->lock(disk.path("lock")));
}
