// Clock, randomness and workers of the system that the tests run on.
#include <doctest/doctest.h>

#include <atomic>
#include <set>
#include <vector>

#include "core/base/bytes.h"
#include "platform/desktop/ports.h"

using namespace cotter;

TEST_CASE("clock: it is later than this program, and the offset is one that a place can have") {
    const Instant now = make_system_clock()->now();
    CHECK(now.unix_s > 1'764'000'000);  // November 2025
    CHECK(now.offset_min >= -12 * 60);
    CHECK(now.offset_min <= 14 * 60);
    CHECK(now.offset_min % 15 == 0);
}

TEST_CASE("randomness: no two draws are the same, and all of the room is filled") {
    const auto random = make_system_random();
    std::set<Bytes> drawn;
    for (int i = 0; i < 100; ++i) {
        Bytes key(32);
        random->fill(key);
        drawn.insert(key);
    }
    CHECK(drawn.size() == 100);
    Bytes much(3'000'000);
    random->fill(much);
    CHECK(std::set<std::uint8_t>(much.end() - 4096, much.end()).size() > 200);
}

TEST_CASE("workers: every piece once") {
    std::vector<std::atomic<int>> done(1000);
    make_thread_workers()->run(done.size(), [&](std::size_t i) { ++done[i]; });
    for (const auto& times : done) CHECK(times == 1);
}

TEST_CASE("folders: the program's data and the user's own have a place") {
    CHECK(share_folder().ends_with("share/cotter"));
    CHECK_FALSE(home_folder().empty());
}

TEST_CASE("folders: a relative path is told from the root, an absolute one stays") {
    const std::string whole = absolute_path("photos/../shared");
    CHECK(whole.size() > std::string("shared").size() + 1);
    CHECK(base_name(whole) == "shared");
    CHECK(whole.find("..") == std::string::npos);
    CHECK(absolute_path(whole) == whole);
}
