// The vault under threads. Left out where there are none.
#include <doctest/doctest.h>

#include <thread>

#include "core/base/hash.h"
#include "core/photo/vault.h"
#include "tests/core/photo/photo_maker.h"
#include "tests/support/memory_files.h"

using namespace cotter;
using namespace cotter::made;

namespace {

Bytes turned_photo(int width, int height) {
    return with_exif(jpeg(width, height, [=](int x, int y) { return four_corners(x, y, width, height); }),
                     {.orientation = 6, .taken = "2026:05:14 08:05:12", .offset = "-05:00"});
}

}  // namespace

TEST_CASE("vault: several threads may take in the same and other photos at once") {
    MemoryFiles files;
    SerialWorkers workers;
    PhotoVault vault{files, workers, "book"};
    const std::vector<Bytes> photos{turned_photo(40, 30), turned_photo(50, 30), turned_photo(40, 30),
                                    turned_photo(60, 30)};
    std::vector<int> ok(photos.size());
    {
        std::vector<std::jthread> threads;
        for (std::size_t i = 0; i < photos.size(); ++i)
            threads.emplace_back([&, i] { ok[i] = vault.take_in(photos[i]).has_value(); });
    }
    CHECK(ok == std::vector<int>{1, 1, 1, 1});
    CHECK(files.all_files().size() == 9);
    for (const Bytes& bytes : photos) CHECK(*vault.original(sha256_hex(bytes)) == bytes);
}
