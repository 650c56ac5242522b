// The torque page: the next nut, passes, what is remembered, and the second look at nuts out of order.
#include <algorithm>

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
        look();
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

TEST_CASE("the figure of a like wheel counts after one tap that says it fits, then eight nuts are one tap each") {
    TorqueBench bench;
    CHECK(bench.log().shows("Taken from axle 1, left: right?"));
    CHECK(bench.log().shows("120 lb-ft for 8 nuts, axle maker's manual, page 41. With wrench T-3."));
    CHECK_FALSE(torque_view(bench.session()).ready);
    bench.touch("Nut 1");  // does nothing before the answer
    CHECK(bench.job().all<Torque>().size() == 1);
    bench.taps = 0;
    bench.touch("Right: 120 lb-ft");
    for (const int nut : {1, 5, 3, 7, 2, 6, 4, 8}) bench.touch(fmt::format("Nut {}", nut));
    CHECK(bench.taps <= 10);
    REQUIRE(bench.job().all<Torque>().size() == 2);
    const Torque& t = bench.last();
    CHECK(t.place == kRight);
    CHECK(t.target_source == "axle maker's manual, page 41");
    CHECK(t.target_from == kLeft);
    CHECK(t.wrench_calibrated == Date{2026, 1, 10});
    REQUIRE(t.passes.size() == 1);
    CHECK(t.passes[0].setting.text() == "24 lb-ft");
    CHECK(t.passes[0].at_nut->text() == "24 lb-ft");
    CHECK(t.passes[0].tightened == std::vector<int>{1, 5, 3, 7, 2, 6, 4, 8});
    CHECK(bench.log().shows("axle maker's manual, page 41, as axle 1, left"));
}

TEST_CASE("90 ft-lb of a 6-stud single wheel are not carried to a 10-stud dual wheel, and nothing there ends proved") {
    TorqueBench bench;
    Trailer trailer = *bench.job().only<Trailer>();
    trailer.axles[0].studs = 6;
    trailer.axles[1].studs = 10;
    trailer.axles[1].wheels = Wheels::dual;
    bench.apply(PutTrailer{trailer});
    Torque front = bench.job().all<Torque>()[0];
    front.fasteners = 6;
    front.target = make_amount("90", "[lbf_av].[ft_i]").value();
    bench.apply(PutTorque{front});
    bench.go(Place::corner(2, Side::left));
    const TorqueView view = torque_view(bench.session());
    CHECK(view.torque.fasteners == 10);
    CHECK_FALSE(view.torque.target.has_value());
    CHECK_FALSE(view.offer.has_value());
    CHECK_FALSE(view.ready);
    CHECK(view.torque.wrench == "T-3");  // the same one is in the hand
    CHECK_FALSE(bench.log().shows("Taken from"));
    CHECK(bench.log().shows("Enter the maker's figure"));
    for (const int nut : {1, 6}) bench.touch(fmt::format("Nut {}", nut));
    CHECK(bench.job().all<Torque>().size() == 1);
    CHECK_FALSE(bench.log().shows("Proved"));
}

TEST_CASE("instead of the like wheel's figure another one can be entered") {
    TorqueBench bench;
    bench.touch("Another figure");
    bench.key("130");
    bench.touch("axle maker's manual, page 41");
    bench.touch("Save");
    CHECK(bench.last().target->text() == "130 lb-ft");
    CHECK_FALSE(bench.last().target_from.has_value());
    CHECK_FALSE(torque_view(bench.session()).offer.has_value());
}

TEST_CASE("a figure taken over goes again when the count turns out to be another") {
    TorqueBench bench;
    bench.touch("Right: 120 lb-ft");
    bench.touch("Nuts");
    bench.touch("6");
    CHECK(bench.last().fasteners == 6);
    CHECK_FALSE(bench.last().target.has_value());
    CHECK_FALSE(torque_view(bench.session()).offer.has_value());
}

TEST_CASE("the button under the thumb clicks the next nut, begins the next pass, and leads to the next corner") {
    TorqueBench bench;
    bench.touch("Right: 120 lb-ft");
    const std::vector<std::string> starts{"Start 60 lb-ft", "Start 120 lb-ft", "Start check 120 lb-ft"};
    for (std::size_t pass = 0; pass < 4; ++pass) {
        if (pass > 0) bench.touch(starts[pass - 1]);
        for (const int nut : {1, 5, 3, 7, 2, 6, 4, 8}) bench.touch(fmt::format("Nut {} clicked", nut));
    }
    CHECK(bench.last().passes.size() == 4);
    CHECK(torque_view(bench.session()).done);
    CHECK(bench.log().shows("Done"));
    CHECK(bench.log().shows("Proved"));
    bench.touch("Next: Axle 2, left");
    CHECK(bench.session().route() == Route{Screen::torque, Place::corner(2, Side::left), {}});
}

TEST_CASE("a nut out of order is asked about and may be taken") {
    TorqueBench bench;
    bench.touch("Right: 120 lb-ft");
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
    bench.touch("Redo");
    CHECK(bench.last().passes[0].tightened == std::vector<int>{1, 2});
}

TEST_CASE("eight nuts clicked 1 to 8 do not end proved, and the page names the order") {
    TorqueBench bench;
    Torque along = known(kRight);
    const Amount full = *along.target;
    for (const char* value : {"24", "60", "120", "120"})
        along.passes.push_back({make_amount(value, full.unit).value(), {1, 2, 3, 4, 5, 6, 7, 8}});
    along.passes.back().tightened.pop_back();
    bench.apply(PutTorque{along});
    bench.look();
    bench.touch("Nut 8 clicked");
    CHECK_FALSE(torque_view(bench.session()).done);
    CHECK(bench.log().shows("Not proved"));
    CHECK(bench.log().shows("Pass 1 went along the circle (1, 2, 3, 4, 5, 6, 7 and 8)"));
}

TEST_CASE("the full value may be begun at once; the record then says which passes are missing") {
    TorqueBench bench;
    bench.touch("Right: 120 lb-ft");
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
    bench.look();
    const TorqueView view = torque_view(bench.session());
    CHECK(view.stages.empty());
    CHECK_FALSE(view.ready);
    bench.touch("Enter the maker's figure");
    bench.key("120");
    CHECK(bench.job().all<Torque>().empty());
    bench.touch("Document and page");
    bench.hands->type("manual 41");
    bench.touch("Save");
    REQUIRE(bench.job().all<Torque>().size() == 1);
    CHECK(bench.job().all<Torque>()[0].target->text() == "120 lb-ft");
    CHECK(bench.job().all<Torque>()[0].target_source == "manual 41");
    CHECK_FALSE(bench.job().all<Torque>()[0].unit_confirmed);
}

TEST_CASE("120 lb-in for wheel nuts is asked about before it is kept") {
    AppBench bench;
    bench.start_tandem();
    bench.apply(GoTo{{Screen::torque, kLeft, {}}});
    bench.look();
    const auto enter = [&] {
        bench.touch("Maker's figure");
        bench.touch("lb-in");
        bench.key("120");
        CHECK(bench.log().shows("Was 120 lb-ft meant?"));
        CHECK_FALSE(bench.log().shows("Where does it say"));
    };
    const auto save = [&](const char* figure) {
        CHECK(bench.log().shows(std::string("Where does it say ") + figure));
        bench.touch("Document and page");
        bench.hands->type("manual 41");
        bench.touch("Save");
    };
    enter();
    bench.touch("Key it again");
    CHECK_FALSE(bench.log().shows("120"));  // the digits are gone
    bench.touch("Close");
    CHECK(bench.job().all<Torque>().empty());
    enter();
    bench.touch("It is 120 lb-ft");
    save("120 lb-ft");
    CHECK(bench.job().all<Torque>().at(0).target->text() == "120 lb-ft");
    CHECK_FALSE(bench.job().all<Torque>()[0].unit_confirmed);
    enter();
    bench.touch("Keep 120 lb-in");
    save("120 lb-in");
    CHECK(bench.job().all<Torque>()[0].target->text() == "120 lb-in");
    CHECK(bench.job().all<Torque>()[0].unit_confirmed);  // asked, kept, shown
}

TEST_CASE("an adapter changes what the wrench is set to; record and page have both, each under its name") {
    TorqueBench bench;
    bench.touch("Right: 120 lb-ft");
    bench.touch("Adapter");
    bench.key("16");
    bench.key("2");
    bench.touch("0");
    REQUIRE(bench.last().adapter.has_value());
    CHECK(bench.last().wrench == "T-3");
    CHECK(bench.last().adapter->length.text() == "2 in");
    CHECK(bench.last().adapter->wrench_length.text() == "16 in");
    CHECK(bench.last().adapter->angle.unit == "deg");
    bench.touch("120 lb-ft");
    CHECK(bench.last().passes.at(0).setting.text() == "106.7 lb-ft");
    CHECK(bench.last().passes[0].at_nut->text() == "120 lb-ft");
    CHECK(bench.log().shows("Pass 3 of 4: set the wrench to"));
    CHECK(bench.log().shows("106.7"));
    CHECK(bench.log().shows("120 lb-ft at the nut"));
    // Taken off again: what the wrench was set to is what the nuts got.
    bench.touch("Adapter");
    CHECK(bench.log().shows("Passes are there already"));
    bench.touch("There is none");
    CHECK_FALSE(bench.last().adapter.has_value());
    CHECK(bench.last().passes[0].at_nut->text() == "106.7 lb-ft");
}

TEST_CASE("an adapter in the words of an older record gets fields of its own with the next change") {
    TorqueBench bench;
    Torque older = known(kRight);
    older.wrench = "T-3, adapter 2 in beyond 16 in at 0°";
    older.passes = {{*older.target, {}}};
    bench.apply(PutTorque{older});
    const TorqueView view = torque_view(bench.session());
    CHECK(view.set_to->text() == "106.7 lb-ft");
    CHECK(view.torque.wrench == "T-3");
    CHECK(bench.last().adapter.has_value());
    CHECK(bench.last().passes[0].at_nut->text() == "120 lb-ft");
}

TEST_CASE("what the wrench is set to is the largest number on the torque page") {
    TorqueBench bench;
    bench.touch("Right: 120 lb-ft");
    bench.touch("Nut 1");
    float setting = 0, other = 0;
    std::string which;
    for (const TextInk& t : bench.log().texts) {
        if (t.text == "24") setting = std::max(setting, t.size);
        const bool number = t.text.find_first_of("0123456789") != std::string::npos;
        if (number && t.text != "24" && t.size > other) other = t.size, which = t.text;
    }
    CHECK_MESSAGE(setting > 1.5F * other, which);
}
