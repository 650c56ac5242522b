// The breakaway test by taps and by the clock.
#include <doctest/doctest.h>

#include "app/views/breakaway_view.h"
#include "core/trade/reading_names.h"
#include "tests/app/places.h"
#include "tests/app/taps.h"

using namespace cotter;

namespace {

struct BreakawayBench : Taps {
    BreakawayBench() {
        begin();
        axles("One", "Single", "Electric drum", "Grease");
        to_plan();
        touch("What is looked at");
        touch("Each of them");
        touch("Breakaway brakes held for 15 minutes");
        touch("The test by the clock");
        REQUIRE(route().screen == Screen::breakaway);
    }
    void minutes(int n) {
        clock.at.unix_s += n * 60;
        look();
    }
    void each(const char* words) {
        for (int nth = 1; nth <= 2; ++nth) REQUIRE(tap(words, nth));
    }
    [[nodiscard]] const BreakawayTest& test() {
        REQUIRE(job().all<BreakawayTest>().size() == 1);
        return job().all<BreakawayTest>()[0];
    }
    [[nodiscard]] const PointAnswer& answer() {
        for (const PointAnswer& a : session().towing().points)
            if (a.point == PointId::away_15) return a;
        FAIL("no answer");
        return session().towing().points[0];
    }
};

}  // namespace

TEST_CASE("brakes that hold for 15 minutes by the clock are proved by taps") {
    BreakawayBench bench;
    bench.touch("Pin is out: start");
    bench.each("It holds");
    CHECK(bench.log().shows("Leave the pin out"));
    bench.minutes(14);
    CHECK(bench.log().shows("14:00 of 15:00"));
    bench.minutes(1);
    CHECK(bench.log().shows("15:00: does each wheel still hold?"));
    CHECK_FALSE(bench.answer().known);
    bench.each("It holds");
    bench.touch("Stop the timer");
    bench.each("It turns");
    bench.touch("The pin is back in");
    CHECK(bench.test().pin_in_again);
    CHECK(bench.test().ended->unix_s - bench.test().started.unix_s == 15 * 60);
    for (const WheelHeld& w : bench.test().wheels) {
        CHECK(w.at_start == Held::holds);
        CHECK(w.at_end == Held::holds);
        CHECK(w.pin_back == Held::turns);
    }
    CHECK(bench.log().shows("Every wheel tried held for 15:00."));
    CHECK(bench.answer().known);
    CHECK(bench.answer().grade == Grade::serviceable);
    bench.touch("Remove this test");
    CHECK(bench.job().all<BreakawayTest>().empty());
    CHECK_FALSE(bench.answer().known);
}

TEST_CASE("a breakaway test that is stopped early proves nothing, and one that let go forbids") {
    BreakawayBench bench;
    bench.touch("Pin is out: start");
    bench.each("It holds");
    bench.minutes(7);
    bench.touch("Stop early");
    CHECK(bench.log().shows("15 minutes are not proved"));
    CHECK_FALSE(bench.answer().known);
    bench.each("It turns");
    bench.touch("The pin is back in");
    bench.touch("Test again");
    bench.each("It holds");
    bench.minutes(7);
    bench.touch("Axle 1, left");  // lets go
    bench.touch("Stop early");
    CHECK(bench.log().shows("Let go before 15:00"));
    REQUIRE(bench.answer().known);
    CHECK(bench.answer().grade == Grade::do_not_tow);
    CHECK(bench.session().summary().towing == Towing::no);
}

TEST_CASE("the battery's volts are keyed while the time runs") {
    BreakawayBench bench;
    bench.touch("Pin is out: start");
    bench.each("It holds");
    bench.touch("Breakaway battery under load");
    bench.key_points({"12.6"});
    REQUIRE(bench.job().all<Reading>().size() == 1);
    CHECK(bench.job().all<Reading>()[0].what == what::battery_volts);
    CHECK(bench.job().all<Reading>()[0].place == Place::at(Station::actuator));
}
