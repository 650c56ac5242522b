// What is due after the job on the hand-over page, and this visit beside the last one.
#include <doctest/doctest.h>

#include "app/views/hand_over_view.h"
#include "app/views/place_text.h"
#include "app/views/since_view.h"
#include "app/views/summary_view.h"
#include "core/trade/reading_spec.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

Reading pads(const char* inner) {
    Reading r;
    r.place = kLeft;
    r.what = what::pad_thickness;
    r.unit = "mm";
    r.points = {{"inner", Number::parse(inner).value()}};
    return r;
}

Reading all_pads(const char* each) {
    Reading r = pads(each);
    r.points.clear();
    for (const std::string_view where : reading_spec(what::pad_thickness)->points)
        r.points.push_back({std::string(where), Number::parse(each).value()});
    return r;
}

struct DueBench : AppBench {
    explicit DueBench(Point at = {412, 915}) : AppBench(at) { start_tandem(); }
    void go(Screen screen) {
        apply(GoTo{{screen, {}, {}}});
        host->stage().happened();
        hands->settle();
    }
};

const RecheckLine* line_of(const std::vector<RecheckLine>& lines, std::string_view title) {
    for (const RecheckLine& line : lines)
        if (line.title == title) return &line;
    return nullptr;
}

}  // namespace

TEST_CASE("the hand-over shows what is due, when, where and who says so") {
    DueBench bench({412, 4800});
    CHECK(line_of(hand_over_view(bench.session()).rechecks,
                  "Check lug nut torque again with a torque wrench (do not loosen)") == nullptr);
    for (const Side side : {Side::left, Side::right}) {
        Torque torque;
        torque.place = Place::corner(1, side);
        torque.joint = "wheel nuts";
        torque.fasteners = 8;
        bench.apply(PutTorque{torque});
    }
    const auto due = hand_over_view(bench.session()).rechecks;
    const RecheckLine* nuts = line_of(due, "Check lug nut torque again with a torque wrench (do not loosen)");
    REQUIRE(nuts != nullptr);
    CHECK(nuts->when == "After 10, 25 and 50 miles");
    CHECK(nuts->places == "Axle 1, left; axle 1, right");
    CHECK(nuts->source.find("common practice") != std::string::npos);
    const RecheckLine* routine = line_of(due, "Check lug nut torque, routine");
    REQUIRE(routine != nullptr);
    CHECK(routine->when.starts_with("By 2026-08-13 or after 3000 miles"));  // 91 days from the clock's day
    bench.go(Screen::hand_over);
    CHECK(bench.log().shows("Due next"));
    CHECK(bench.log().shows("After 10, 25 and 50 miles"));
}

TEST_CASE("what was not measured and must be known, and nuts that are only snug, are open at the hand-over") {
    DueBench bench;
    const auto lacks = [&](std::string_view words) {
        for (const Gap& gap : hand_over_view(bench.session()).gaps)
            if (gap.what == "Axle 1, left" && gap.lacks.find(words) != std::string::npos) return true;
        return false;
    };
    CHECK(lacks("Tread depth: not looked at"));
    CHECK(lacks("Pad thickness: not looked at"));
    Torque torque;
    torque.place = kLeft;
    torque.joint = "wheel nuts";
    torque.fasteners = 8;
    torque.target = make_amount("120", "[lbf_av].[ft_i]").value();
    torque.target_source = "axle maker's manual, page 41";
    torque.wrench = "T-3";
    torque.wrench_calibrated = Date{2026, 1, 10};
    torque.passes = {{make_amount("24", "[lbf_av].[ft_i]").value(), {1, 5, 3, 7, 2, 6, 4, 8}}};
    bench.apply(PutTorque{torque});
    bench.apply(PutReading{pads("7.1")});
    REQUIRE(bench.job().all<Torque>().size() == 1);
    CHECK(lacks("torque not proved"));
    CHECK(lacks("Pad thickness: "));  // one pad is not both
    bench.apply(PutReading{all_pads("7.1")});
    CHECK_FALSE(lacks("Pad thickness"));
    torque = bench.job().all<Torque>()[0];
    for (const char* setting : {"60", "120", "120"})
        torque.passes.push_back({make_amount(setting, "[lbf_av].[ft_i]").value(), {1, 5, 3, 7, 2, 6, 4, 8}});
    bench.apply(PutTorque{torque});
    CHECK_FALSE(lacks("torque"));
}

TEST_CASE("this visit stands beside the last one, reading by reading, reached from the summary") {
    DueBench bench;
    bench.apply(PutReading{pads("9.5")});
    bench.clock.at.unix_s += 412 * 86400;
    bench.start_tandem();
    CHECK(since_view(bench.session()).last == "2026-05-14");
    bench.apply(PutReading{pads("7.1")});
    bench.go(Screen::summary);
    REQUIRE(bench.tap("Compare reading by reading"));
    CHECK(bench.session().route().screen == Screen::since);
    const SinceView view = since_view(bench.session());
    CHECK(view.apart == "412 days apart");
    REQUIRE(view.groups.size() == 1);
    CHECK(view.groups[0].title == "Axle 1, left");
    REQUIRE(view.groups[0].rows.size() == 1);
    CHECK(view.groups[0].rows[0].change == "−2.4 mm");
    CHECK(view.groups[0].rows[0].under == "9.5 mm → 7.1 mm");
    CHECK(bench.log().shows("9.5 mm → 7.1 mm"));
    REQUIRE(bench.tap("Pad thickness, inner"));
    CHECK(bench.session().route() == Route{Screen::corner, kLeft, {}});
}

TEST_CASE("without an earlier visit the page says so and the summary does not offer it") {
    DueBench bench;
    CHECK(summary_view(bench.session()).since.empty());
    bench.go(Screen::since);
    CHECK(bench.log().shows("No earlier visit"));
}

TEST_CASE("codes of corners are put into the words of the screens, and nothing else is touched") {
    CHECK(in_words("axle1-left is not bled yet", SideWords::left_right) == "Axle 1, left is not bled yet");
    CHECK(in_words("first, at axle2-right: it", SideWords::roadside_curbside) == "first, at axle 2, curbside: it");
    CHECK(in_words("No: axle 1 left, pads", SideWords::nearside_offside) == "No: axle 1, nearside, pads");
    CHECK(in_words("axle3-left-inner", SideWords::left_right) == "Axle 3, left, inner wheel");
    CHECK(in_words("No: Axle 2 right", SideWords::left_right) == "No: Axle 2, right");
    for (const char* same : {"axle 1", "axle1-leftover", "taxle1-left", "axle9-left", "the axle", "axle1-", ""})
        CHECK(in_words(same, SideWords::left_right) == same);
}
