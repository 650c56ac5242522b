// New cases, each by its number, through edits to the answer. The yard is good in every other respect, on 2026-11-29, a
// carrier's.
#include "core/judge/fact_english.h"
#include "tests/core/judge/answer_yard.h"

using namespace cotter;
using namespace cotter::test;
using enum TowOutcome;

namespace {

// A stroke at one chamber; `change` says what its tag is.
Yard stroke_yard(const char* stroke, const std::function<void(Chamber&)>& change, const char* tanks = "85") {
    Yard yard = air_yard();
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

TowAnswer told_of(const Yard& yard) {
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
    const Yard yard = stroke_yard("2 1/4", remembered);
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
    Yard yard = air_yard();
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
    Yard yard = air_yard();
    yard.all_good();
    yard.seen(PointId::air_spring, "axle1-left", "caged");
    CHECK_OUTCOME(ask(yard), do_not_tow);
}

TEST_CASE("B10 air drum lining at 6.4 mm and at 6.2") {
    for (const auto& [mm, outcome] : {std::pair("6.4", nothing_against), std::pair("6.2", do_not_tow)}) {
        Yard yard = air_yard();
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
        Yard yard = air_yard();
        yard.leave_out(PointId::air_kind, "axle1-left");
        yard.leave_out(PointId::brk_adjust);
        yard.change_trailer([&](Trailer& t) { t.built = built; });
        yard.all_good();
        Chamber c = yard.chamber_record("axle1-left");
        c.slack = SlackAdjuster::manual;
        yard.put(c);
        yard.look(PointId::air_spring, "axle1-left");
        CHECK_OUTCOME(ask(yard), outcome);
    }
}

namespace {
Yard pull_yard(std::size_t axles, const std::function<void(BreakawayTest&)>& change) {
    Yard yard(std::vector<Axle>(axles, an_axle(BrakeKind::electric_drum)), Actuation::electric);
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
    Yard yard = disc_yard();
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
Yard dual_yard() {
    return Yard({an_axle(BrakeKind::electric_drum, Wheels::dual)}, Actuation::electric);
}
}  // namespace

TEST_CASE("B17 duals count their dual figure: 107/104 under 8,000 lb, not before repair") {
    Yard yard = dual_yard();
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
    Yard yard = disc_yard();
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
    Yard yard = electric_yard();
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
        Yard yard = electric_yard();
        yard.all_good();
        yard.read("axle1-left", what::magnet_current, "A", {{"", amps}});
        CHECK_OUTCOME(ask(yard), not_before_repair);
    }
    Yard yard = electric_yard();
    yard.all_good();
    yard.seen(PointId::elec_mag, "axle1-left", "open");
    CHECK_OUTCOME(ask(yard), do_not_tow);
    Yard measured = electric_yard();
    measured.all_good();
    measured.read("axle1-left", what::magnet_resistance, "Ohm", {{"", "100000"}});
    CHECK_OUTCOME(ask(measured), do_not_tow);
}

TEST_CASE("B21 line pressure against a label of 1,600 psi") {
    for (const auto& [psi, outcome] :
         {std::pair("900", nothing_against), std::pair("700", not_before_repair), std::pair("390", do_not_tow)}) {
        Yard yard = disc_yard();
        yard.leave_out(PointId::act_press);
        yard.all_good();
        yard.maker(what::line_pressure, Bound::at_least, "1600", kPsi);
        yard.read("actuator", what::line_pressure, kPsi, {{"", psi}});
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::act_press, "actuator").grade == Grade::watch);
    }
}

TEST_CASE("B22 a hold that loses 12 %: not before repair") {
    Yard yard = disc_yard();
    yard.all_good();
    yard.read("actuator", what::pressure_hold, kPsi, {{"start, after settling", "1000"}, {"after 5 min", "880"}});
    CHECK_OUTCOME(ask(yard), not_before_repair);
}

TEST_CASE("B23 two hubs, 150 and 212 F: compared with each other, no third is needed") {
    Yard yard({an_axle(BrakeKind::electric_drum)}, Actuation::electric);
    yard.change_trailer([](Trailer& t) { t.gvwr = *make_amount("3500", kPound); });
    yard.all_good();
    yard.event(EventKind::driven);
    yard.read("axle1-left", what::hub_temperature, "[degF]", {{"", "150"}});
    yard.read("axle1-right", what::hub_temperature, "[degF]", {{"", "212"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    REQUIRE(a.worst.size() == 1);
    CHECK(a.reason()->place == Place::corner(1, Side::right));
}

TEST_CASE("B24 overrun: a wheel that push does not brake: do not tow") {
    Yard yard = overrun_yard();
    yard.all_good();
    yard.seen(PointId::ovr_line, "axle1-right", "push-none");
    CHECK_OUTCOME(ask(yard), do_not_tow);
}

TEST_CASE("B25 a country without rules: no section of 49 CFR is shown") {
    Yard yard = overrun_yard();
    yard.change_visit([](Visit& v) {
        v.region = "DE";
        v.duty = Duty::private_use;
    });
    yard.all_good();
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    const LawSetting setting = law_setting(yard.job());
    CHECK(source_line(at(a, PointId::drum_shoe, "axle1-left").source, setting) == "No rule entered for DE");
    for (const PointAnswer& p : a.points) CHECK(source_line(p.source, setting).find("49 CFR") == std::string::npos);
}

TEST_CASE("B26 private, lining of 1.2 mm: the same grade, as reference") {
    Yard yard = electric_yard();
    yard.change_visit([](Visit& v) { v.duty = Duty::private_use; });
    yard.all_good();
    yard.read("axle1-left", what::lining_thickness, "mm",
              {{"front shoe, centre", "1.2"}, {"rear shoe, centre", "5.0"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(source_line(a.reason()->source, law_setting(yard.job()))
              .starts_with("Reference (binds commercial trailers): 49 CFR 393.47(d)(2)"));
    Yard carrier = electric_yard();
    carrier.change_visit([](Visit& v) { v.interstate = true; });
    CHECK(source_line(a.reason()->source, law_setting(carrier.job())) == "Law: 49 CFR 393.47(d)(2)");
}

TEST_CASE("B27 a reservoir a fifth full: not before repair, its wording not verified") {
    Yard yard = disc_yard();
    yard.all_good();
    yard.read("actuator", what::reservoir_fill, "1", {{"", "1/5"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    CHECK(source_line(a.reason()->source, law_setting(yard.job())).find("(wording not verified)") != std::string::npos);
}

namespace {
// A mechanic's visit on `opened`, and an owner's look on 2026-11-29.
struct TwoVisits {
    Yard mechanic, owner;
    std::vector<EarlierVisit> earlier;
    explicit TwoVisits(const char* opened) : mechanic(electric_yard(opened, 1)), owner(electric_yard("2026-11-29", 2)) {
        mechanic.all_good();
        owner.change_visit([](Visit& v) { v.role = VisitRole::owner; });
    }
    TowAnswer ask() {
        const EarlierVisit one{&mechanic.job(), true};
        return ask_with(owner, {&one, 1});
    }
};
}  // namespace

TEST_CASE("B28 an owner's look over a mechanic's visit in date: from outside, with the day it was opened") {
    TwoVisits visits("2026-03-01");
    visits.owner.owners_look();
    const TowAnswer a = visits.ask();
    CHECK_OUTCOME(a, nothing_from_outside);
    CHECK(english(a, law_setting(visits.owner.job()))
              .starts_with("Nothing found from outside; brakes and bearings not opened since 2026-03-01, "));
    CHECK(english(a, law_setting(visits.owner.job())).find("nothing found against it") == std::string::npos);
}

TEST_CASE("B29 the same, opened 374 days ago: cannot tell, the same sentence") {
    TwoVisits visits("2025-11-20");
    visits.owner.owners_look();
    const TowAnswer a = visits.ask();
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(english(a, law_setting(visits.owner.job()))
              .find("nothing found from outside; brakes and bearings not opened "
                    "since 2025-11-20") != std::string::npos);
}

TEST_CASE("B30 the same, 13,000 mi since: cannot tell") {
    TwoVisits visits("2026-03-01");
    visits.owner.owners_look();
    visits.owner.read("trailer", what::run_since, "[mi_i]", {{"", "13000"}});
    CHECK_OUTCOME(visits.ask(), cannot_tell);
    TwoVisits shorter("2026-03-01");
    shorter.owner.owners_look();
    shorter.owner.read("trailer", what::run_since, "[mi_i]", {{"", "11000"}});
    CHECK_OUTCOME(shorter.ask(), nothing_from_outside);
}

TEST_CASE("B31 reflectors marked 'not needed' are no answer: cannot tell") {
    TwoVisits visits("2026-03-01");
    visits.owner.leave_out(PointId::lamp_refl);
    visits.owner.owners_look();
    StepMark mark;
    mark.id = {visits.owner.id()};
    mark.procedure = "owner";
    mark.step = "P3";
    mark.place = Place::at(Station::trailer);
    mark.word = StepWord::not_needed;
    mark.reason = "none on this trailer";
    mark.at = visits.owner.now();
    mark.by = "A. Tester";
    visits.owner.put(mark);
    const TowAnswer a = visits.ask();
    CHECK_OUTCOME(a, cannot_tell);
    CHECK_FALSE(at(a, PointId::lamp_refl, "lights").known);
}

TEST_CASE("B32 tread read 101 days ago: cannot tell") {
    Yard before = disc_yard("2026-08-20", 1), now = disc_yard("2026-11-29", 2);
    before.all_good();
    now.leave_out(PointId::tire_tread);
    now.all_good();
    const EarlierVisit one{&before.job(), true};
    const TowAnswer a = ask_with(now, {&one, 1});
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(a.open.size() == 4);
    CHECK(at(a, PointId::tire_tread, "axle1-left").fact.id == FactId::ran_out);
    Yard later = disc_yard("2026-08-30", 1);
    later.all_good();
    const EarlierVisit in_date{&later.job(), true};
    CHECK_OUTCOME(ask_with(now, {&in_date, 1}), nothing_against);  // the 91st day
}

TEST_CASE("B33 pressures good, then loaded: cannot tell") {
    Yard yard = disc_yard();
    yard.all_good();
    yard.at("11:00");
    yard.event(EventKind::loaded);
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::tire_press, "axle1-left").fact.id == FactId::ended_by_event);
    CHECK(a.trip_check_due);
}

TEST_CASE("B34 a coupler rated below the trailer: repair; weighed over it: do not tow") {
    Yard yard = disc_yard();
    yard.change_trailer([](Trailer& t) { t.coupler_rating = *make_amount("5000", kPound); });
    yard.all_good();
    CHECK_OUTCOME(ask(yard), not_before_repair);
    yard.weigh({"2500", "2500"}, "600");
    CHECK_OUTCOME(ask(yard), do_not_tow);
}

TEST_CASE("B35 surge at 14,000 lb: a ratio of 1.25 is allowed, 1.2501 is not") {
    for (const auto& [tow, outcome] : {std::pair("11200", nothing_against), std::pair("11199", do_not_tow)}) {
        Yard yard = disc_yard();
        yard.change_trailer([](Trailer& t) {
            t.gvwr = *make_amount("14000", kPound);
            t.coupler_rating = *make_amount("14000", kPound);
        });
        yard.change_visit([&](Visit& v) { v.tow->gvwr = *make_amount(tow, kPound); });
        yard.all_good();
        CHECK_OUTCOME(ask(yard), outcome);
    }
}

TEST_CASE("B36 17.4 % on a gooseneck and on a ball") {
    for (const auto& [coupler, grade] :
         {std::pair(CouplerKind::gooseneck_ball, Grade::serviceable), std::pair(CouplerKind::ball, Grade::watch)}) {
        Yard yard = disc_yard();
        yard.change_trailer([&](Trailer& t) {
            t.coupler = coupler;
            t.gvwr = *make_amount("8000", kPound);
        });
        yard.all_good();
        yard.weigh({"3100", "3050"}, "1300");
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, nothing_against);
        CHECK(at(a, PointId::load_tongue, "trailer").grade == grade);
    }
}

TEST_CASE("B37 a renewed hose: nothing against it once what the work opened is answered") {
    Yard yard = disc_yard();
    yard.all_good();
    yard.find("axle1-left", "brake hose", "chafed", Grade::do_not_tow, Outcome::repaired);
    CHECK_OUTCOME(ask(yard), do_not_tow);
    CHECK_OUTCOME(ask(yard, State::found), do_not_tow);
    yard.read("actuator", what::pressure_hold, kPsi, {{"start, after settling", "1000"}, {"after 5 min", "985"}},
              Stage::after);
    yard.level("actuator", "brake fluid", LevelMark::below, LevelMark::at);
    CHECK_OUTCOME(ask(yard), do_not_tow);  // the wheels were not tried since
    for (const Place& corner : yard.trailer().corners())
        yard.look(PointId::brk_works, corner.text().c_str(), LookResult::good, {}, Stage::after);
    CHECK_OUTCOME(ask(yard), nothing_against);
    CHECK_OUTCOME(ask(yard, State::found), do_not_tow);
}

TEST_CASE("B39 two figures for one rotor that contradict each other: cannot tell; beyond both it is beyond") {
    Yard yard = disc_yard();
    yard.all_good();
    yard.maker(what::rotor_thickness, Bound::at_least, "21.0", "mm", FigureOrigin::stamped);
    const auto rotor = [&](const char* mm) {
        yard.read("axle1-left", what::rotor_thickness, "mm", {{"0°", mm}, {"90°", mm}, {"180°", mm}, {"270°", mm}});
        return ask(yard);
    };
    const TowAnswer a = rotor("20.5");
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::disc_rotor, "axle1-left").fact.id == FactId::figures_contradict);
    CHECK_OUTCOME(rotor("19.5"), do_not_tow);
}

TEST_CASE("B40 a step marked done without the reading is no answer") {
    Yard yard = disc_yard();
    yard.leave_out(PointId::disc_pad, "axle2-right");
    yard.all_good();
    yard.done("disc", "D5", "axle2-right");
    yard.look(PointId::wheel_seat, "axle2-right");
    yard.torque("axle2-right");
    yard.look(PointId::wheel_nuts, "axle2-right");
    yard.look(PointId::brk_works, "axle2-right");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK_FALSE(at(a, PointId::disc_pad, "axle2-right").known);
}

TEST_CASE(
    "B41 pads below the maker's figure, two essential points not asked: not before repair, and so many not known") {
    Yard yard = disc_yard();
    yard.leave_out(PointId::cpl_chain);
    yard.leave_out(PointId::load_safe);
    yard.all_good();
    yard.maker(what::pad_thickness, Bound::at_least, "3.0", "mm");
    yard.read("axle1-left", what::pad_thickness, "mm", {{"inner, leading end", "2.8"}, {"outer, leading end", "5.0"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    CHECK(a.essential_open == 2);
    CHECK(english(a, law_setting(yard.job())).ends_with(" And 2 essential points not known."));
}

TEST_CASE("B42 a drum at its cast figure and beyond it") {
    for (const auto& [inches, outcome] : {std::pair("12.090", nothing_against), std::pair("12.095", do_not_tow)}) {
        Yard yard = drum_yard();
        yard.leave_out(PointId::drum_drum, "axle1-left");
        yard.all_good();
        yard.read("axle1-left", what::drum_diameter, kInch,
                  {{"mouth, 0°", inches}, {"mouth, 90°", inches}, {"deep, 0°", inches}, {"deep, 90°", inches}});
        yard.look(PointId::wheel_seat, "axle1-left");
        yard.torque("axle1-left");
        yard.look(PointId::wheel_nuts, "axle1-left");
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::drum_drum, "axle1-left").grade == Grade::watch);
    }
}

TEST_CASE("B43 the maker's range of play replaces practice") {
    for (const auto& [most, outcome] : {std::pair("0.005", not_before_repair), std::pair("0.010", nothing_against)}) {
        Yard yard = disc_yard();
        yard.all_good();
        yard.maker(what::end_play, Bound::at_least, "0.001", kInch);
        yard.maker(what::end_play, Bound::at_most, most, kInch);
        yard.read("axle1-left", what::end_play, kInch, {{"", "0.008"}});
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::hub_play, "axle1-left").grade == Grade::serviceable);
    }
}

TEST_CASE("B44 play of 0.015 and of 0.030 in without a maker's figure") {
    for (const auto& [play, outcome] : {std::pair("0.015", nothing_against), std::pair("0.030", not_before_repair)}) {
        Yard yard = disc_yard();
        yard.all_good();
        yard.read("axle1-left", what::end_play, kInch, {{"", play}});
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::hub_play, "axle1-left").grade == Grade::watch);
    }
}

TEST_CASE("B45 fenders to 84 in and no identification lamps: not before repair") {
    Yard yard = disc_yard();
    yard.change_trailer([](Trailer& t) { t.width = *make_amount("84", kInch); });
    yard.leave_out(PointId::lamp_wide);
    yard.all_good();
    CHECK_OUTCOME(ask(yard), cannot_tell);
    std::vector<LookItem> items;
    for (const LookEntry& entry : point(PointId::lamp_wide).entries)
        items.push_back({std::string(entry.id), entry.id.starts_with("id-") ? LookResult::bad : LookResult::good});
    yard.look(PointId::lamp_wide, "lights", LookResult::bad, items);
    CHECK_OUTCOME(ask(yard), not_before_repair);
}

TEST_CASE("B46 a 1,500 lb utility trailer without brakes: nothing against it, your state decides") {
    Yard yard = plain_yard("1500");
    yard.change_visit([](Visit& v) { v.region.clear(); });
    yard.all_good();
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::brk_need, "axle1-left").grade == Grade::watch);
    CHECK(english(at(a, PointId::brk_need, "axle1-left").fact).find("your state decides") != std::string::npos);
}

TEST_CASE("B47 brakes that are fitted must work, required or not: do not tow") {
    Yard yard({an_axle(BrakeKind::electric_drum)}, Actuation::electric);
    yard.change_trailer([](Trailer& t) { t.gvwr = *make_amount("2500", kPound); });
    yard.change_visit([](Visit& v) { v.duty = Duty::private_use; });
    yard.all_good();
    yard.seen(PointId::brk_works, "axle1-left", "dead");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(a.reason()->source.text == "49 CFR 393.48(a)");
}

TEST_CASE("B48 a carrier's lift axle without brakes: not before repair") {
    Yard yard({an_axle(BrakeKind::electric_drum), an_axle(BrakeKind::none)}, Actuation::electric);
    yard.change_trailer([](Trailer& t) { t.axles[1].lift = true; });
    yard.all_good();
    CHECK_OUTCOME(ask(yard), not_before_repair);
}

TEST_CASE("B49 U-bolts undone, no torque after: cannot tell") {
    Yard yard = disc_yard();
    yard.all_good();
    yard.done("running-gear", "G3", "axle1-left");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK_FALSE(at(a, PointId::susp_ubolt, "axle1-left").known);
    yard.torque("axle1-left", "U-bolts");
    CHECK_OUTCOME(ask(yard), nothing_against);
}

TEST_CASE("B50 92 psi hot after town driving: cannot tell") {
    Yard yard = disc_yard();
    yard.leave_out(PointId::tire_press, "axle1-left");
    yard.all_good();
    yard.read("axle1-left", what::pressure_hot, kPsi, {{"", "92"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::tire_press, "axle1-left").fact.id == FactId::pressure_hot);
}

TEST_CASE("B51 12.0 V at rest, but held for 15 minutes with 10.8 V at the end: nothing against it, to be watched") {
    Yard yard = electric_yard();
    yard.leave_out(PointId::away_batt);
    yard.all_good();
    yard.read("actuator", what::battery_volts, "V", {{"rest", "12.0"}, {"after 15 min", "10.8"}});
    yard.look(PointId::away_batt, "actuator");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::away_batt, "actuator").grade == Grade::watch);
}
