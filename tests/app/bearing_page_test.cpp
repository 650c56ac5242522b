// The bearing page by hand: nut, the maker's figures by keypad, the dial reading, a moved position, the lock.
#include <doctest/doctest.h>

#include "app/views/bearing_view.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

struct BearingBench : AppBench {
    BearingBench() {
        start_tandem();
        apply(GoTo{{Screen::bearing, kLeft, {}}});
        look();
    }
    [[nodiscard]] const BearingSetting& setting() {
        REQUIRE(job().all<BearingSetting>().size() == 1);
        return job().all<BearingSetting>()[0];
    }
};

}  // namespace

TEST_CASE("a bearing setting is entered by taps and keypad, each tap saved, no figure filled in by itself") {
    BearingBench bench;
    CHECK(bench.log().shows("not entered"));
    bench.touch("castle nut");
    CHECK(bench.setting().style == NutStyle::castle);
    CHECK_FALSE(bench.setting().play_max.has_value());
    CHECK_FALSE(bench.setting().seated.has_value());
    bench.touch("Minimum end play");
    bench.key("0.001");
    bench.touch("Maximum end play");
    bench.key("0.005");
    CHECK(bench.setting().play_min->text() == "0.001 in");
    CHECK(bench.setting().play_max->text() == "0.005 in");
    bench.touch("Threads per inch");
    bench.touch("14");
    bench.touch("Lock positions in one turn");
    bench.touch("6");
    CHECK(bench.setting().lock_positions == 6);
    bench.touch("1/6");
    CHECK(bench.setting().back_off->text() == "1/6");
    bench.touch("A new lock was fitted");
    CHECK(bench.setting().new_lock);
    CHECK_FALSE(bearing_view(bench.session()).proved);  // back-off is not end play
}

TEST_CASE("the dial reading goes in with its position; a looser position asks for a new one") {
    BearingBench bench;
    BearingSetting s = bearing_view(bench.session()).setting;
    s.source = "axle maker's manual, page 12";
    s.threads_per_inch = Number::parse("14").value();
    s.lock_positions = 6;
    s.play_min = make_amount("0.001", "[in_i]").value();
    s.play_max = make_amount("0.015", "[in_i]").value();
    bench.apply(PutBearing{s, {}});
    bench.look();
    bench.touch("Dial reading");
    REQUIRE(bench.session().drafts().reading.has_value());
    for (const char* digit : {"0", ".", "0", "0", "2"}) bench.touch(digit);
    bench.touch("Done");
    REQUIRE(bench.setting().tries.size() == 1);
    CHECK(bearing_view(bench.session()).play_words == "0.002 in, within the maker's range");
    bench.touch("1 position looser: play grows by about 0.0119 in, to about 0.0139 in");
    REQUIRE(bench.setting().tries.size() == 2);
    CHECK_FALSE(bench.setting().tries[1].dial.has_value());
    CHECK(bench.job().all<Reading>().size() == 1);
    bench.apply(RemoveReading{bench.job().all<Reading>()[0].id});
    CHECK(bench.job().all<Reading>().empty());
    CHECK_FALSE(bench.setting().tries[0].dial.has_value());
}
