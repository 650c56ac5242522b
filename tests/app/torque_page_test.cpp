// The torque page: the next nut, passes, what is remembered, and the second look at nuts out of order.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

Torque known(const Place& place) {
    Torque torque;
    torque.place = place;
    torque.joint = "wheel nuts";
    torque.fasteners = 8;
    torque.target = make_amount("120", "[lbf_av].[ft_i]").value();
    torque.target_source = "axle maker's manual, page 41";
    torque.wrench = "T-3";
    torque.wrench_calibrated = Date{2026, 1, 10};
    return torque;
}

struct TorqueBench : AppBench {
    TorqueBench() {
        start_tandem();
        apply(PutTorque{known(kLeft)});
        apply(GoInstead{{Screen::plan, {}, {}}});
        go(kRight);
    }
    void go(const Place& place) {
        apply(GoTo{{Screen::torque, place, {}}});
        host->stage().happened();
        hands->settle();
    }
    [[nodiscard]] const Torque& last() { return job().all<Torque>().back(); }
    int taps = 0;
    void touch(const std::string& label) {
        CAPTURE(label);
        ++taps;
        REQUIRE(tap(label));
    }
};

}  // namespace

TEST_CASE("with figure and wrench known from the corner before, eight nuts are one tap each") {
    TorqueBench bench;
    for (const int nut : {1, 5, 3, 7, 2, 6, 4, 8}) bench.touch(fmt::format("Nut {}", nut));
    CHECK(bench.taps <= 10);
    REQUIRE(bench.job().all<Torque>().size() == 2);
    const Torque& t = bench.last();
    CHECK(t.place == kRight);
    CHECK(t.target_source == "axle maker's manual, page 41");
    CHECK(t.wrench_calibrated == Date{2026, 1, 10});
    REQUIRE(t.passes.size() == 1);
    CHECK(t.passes[0].setting.text() == "24 lb-ft");
    CHECK(t.passes[0].tightened == std::vector<int>{1, 5, 3, 7, 2, 6, 4, 8});
}

TEST_CASE("the button under the thumb clicks the next nut, begins the next pass, and leads to the next corner") {
    TorqueBench bench;
    const std::vector<std::string> starts{"Start 60 lb-ft", "Start 120 lb-ft", "Start check 120 lb-ft"};
    for (std::size_t pass = 0; pass < 4; ++pass) {
        if (pass > 0) bench.touch(starts[pass - 1]);
        for (const int nut : {1, 5, 3, 7, 2, 6, 4, 8}) bench.touch(fmt::format("Nut {} clicked", nut));
    }
    CHECK(bench.last().passes.size() == 4);
    CHECK(torque_view(bench.session()).done);
    CHECK(bench.log().shows("Done"));
    bench.touch("Next: Axle 2, left");
    CHECK(bench.session().route() == Route{Screen::torque, Place::corner(2, Side::left), {}});
}

TEST_CASE("a nut out of order is asked about and may be taken") {
    TorqueBench bench;
    bench.touch("Nut 1");
    bench.touch("Nut 2");
    CHECK(bench.last().passes[0].tightened == std::vector<int>{1});
    CHECK(bench.log().shows("Nut 5 is next, not 2"));
    bench.touch("Not yet");
    CHECK(bench.last().passes[0].tightened == std::vector<int>{1});
    bench.touch("Nut 2");
    bench.touch("2 has clicked");
    CHECK(bench.last().passes[0].tightened == std::vector<int>{1, 2});
    bench.touch("Undo");
    CHECK(bench.last().passes[0].tightened == std::vector<int>{1});
}

TEST_CASE("the full value may be begun at once; the record then says which passes are missing") {
    TorqueBench bench;
    bench.touch("120 lb-ft");
    CHECK(bench.last().passes[0].setting.text() == "120 lb-ft");
    for (int i = 0; i < 8; ++i) bench.touch(fmt::format("Nut {} clicked", torque_view(bench.session()).next));
    const TorqueView view = torque_view(bench.session());
    CHECK_FALSE(view.done);
    REQUIRE(view.next_stage.has_value());
    CHECK(view.stages[*view.next_stage].label == "check 120 lb-ft");
}

TEST_CASE("without the maker's figure nothing is guessed: it is asked for, with its source") {
    AppBench bench;
    bench.start_tandem();
    bench.apply(GoTo{{Screen::torque, kLeft, {}}});
    bench.host->stage().happened();
    bench.hands->settle();
    const TorqueView view = torque_view(bench.session());
    CHECK(view.stages.empty());
    CHECK_FALSE(view.ready);
    REQUIRE(bench.tap("Enter the maker's figure"));
    for (const char* key : {"1", "2", "0"}) REQUIRE(bench.tap(key));
    REQUIRE(bench.tap("Done"));
    CHECK(bench.job().all<Torque>().empty());
    REQUIRE(bench.tap("Document and page"));
    bench.hands->type("manual 41");
    REQUIRE(bench.tap("Save"));
    REQUIRE(bench.job().all<Torque>().size() == 1);
    CHECK(bench.job().all<Torque>()[0].target->text() == "120 lb-ft");
    CHECK(bench.job().all<Torque>()[0].target_source == "manual 41");
}

TEST_CASE("an adapter changes what the wrench is set to, and is written down with it") {
    const Adapter adapter{make_amount("16", "[in_i]").value(), make_amount("2", "[in_i]").value(),
                          Number::parse("0").value()};
    const std::string text = wrench_text("T-3", adapter);
    CHECK(text == "T-3, adapter 2 in beyond 16 in at 0°");
    CHECK(wrench_id(text) == "T-3");
    const auto back = wrench_adapter(text);
    REQUIRE(back.has_value());
    CHECK(back->handle == adapter.handle);
    CHECK(back->extension == adapter.extension);
    CHECK(back->angle == adapter.angle);
    CHECK_FALSE(wrench_adapter("T-3").has_value());
    CHECK_FALSE(wrench_adapter("T-3, adapter of his own").has_value());

    SessionBench bench;
    bench.start_tandem();
    Torque torque = known(kLeft);
    torque.wrench = text;
    torque.passes = {{make_amount("120", "[lbf_av].[ft_i]").value(), {}}};
    bench.apply(PutTorque{torque});
    bench.apply(GoTo{{Screen::torque, kLeft, {}}});
    CHECK(torque_view(bench.session()).set_to == "106.7 lb-ft");
}
