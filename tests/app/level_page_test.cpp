// The level page: marks are saved as they are tapped, the settling time outlives a lock and a kill.
#include <doctest/doctest.h>

#include "tests/app/app_bench.h"

using namespace cotter;

namespace {

const Place kCorner = Place::corner(1, Side::left);

struct LevelBench : AppBench {
    LevelBench() {
        start_tandem();
        apply(GoTo{{Screen::level, kCorner, {}}});
        look();
    }
    void look() {
        host->stage().happened();
        hands->settle();
    }
    void pass(std::int64_t seconds) { clock.at.unix_s += seconds; }
    [[nodiscard]] const Level& level() {
        REQUIRE(job().all<Level>().size() == 1);
        return job().all<Level>()[0];
    }
};

}  // namespace

TEST_CASE("before, product, amount and after are saved one by one") {
    LevelBench bench;
    REQUIRE(bench.tap("Before: below"));
    CHECK(bench.level().before.mark == LevelMark::below);
    CHECK_FALSE(bench.level().after.has_value());
    CHECK(bench.log().shows("look for the leak"));
    Level level = bench.level();
    level.product = "gear oil SAE 90";
    bench.apply(PutLevel{level});
    bench.look();
    REQUIRE(bench.tap("Amount"));
    for (const char* key : {"1", "6", "0", "Done"}) REQUIRE(bench.tap(key));
    CHECK(bench.level().added->text() == "160 mL");
    REQUIRE(bench.tap("After: at the line"));
    CHECK(bench.level().after->mark == LevelMark::at);
    CHECK_FALSE(bench.level().settled.has_value());
    REQUIRE(bench.tap("Before: empty"));
    CHECK(bench.level().before.mark == LevelMark::empty);
    CHECK(bench.level().product == "gear oil SAE 90");
}

TEST_CASE("the wait goes on while the program is gone, and is written down when the level is seen") {
    LevelBench bench;
    REQUIRE(bench.tap("Before: below"));
    REQUIRE(bench.tap("Hub was spun: begin to wait"));
    bench.pass(200);
    bench.reopen();
    bench.show();
    CHECK(level_view(bench.session()).timer.words == "6:40 to go");
    bench.pass(400);
    CHECK(level_view(bench.session()).timer.over);
    bench.look();
    REQUIRE(bench.tap("After: at the line"));
    REQUIRE(bench.level().settled.has_value());
    CHECK(bench.level().settled->text() == "10 min");
    CHECK_FALSE(bench.session().drafts().timer.has_value());
}

TEST_CASE("a timer begun before the first mark belongs to the level that comes of it") {
    LevelBench bench;
    REQUIRE(bench.tap("Hub was spun: begin to wait"));
    bench.pass(65);
    REQUIRE(bench.tap("Before: at the line"));
    CHECK(level_view(bench.session()).timer.begun);
    REQUIRE(bench.tap("After: at the line"));
    CHECK(bench.level().settled->text() == "65 s");
}

TEST_CASE("a window that cannot be seen through is said with its reason") {
    LevelBench bench;
    REQUIRE(bench.tap("Cannot be seen"));
    REQUIRE(bench.tap("window too dark to see through"));
    CHECK(bench.level().taken == Taken::not_accessible);
    CHECK(bench.level().reason == "window too dark to see through");
    REQUIRE(bench.tap("Before: at the line"));
    CHECK(bench.level().taken == Taken::measured);
    CHECK(bench.level().reason.empty());
}
