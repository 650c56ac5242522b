// New cases, air to line pressure, each by its number, through edits to the answer. The yard is good in every other
// respect, on 2026-11-29, a carrier's.
#include "core/judge/fact_english.h"
#include "tests/core/judge/answer_yard.h"

using namespace cotter;
using namespace cotter::test;
using enum TowOutcome;

namespace {

// A stroke at one chamber; `change` says what its tag is.
AnswerYard stroke_yard(const char* stroke, const std::function<void(Chamber&)>& change, const char* tanks = "85") {
    AnswerYard yard = air_yard();
    yard.leave_out(PointId::air_kind, "axle1-left");
    yard.leave_out(PointId::air_stroke, "axle1-left");
    yard.leave_out(PointId::air_pair);
    yard.all_good();
    Chamber c = yard.chamber_record("axle1-left");
    change(c);
    yard.put(c);
    yard.look(PointId::air_spring, "axle1-left");
    yard.read("axle1-left", what::push_rod_stroke, kInch, {{"", stroke}});
    yard.read("axle1-left", what::tank_pressure, kPsi, {{"", tanks}});
    return yard;
}

TowAnswer told_of(const AnswerYard& yard) {
    return ask(yard);
}

}  // namespace

TEST_CASE("B1 a stroke over its limit as read: do not tow") {
    CHECK_OUTCOME(told_of(stroke_yard("2 1/16", [](Chamber&) {})), do_not_tow);
}

TEST_CASE("B2 a stroke exactly at its limit: nothing against it, to be watched") {
    const TowAnswer a = told_of(stroke_yard("2", [](Chamber&) {}));
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::air_stroke, "axle1-left").grade == Grade::watch);
}

TEST_CASE("B3 a long-stroke chamber by its tag") {
    CHECK_OUTCOME(told_of(stroke_yard("2 1/4",
                                      [](Chamber& c) {
                                          c.stroke = StrokeClass::long_stroke;
                                          c.table_limit = *make_amount("2 1/2", kInch);
                                      })),
                  nothing_against);
}

TEST_CASE("B4 a stroke class that nobody read is judged as standard") {
    const TowAnswer a = told_of(stroke_yard("2 1/4", [](Chamber& c) {
        c.stroke = StrokeClass::not_read;
        c.table_limit.reset();
    }));
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(english(a.reason()->fact).find("judged as standard; read the tag") != std::string::npos);
    // Nor by a figure that only a long stroke has.
    CHECK_OUTCOME(told_of(stroke_yard("2 1/4",
                                      [](Chamber& c) {
                                          c.stroke = StrokeClass::not_read;
                                          c.table_limit = *make_amount("2 1/2", kInch);
                                      })),
                  do_not_tow);
}

TEST_CASE("B5 the remembered table forbids and never permits") {
    const auto remembered = [](Chamber& c) {
        c.size = "24";
        c.table_limit.reset();
    };
    const TowAnswer within = told_of(stroke_yard("1 1/2", remembered));
    CHECK(within.outcome != nothing_against);
    CHECK(at(within, PointId::air_stroke, "axle1-left").fact.id == FactId::memory_permits_nothing);
    const AnswerYard yard = stroke_yard("2 1/4", remembered);
    const TowAnswer over = told_of(yard);
    CHECK_OUTCOME(over, do_not_tow);
    CHECK(source_line(at(over, PointId::air_stroke, "axle1-left").source, law_setting(yard.job()))
              .find("(wording not verified)") != std::string::npos);
}

TEST_CASE("B6 an unlisted type counts 80 % of its marked stroke") {
    const auto unlisted = [](Chamber& c) {
        c.size = "31X";
        c.table_limit.reset();
        c.rated_stroke = *make_amount("3.0", kInch);
    };
    const TowAnswer a = told_of(stroke_yard("2.5", unlisted));
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(at(a, PointId::air_stroke, "axle1-left").source.text.find("1a(5)(b)") != std::string::npos);
    CHECK(at(told_of(stroke_yard("2.25", unlisted)), PointId::air_stroke, "axle1-left").grade == Grade::serviceable);
}

TEST_CASE("B7 a stroke read at 105 psi tells nothing") {
    const TowAnswer a = told_of(stroke_yard(
        "1 1/2", [](Chamber&) {}, "105"));
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::air_stroke, "axle1-left").fact.id == FactId::stroke_pressure);
}

TEST_CASE("B8 chambers of two sizes on an axle: not before repair") {
    AnswerYard yard = air_yard();
    yard.leave_out(PointId::air_kind, "axle1-left");
    yard.all_good();
    Chamber c = yard.chamber_record("axle1-left");
    c.size = "24";
    c.table_limit = *make_amount("1 3/4", kInch);
    yard.put(c);
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    CHECK(a.reason()->point == PointId::air_pair);
}

TEST_CASE("B9 a spring brake found caged: do not tow") {
    AnswerYard yard = air_yard();
    yard.all_good();
    yard.seen(PointId::air_spring, "axle1-left", "caged");
    CHECK_OUTCOME(ask(yard), do_not_tow);
}

TEST_CASE("B10 air drum lining at 6.4 mm and at 6.2") {
    for (const auto& [mm, outcome] : {std::pair("6.4", nothing_against), std::pair("6.2", do_not_tow)}) {
        AnswerYard yard = air_yard();
        yard.all_good();
        yard.read("axle1-left", what::air_lining, "mm", {{"first shoe or pad", mm}, {"second shoe or pad", "12.0"}});
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::air_lining, "axle1-left").grade == Grade::watch);
    }
}

TEST_CASE("B11 a manual slack adjuster on an air axle of 2006: not before repair; of 1990: no matter") {
    for (const auto& [built, outcome] :
         {std::pair("2006-05", not_before_repair), std::pair("1990-05", nothing_against)}) {
        AnswerYard yard = air_yard();
        yard.leave_out(PointId::air_kind, "axle1-left");
        yard.leave_out(PointId::brk_adjust);
        yard.change_trailer([&, built = built](Trailer& t) { t.built = built; });
        yard.all_good();
        Chamber c = yard.chamber_record("axle1-left");
        c.slack = SlackAdjuster::manual;
        yard.put(c);
        yard.look(PointId::air_spring, "axle1-left");
        CHECK_OUTCOME(ask(yard), outcome);
    }
}

namespace {
AnswerYard pull_yard(std::size_t axles, const std::function<void(BreakawayTest&)>& change) {
    AnswerYard yard(std::vector<Axle>(axles, an_axle(BrakeKind::electric_drum)), Actuation::electric);
    yard.leave_out(PointId::away_15);
    yard.leave_out(PointId::away_pull);
    yard.all_good();
    BreakawayTest test = yard.test_record();
    change(test);
    yard.put(test);
    return yard;
}
}  // namespace

TEST_CASE("B12 two axles, the rear does not hold with the pin out: do not tow") {
    CHECK_OUTCOME(ask(pull_yard(2,
                                [](BreakawayTest& t) {
                                    for (std::size_t i : {2u, 3u}) {
                                        t.wheels[i].at_start = Held::turns;
                                        t.wheels[i].at_end = Held::turns;
                                    }
                                })),
                  do_not_tow);
}

TEST_CASE("B13 three axles, the pin acts on the front two only, held 15 minutes: nothing against it, and said") {
    const TowAnswer a = ask(pull_yard(3, [](BreakawayTest& t) {
        for (std::size_t i : {4u, 5u}) {
            t.wheels[i].at_start = Held::turns;
            t.wheels[i].at_end = Held::turns;
        }
    }));
    CHECK_OUTCOME(a, nothing_against);
    REQUIRE(at(a, PointId::away_15, "trailer").also.size() == 1);
    CHECK(english(at(a, PointId::away_15, "trailer").also[0]) == "the pin acts on 2 of 3 axles");
    CHECK(at(a, PointId::away_pull, "axle3-left").fact.id == FactId::pull_not_acted_on);
}

TEST_CASE("B14 a wheel free at the end of 15 minutes: do not tow") {
    CHECK_OUTCOME(ask(pull_yard(2, [](BreakawayTest& t) { t.wheels[3].at_end = Held::turns; })), do_not_tow);
}

TEST_CASE("B15 the pin not put back: do not tow") {
    CHECK_OUTCOME(ask(pull_yard(2, [](BreakawayTest& t) { t.pin_in_again = false; })), do_not_tow);
}

TEST_CASE("B16 P tires under their axle's rating: repair; weighed within it with the limit written on: watch") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::tire_id);
    yard.change_trailer([](Trailer& t) {
        for (Axle& axle : t.axles) axle.gawr = *make_amount("2800", kPound);
    });
    yard.all_good();
    for (const Place& corner : yard.trailer().corners()) {
        Sidewall s = yard.sidewall_record(corner.text().c_str());
        s.type = TireType::passenger;
        s.index_single = 95;
        yard.put(s);
    }
    TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    CHECK(english(a.reason()->fact).find("2766 lb") != std::string::npos);
    yard.weigh({"2400", "2400"}, "600");
    CHECK_OUTCOME(ask(yard), not_before_repair);
    yard.look(PointId::tire_load, "axle1-left", LookResult::good, {{"limit-written", LookResult::good}});
    a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::tire_load, "axle1-left").grade == Grade::watch);
}

namespace {
AnswerYard dual_yard() {
    return AnswerYard({an_axle(BrakeKind::electric_drum, Wheels::dual)}, Actuation::electric);
}
}  // namespace

TEST_CASE("B17 duals count their dual figure: 107/104 under 8,000 lb, not before repair") {
    AnswerYard yard = dual_yard();
    yard.leave_out(PointId::tire_id);
    yard.change_trailer([](Trailer& t) {
        t.gvwr = *make_amount("9000", kPound);
        t.axles[0].gawr = *make_amount("8000", kPound);
    });
    yard.all_good();
    for (const char* wheel : {"axle1-left-inner", "axle1-left-outer", "axle1-right-inner", "axle1-right-outer"}) {
        Sidewall s = yard.sidewall_record(wheel);
        s.index_single = 107;
        s.index_dual = 104;
        yard.put(s);
    }
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    CHECK(english(a.reason()->fact).find("7937 lb") != std::string::npos);
}

TEST_CASE("B18 a load index that is not in the table: cannot tell") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::tire_id, "axle1-left");
    yard.all_good();
    Sidewall s = yard.sidewall_record("axle1-left");
    s.index_single = 55;
    yard.put(s);
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::tire_load, "axle1-left").fact.id == FactId::index_not_in_table);
}

TEST_CASE("B19 a total at the plug proves no wheel: cannot tell, four corners") {
    AnswerYard yard = electric_yard();
    yard.leave_out(PointId::elec_amps);
    yard.all_good();
    yard.read("trailer", what::magnets_total, "A", {{"", "12.0"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(a.open.size() == 4);
    for (const std::size_t i : a.open) CHECK(a.points[i].point == PointId::elec_amps);
}

TEST_CASE("B20 a magnet of 0.9 A, of 8.5 A, and an open one") {
    for (const char* amps : {"0.9", "8.5"}) {
        AnswerYard yard = electric_yard();
        yard.all_good();
        yard.read("axle1-left", what::magnet_current, "A", {{"", amps}});
        CHECK_OUTCOME(ask(yard), not_before_repair);
    }
    AnswerYard yard = electric_yard();
    yard.all_good();
    yard.seen(PointId::elec_mag, "axle1-left", "open");
    CHECK_OUTCOME(ask(yard), do_not_tow);
    AnswerYard measured = electric_yard();
    measured.all_good();
    measured.read("axle1-left", what::magnet_resistance, "Ohm", {{"", "100000"}});
    CHECK_OUTCOME(ask(measured), do_not_tow);
}

TEST_CASE("B21 line pressure against a label of 1,600 psi") {
    for (const auto& [psi, outcome] :
         {std::pair("900", nothing_against), std::pair("700", not_before_repair), std::pair("390", do_not_tow)}) {
        AnswerYard yard = disc_yard();
        yard.leave_out(PointId::act_press);
        yard.all_good();
        yard.maker(what::line_pressure, Bound::at_least, "1600", kPsi);
        yard.read("actuator", what::line_pressure, kPsi, {{"", psi}});
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::act_press, "actuator").grade == Grade::watch);
    }
}
