// The level page: marks are saved as they are tapped, the settling time outlives a lock and a kill.
#include <doctest/doctest.h>

#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

struct LevelBench : AppBench {
    explicit LevelBench(Point at = {412, 915}) : AppBench(at) {
        start_tandem();
        apply(GoTo{{Screen::level, kLeft, {}}});
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
    CHECK_FALSE(bench.session().drafts().timer_for(level_view(bench.session()).timer.record) != nullptr);
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

TEST_CASE("two hubs settle at once, each with a timer of its own") {
    LevelBench bench;
    const auto words_at = [&](const Place& place) {
        bench.apply(GoInstead{{Screen::level, place, {}}});
        bench.look();
        return level_view(bench.session()).timer.words;
    };
    bench.touch("Hub was spun: begin to wait");
    bench.pass(120);
    CHECK(words_at(kRight).empty());
    bench.touch("Hub was spun: begin to wait");
    bench.pass(60);
    CHECK(words_at(kRight) == "9:00 to go");
    CHECK(words_at(kLeft) == "7:00 to go");
    bench.reopen();
    bench.show();
    CHECK(words_at(kRight) == "9:00 to go");
    bench.touch("Before: at the line");
    bench.touch("After: at the line");
    CHECK(bench.level().settled->text() == "1 min");
    CHECK(words_at(kLeft) == "7:00 to go");  // seen there, it goes on here
    CHECK(words_at(kRight).empty());
}

TEST_CASE("a timer of one job does not show in the next at the same place") {
    LevelBench bench;
    bench.touch("Hub was spun: begin to wait");
    bench.start_tandem();
    bench.apply(GoTo{{Screen::level, kLeft, {}}});
    bench.look();
    CHECK_FALSE(level_view(bench.session()).timer.begun);
}

TEST_CASE("a timer that an earlier version kept alone does not keep the rest from being read") {
    LevelBench bench;
    bench.touch("Hub was spun: begin to wait");
    const std::string path = bench.book + "/app_state.json";
    const auto bytes = read_file(*bench.files, path, 1 << 20);
    REQUIRE(bytes);
    std::string text(bytes->begin(), bytes->end());
    const auto at = text.find("\"timers\": [");
    REQUIRE(at != std::string::npos);
    const auto from = text.find('{', at), to = text.find('}', at);
    const std::string one = text.substr(from, to + 1 - from);
    text.replace(at, text.find(']', at) + 1 - at, "\"timer\": " + one);
    bench.close();
    REQUIRE(replace_file(*bench.files, path, as_bytes(text)));
    bench.reopen();
    CHECK(bench.session().route().screen == Screen::level);
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

TEST_CASE("a product for another kind of hub is warned of at once, with reason and source, and can be taken out") {
    LevelBench bench;
    REQUIRE(bench.tap("Before: below"));
    Level level = bench.level();
    level.product = "gear oil SAE 90";
    bench.apply(PutLevel{level});
    CHECK(level_view(bench.session()).doubts.empty());
    bench.look();
    REQUIRE(bench.tap("Product"));
    level.product = "wheel bearing grease NLGI 2";
    bench.apply(PutLevel{level});
    bench.look();
    CHECK(bench.log().shows("Wrong fluid for this hub"));
    CHECK(bench.log().shows("does not go into this hub (oil bath)"));
    CHECK(bench.log().shows("manufacturer's manual overrides it"));
    REQUIRE(bench.tap("Not added: delete this entry"));
    CHECK(bench.level().product == "gear oil SAE 90");
    CHECK(level_view(bench.session()).doubts.empty());
}

TEST_CASE("what must not meet and is kept stays on the page; an unknown product is asked about") {
    LevelBench bench({412, 1400});
    bench.apply(GoTo{{Screen::level, Place::at(Station::actuator), {}}});
    bench.look();
    REQUIRE(bench.tap("Before: below"));
    BleedCount count;
    count.place = kLeft;
    count.drawn = make_amount("100", "mL").value();
    count.fluid = "DOT 4";
    bench.apply(PutBleedCount{count});
    Level level = bench.level();
    level.product = "DOT 5";
    bench.apply(PutLevel{level});
    bench.look();
    CHECK(bench.log().shows("Wrong fluid for this brake system"));
    CHECK(bench.log().shows("put in while bleeding"));
    REQUIRE(bench.tap("Product"));
    REQUIRE(bench.tap("I already put it in: record it, the system must be flushed"));
    CHECK(bench.level().product == "DOT 5");
    CHECK(bench.log().shows("Wrong fluid for this brake system"));
    level.product = "something blue";
    bench.apply(PutLevel{level});
    bench.look();
    CHECK_FALSE(bench.log().shows("Wrong fluid for this brake system"));
    CHECK(bench.log().shows("Ask before it goes in"));
}

TEST_CASE("a product is chosen without typing: what was named before, then the kinds that go in here") {
    LevelBench bench;
    CHECK(level_view(bench.session()).products == std::vector<std::string>{"gear oil"});
    REQUIRE(bench.tap("Before: below"));
    REQUIRE(bench.tap("Product"));
    REQUIRE(bench.tap("gear oil"));
    CHECK(bench.level().product == "gear oil");
    Level level = bench.level();
    level.product = "gear oil SAE 90 GL-5";
    bench.apply(PutLevel{level});
    CHECK(level_view(bench.session()).products == std::vector<std::string>{"gear oil SAE 90 GL-5"});
    bench.apply(GoTo{{Screen::level, Place::at(Station::actuator), {}}});
    const auto brake = level_view(bench.session()).products;
    REQUIRE(brake.size() == 5);
    CHECK(brake[0] == "DOT 3");
}

TEST_CASE("the page says why a level is not proved yet") {
    LevelBench bench({412, 1400});
    REQUIRE(bench.tap("Before: below"));
    CHECK(bench.log().shows("Not proved yet"));
    CHECK(bench.log().shows("find out why before it is only topped up"));
}

TEST_CASE("a page of brake fluid speaks of brake fluid, not of oil") {
    LevelBench bench({412, 1400});
    bench.apply(GoTo{{Screen::level, Place::at(Station::actuator), {}}});
    bench.look();
    const auto speaks_of_oil = [&] {
        for (const TextInk& text : bench.log().texts)
            if (text.text.find("oil") != std::string::npos || text.text.find("Oil") != std::string::npos) return true;
        return false;
    };
    REQUIRE(bench.tap("Before: below"));
    CHECK(bench.log().shows("pads and shoes wear"));
    CHECK_FALSE(speaks_of_oil());
    REQUIRE(bench.tap("After: above"));
    CHECK_FALSE(speaks_of_oil());
    REQUIRE(bench.tap("Product"));
    CHECK(bench.log().shows("DOT 4"));
    CHECK_FALSE(bench.log().shows("gear oil SAE 90"));
    bench.look();
    REQUIRE(bench.tap("DOT 3"));
    REQUIRE(bench.tap("Done"));
    REQUIRE(bench.tap("Cannot be seen"));
    CHECK(bench.log().shows("reservoir too dark to see through"));
    CHECK_FALSE(bench.log().shows("cap is dented or covered"));
}
