// The bleed page by hand: pipes with length and inside diameter, the order, the count, a fluid that must not go in.
#include <doctest/doctest.h>

#include "app/views/bleed_view.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

PipeRoute straight_route() {
    PipeRoute route;
    for (const auto& [to, metres] : {std::pair{"axle1-left", "3"}, std::pair{"axle1-right", "4"},
                                     std::pair{"axle2-left", "5"}, std::pair{"axle2-right", "6"}})
        route.legs.push_back({"actuator", to, make_amount(metres, "m").value(), std::nullopt});
    return route;
}

struct BleedBench : AppBench {
    explicit BleedBench(Point at = {412, 915}) : AppBench(at) {
        start_tandem();
        apply(GoTo{{Screen::bleed, kTrailer, {}}});
        look();
    }
};

}  // namespace

TEST_CASE("a pipe is entered: its ends, its length, and how wide it is inside") {
    BleedBench bench;
    bench.touch("Add a pipe");
    bench.touch("Axle 2, right");
    bench.touch("Its length");
    bench.key("20");
    REQUIRE(bench.job().only<PipeRoute>() != nullptr);  // saved before the next question
    CHECK(bench.job().only<PipeRoute>()->legs.at(0).to == "axle2-right");
    CHECK(bench.job().only<PipeRoute>()->legs[0].length.text() == "20 ft");
    bench.touch("1/4 in tube, 0.190 in inside");
    CHECK(bench.job().only<PipeRoute>()->legs[0].bore->text() == "0.190 in");
    CHECK(bleed_view(bench.session()).holds.find("hold 112 mL") != std::string::npos);
    bench.touch("Actuator to Axle 2, right");
    bench.touch("Inside diameter");
    bench.touch("Key in another");
    bench.key("0.2");
    CHECK(bench.job().only<PipeRoute>()->legs[0].bore->text() == "0.2 in");
    CHECK(bench.job().only<PipeRoute>()->legs.size() == 1);
}

TEST_CASE("without every inside diameter the page says that the volume cannot be told") {
    BleedBench bench;
    bench.apply(PutPipeRoute{straight_route()});
    bench.look();
    CHECK(bleed_view(bench.session()).holds.find("cannot be told: the inside diameter of 4 pipes") !=
          std::string::npos);
    CHECK(bench.log().shows("inside diameter not entered"));
}

TEST_CASE("bleeding is counted corner by corner until each has run clear") {
    BleedBench bench({412, 1400});
    bench.apply(PutPipeRoute{straight_route()});
    bench.look();
    for (const char* corner : {"1 Axle 2, right", "2 Axle 2, left", "3 Axle 1, right", "4 Axle 1, left"}) {
        bench.touch(std::string("Count: ") + corner);
        bench.key("120");
        bench.touch("DOT 4");
        bench.touch("Clear, no bubbles");
    }
    CHECK(bench.job().all<BleedCount>().size() == 4);
    CHECK(bench.job().all<BleedCount>()[0].fluid == "DOT 4");
    CHECK(bleed_view(bench.session()).done);
    CHECK(bench.log().shows("Every corner ran clear"));
}

TEST_CASE("a round that was keyed in by mistake is removed by a tap") {
    BleedBench bench({412, 1400});
    bench.apply(PutPipeRoute{straight_route()});
    bench.look();
    for (const char* drawn : {"120", "40"}) {
        bench.touch("Count: 1 Axle 2, right");
        bench.key(drawn);
        bench.touch("DOT 4");
        bench.touch("Dark or dirty");
    }
    CHECK(bench.log().shows("Counted so far"));
    bench.touch("Axle 2, right");  // the last one first
    CHECK(bench.log().shows("Dark or dirty, no bubbles, DOT 4"));
    bench.touch("Remove this count");
    REQUIRE(bench.job().all<BleedCount>().size() == 1);
    CHECK(bench.job().all<BleedCount>()[0].drawn.text() == "120 mL");
    CHECK(bleed_view(bench.session()).order[0].value == "120 mL in 1 round");
    bench.touch("Undo");
    CHECK(bench.job().all<BleedCount>().size() == 2);
}

TEST_CASE("what is still to be bled names its corner as screens do") {
    BleedBench bench;
    bench.apply(PutPipeRoute{straight_route()});
    const std::vector<BleedRemark> remarks = bleed_view(bench.session()).remarks;
    REQUIRE(remarks.size() == 4);
    CHECK(remarks[0].words.find("xle 2, right") != std::string::npos);
    for (const BleedRemark& r : remarks) {
        CHECK(r.words.find("axle2-") == std::string::npos);
        CHECK(r.words.find("axle1-") == std::string::npos);
        CHECK(r.words.find("is not bled yet") != std::string::npos);
    }
}

TEST_CASE("a fluid that must not meet what is in the reservoir is warned of with reason and source") {
    BleedBench bench;
    bench.apply(PutPipeRoute{straight_route()});
    Level level;
    level.place = Place::at(Station::actuator);
    level.fluid = "brake fluid";
    level.product = "DOT 5";
    level.before.mark = LevelMark::at;
    bench.apply(PutLevel{level});
    bench.look();
    bench.touch("Count: 1 Axle 2, right");
    bench.key("100");
    bench.touch("DOT 4");
    CHECK(bench.log().shows("Wrong fluid for this brake system"));
    CHECK(bench.log().shows("571.116"));
}
