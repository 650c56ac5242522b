// The vault: what it says is stored stays stored, whatever fails and whenever the power goes.
#include <doctest/doctest.h>

#include <algorithm>

#include "core/base/hash.h"
#include "core/photo/vault.h"
#include "tests/core/photo/photo_maker.h"
#include "tests/support/memory_files.h"

using namespace cotter;
using namespace cotter::made;

namespace {

Bytes photo(int width = 96, int height = 64) {
    return with_exif(jpeg(width, height, [=](int x, int y) { return four_corners(x, y, width, height); }),
                     {.orientation = 6, .taken = "2026:05:14 08:05:12", .offset = "-05:00"});
}

struct Fixture {
    MemoryFiles files;
    SerialWorkers workers;
    PhotoVault vault{files, workers, "book"};
};

std::vector<std::string> sorted(std::vector<std::string> names) {
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace

TEST_CASE("vault: a photo taken in is there byte for byte, with preview and thumbnail") {
    Fixture f;
    const Bytes bytes = photo(1'000, 600);
    const auto stored = f.vault.take_in(bytes);
    REQUIRE(stored);
    CHECK(stored->sha256 == sha256_hex(bytes));
    CHECK(stored->size == bytes.size());
    CHECK(stored->info.width == 600);
    CHECK_FALSE(stored->was_there);
    const std::string shelf = stored->sha256.substr(0, 2) + "/" + stored->sha256;
    CHECK(stored->path == "photos/" + shelf + ".jpg");
    CHECK(f.files.all_files() == sorted({"book/photos/" + shelf + ".jpg", "book/previews/" + shelf + ".jpg",
                                         "book/thumbs/" + shelf + ".jpg"}));
    CHECK(*f.vault.original(stored->sha256) == bytes);
    const auto preview = probe(*f.vault.preview(stored->sha256));
    CHECK(preview->width == 600);
    CHECK(preview->height == 1'000);
    CHECK(preview->orientation == 1);
    const auto thumbnail = probe(*f.vault.thumbnail(stored->sha256));
    CHECK(thumbnail->height == 256);
}

TEST_CASE("vault: a PNG keeps its kind") {
    Fixture f;
    const auto stored = f.vault.take_in(png(40, 20, [](int x, int y) { return four_corners(x, y, 40, 20); }));
    REQUIRE(stored);
    CHECK(stored->path.ends_with(".png"));
    CHECK(f.vault.original(stored->sha256));
    CHECK(probe(*f.vault.preview(stored->sha256))->media == Media::jpeg);
}

TEST_CASE("vault: taken in twice, written once") {
    Fixture f;
    const auto first = f.vault.take_in(photo());
    const auto again = f.vault.take_in(photo());
    REQUIRE(again);
    CHECK(again->was_there);
    CHECK(again->path == first->path);
    CHECK(f.files.all_files().size() == 3);
}

TEST_CASE("vault: a damaged original is told and healed by taking it in again") {
    Fixture f;
    const auto stored = f.vault.take_in(photo());
    f.files.flip_bit("book/" + stored->path, 300);
    CHECK(f.vault.original(stored->sha256).error().code == Errc::damaged);
    const auto again = f.vault.take_in(photo());
    REQUIRE(again);
    CHECK_FALSE(again->was_there);
    CHECK(f.vault.original(stored->sha256));
}

TEST_CASE("vault: lost and broken previews and thumbnails are made again, the same") {
    Fixture f;
    const auto stored = f.vault.take_in(photo());
    const std::string shelf = stored->sha256.substr(0, 2) + "/" + stored->sha256 + ".jpg";
    const Bytes preview = f.files.get("book/previews/" + shelf), thumbnail = f.files.get("book/thumbs/" + shelf);
    REQUIRE(f.files.remove("book/previews/" + shelf));
    f.files.put("book/thumbs/" + shelf, ByteView(thumbnail).first(thumbnail.size() / 2));
    CHECK(*f.vault.preview(stored->sha256) == preview);
    CHECK(f.files.get("book/previews/" + shelf) == preview);
    f.files.put("book/thumbs/" + shelf, {});
    CHECK(*f.vault.thumbnail(stored->sha256) == thumbnail);
    CHECK(f.files.get("book/thumbs/" + shelf) == thumbnail);
}

TEST_CASE("vault: names that are no hashes and hashes that are not there") {
    Fixture f;
    REQUIRE(f.vault.take_in(photo()));
    for (const char* bad : {"", "ab", "../../../../etc/passwd", "AB"})
        CHECK(f.vault.original(bad).error().code == Errc::refused);
    const std::string upper = "A" + std::string(63, '0'), path = "../" + std::string(61, 'a');
    CHECK(f.vault.original(upper).error().code == Errc::refused);
    CHECK(f.vault.preview(path).error().code == Errc::refused);
    const std::string absent(64, '0');
    CHECK(f.vault.original(absent).error().code == Errc::not_found);
    CHECK(f.vault.thumbnail(absent).error().code == Errc::not_found);
}

TEST_CASE("vault: photos that cannot be used leave nothing on the disk") {
    Fixture f;
    const Bytes whole = photo(320, 240);
    CHECK_FALSE(f.vault.take_in({}));
    CHECK_FALSE(f.vault.take_in(to_bytes("hello")));
    CHECK_FALSE(f.vault.take_in(ByteView(whole).first(whole.size() - 1)));
    Bytes cut(whole.begin(), whole.begin() + std::ptrdiff_t(whole.size() * 3 / 4));
    CHECK_FALSE(f.vault.take_in(joined({cut, {0xFF, 0xD9}})));
    CHECK(f.files.all_files().empty());
}

TEST_CASE("vault: whatever call fails and whenever the power goes, stored means stored and nothing is half there") {
    const Bytes bytes = photo(32, 16);
    const std::string sha = sha256_hex(bytes);
    bool stored = false;
    for_every_failure([](MemoryFiles& files) { files.put("books/other", {}); },  // the vault's parent is on the disk
                      [&](MemoryFiles& files) {
                          SerialWorkers workers;
                          PhotoVault vault(files, workers, "books/mine");
                          stored = vault.take_in(bytes).has_value();
                      },
                      [&](MemoryFiles& files) {
                          SerialWorkers workers;
                          PhotoVault vault(files, workers, "books/mine");
                          const auto original = vault.original(sha);
                          CAPTURE((original ? "" : original.error().line()));
                          if (stored) REQUIRE(original);
                          if (original)
                              CHECK(*original == bytes);
                          else
                              CHECK(original.error().code == Errc::not_found);
                          const auto thumbnail = vault.thumbnail(sha);
                          if (original) CHECK(thumbnail);
                          if (thumbnail) CHECK(probe(*thumbnail));
                          // And taking it in afterwards always works.
                          CHECK(vault.sweep());
                          CHECK(vault.take_in(bytes));
                          files.power_cut();
                          CHECK(vault.original(sha));
                          for (const std::string& path : files.all_files()) CHECK_FALSE(path.ends_with(".part"));
                      });
}

TEST_CASE("vault: an intake that failed half-way and was done again survives a power cut") {
    const Bytes bytes = photo(32, 16);
    for (int n = 1; n < 60; ++n) {
        CAPTURE(n);
        Fixture f;
        f.files.fail_call(n, Errc::io, MemoryFiles::Mode::once);
        const bool first = f.vault.take_in(bytes).has_value();
        f.files.stop_failing();
        if (!first) REQUIRE(f.vault.take_in(bytes));
        f.files.power_cut();
        CHECK(f.vault.original(sha256_hex(bytes)));
    }
}

TEST_CASE("vault: sweeping an empty or missing vault is fine, and removes only unfinished files") {
    Fixture f;
    CHECK(f.vault.sweep());
    const auto stored = f.vault.take_in(photo());
    f.files.put("book/photos/ab/left.jpg.part", as_bytes("half"));
    CHECK(f.vault.sweep());
    CHECK(f.files.all_files().size() == 3);
    CHECK(f.vault.original(stored->sha256));
}
