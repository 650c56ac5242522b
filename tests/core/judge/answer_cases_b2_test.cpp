// New cases, hold to battery, each by its number, through edits to the answer. The yard is good in every other respect,
// on 2026-11-29, a carrier's.
#include "core/judge/fact_english.h"
#include "tests/core/judge/answer_yard.h"

using namespace cotter;
using namespace cotter::test;
using enum TowOutcome;

TEST_CASE("B22 a hold that loses 12 %: not before repair") {
    AnswerYard yard = disc_yard();
    yard.all_good();
    yard.read("actuator", what::pressure_hold, kPsi, {{"start, after settling", "1000"}, {"after 5 min", "880"}});
    CHECK_OUTCOME(ask(yard), not_before_repair);
}

TEST_CASE("B23 two hubs, 150 and 212 F: compared with each other, no third is needed") {
    AnswerYard yard({an_axle(BrakeKind::electric_drum)}, Actuation::electric);
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
    AnswerYard yard = overrun_yard();
    yard.all_good();
    yard.seen(PointId::ovr_line, "axle1-right", "push-none");
    CHECK_OUTCOME(ask(yard), do_not_tow);
}

TEST_CASE("B25 a country without rules: no section of 49 CFR is shown") {
    AnswerYard yard = overrun_yard();
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
    AnswerYard yard = electric_yard();
    yard.change_visit([](Visit& v) { v.duty = Duty::private_use; });
    yard.all_good();
    yard.read("axle1-left", what::lining_thickness, "mm",
              {{"front shoe, centre", "1.2"}, {"rear shoe, centre", "5.0"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(source_line(a.reason()->source, law_setting(yard.job()))
              .starts_with("Reference (binds commercial trailers): 49 CFR 393.47(d)(2)"));
    AnswerYard carrier = electric_yard();
    carrier.change_visit([](Visit& v) { v.interstate = true; });
    CHECK(source_line(a.reason()->source, law_setting(carrier.job())) == "Law: 49 CFR 393.47(d)(2)");
}

TEST_CASE("B27 a reservoir a fifth full: not before repair, its wording not verified") {
    AnswerYard yard = disc_yard();
    yard.all_good();
    yard.read("actuator", what::reservoir_fill, "1", {{"", "1/5"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    CHECK(source_line(a.reason()->source, law_setting(yard.job())).find("(wording not verified)") != std::string::npos);
}

namespace {
// A mechanic's visit on `opened`, and an owner's look on 2026-11-29.
struct OwnerAfterMechanic {
    AnswerYard mechanic, owner;
    std::vector<EarlierVisit> earlier;
    explicit OwnerAfterMechanic(const char* opened)
        : mechanic(electric_yard(opened, 1)), owner(electric_yard("2026-11-29", 2)) {
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
    OwnerAfterMechanic visits("2026-03-01");
    visits.owner.owners_look();
    const TowAnswer a = visits.ask();
    CHECK_OUTCOME(a, nothing_from_outside);
    CHECK(english(a, law_setting(visits.owner.job()))
              .starts_with("Nothing found from outside; brakes and bearings not opened since 2026-03-01, "));
    CHECK(english(a, law_setting(visits.owner.job())).find("nothing found against it") == std::string::npos);
}

TEST_CASE("B29 the same, opened 374 days ago: cannot tell, the same sentence") {
    OwnerAfterMechanic visits("2025-11-20");
    visits.owner.owners_look();
    const TowAnswer a = visits.ask();
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(english(a, law_setting(visits.owner.job()))
              .find("nothing found from outside; brakes and bearings not opened "
                    "since 2025-11-20") != std::string::npos);
}

TEST_CASE("B30 the same, 13,000 mi since: cannot tell") {
    OwnerAfterMechanic visits("2026-03-01");
    visits.owner.owners_look();
    visits.owner.read("trailer", what::run_since, "[mi_i]", {{"", "13000"}});
    CHECK_OUTCOME(visits.ask(), cannot_tell);
    OwnerAfterMechanic shorter("2026-03-01");
    shorter.owner.owners_look();
    shorter.owner.read("trailer", what::run_since, "[mi_i]", {{"", "11000"}});
    CHECK_OUTCOME(shorter.ask(), nothing_from_outside);
}

TEST_CASE("B31 reflectors marked 'not needed' are no answer: cannot tell") {
    OwnerAfterMechanic visits("2026-03-01");
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
    AnswerYard before = disc_yard("2026-08-20", 1), now = disc_yard("2026-11-29", 2);
    before.all_good();
    now.leave_out(PointId::tire_tread);
    now.all_good();
    const EarlierVisit one{&before.job(), true};
    const TowAnswer a = ask_with(now, {&one, 1});
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(a.open.size() == 4);
    CHECK(at(a, PointId::tire_tread, "axle1-left").fact.id == FactId::ran_out);
    AnswerYard later = disc_yard("2026-08-30", 1);
    later.all_good();
    const EarlierVisit in_date{&later.job(), true};
    CHECK_OUTCOME(ask_with(now, {&in_date, 1}), nothing_against);  // the 91st day
}

TEST_CASE("B33 pressures good, then loaded: cannot tell") {
    AnswerYard yard = disc_yard();
    yard.all_good();
    yard.at("11:00");
    yard.event(EventKind::loaded);
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::tire_press, "axle1-left").fact.id == FactId::ended_by_event);
    CHECK(a.trip_check_due);
}

TEST_CASE("B34 a coupler rated below the trailer: repair; weighed over it: do not tow") {
    AnswerYard yard = disc_yard();
    yard.change_trailer([](Trailer& t) { t.coupler_rating = *make_amount("5000", kPound); });
    yard.all_good();
    CHECK_OUTCOME(ask(yard), not_before_repair);
    yard.weigh({"2500", "2500"}, "600");
    CHECK_OUTCOME(ask(yard), do_not_tow);
}

TEST_CASE("B35 surge at 14,000 lb: a ratio of 1.25 is allowed, 1.2501 is not") {
    for (const auto& [tow, outcome] : {std::pair("11200", nothing_against), std::pair("11199", do_not_tow)}) {
        AnswerYard yard = disc_yard();
        yard.change_trailer([](Trailer& t) {
            t.gvwr = *make_amount("14000", kPound);
            t.coupler_rating = *make_amount("14000", kPound);
        });
        yard.change_visit([&, tow = tow](Visit& v) { v.tow->gvwr = *make_amount(tow, kPound); });
        yard.all_good();
        CHECK_OUTCOME(ask(yard), outcome);
    }
}

TEST_CASE("B36 17.4 % on a gooseneck and on a ball") {
    for (const auto& [coupler, grade] :
         {std::pair(CouplerKind::gooseneck_ball, Grade::serviceable), std::pair(CouplerKind::ball, Grade::watch)}) {
        AnswerYard yard = disc_yard();
        yard.change_trailer([&, coupler = coupler](Trailer& t) {
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
    AnswerYard yard = disc_yard();
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
    AnswerYard yard = disc_yard();
    yard.all_good();
    yard.maker(what::rotor_thickness, Bound::at_least, "21.0", "mm", FigureOrigin::stamped);
    const auto rotor = [&](const char* mm) {
        yard.read("axle1-left", what::rotor_thickness, "mm", {{"0°", mm}, {"90°", mm}, {"180°", mm}, {"270°", mm}});
        yard.back_on("axle1-left");
        return ask(yard);
    };
    const TowAnswer a = rotor("20.5");
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::disc_rotor, "axle1-left").fact.id == FactId::figures_contradict);
    CHECK_OUTCOME(rotor("19.5"), do_not_tow);
}

TEST_CASE("B40 a step marked done without the reading is no answer") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::disc_pad, "axle2-right");
    yard.all_good();
    yard.done("disc", "D5", "axle2-right");
    yard.back_on("axle2-right");
    yard.look(PointId::brk_works, "axle2-right");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK_FALSE(at(a, PointId::disc_pad, "axle2-right").known);
}

TEST_CASE(
    "B41 pads below the maker's figure, two essential points not asked: not before repair, and so many not known") {
    AnswerYard yard = disc_yard();
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
        AnswerYard yard = drum_yard();
        yard.leave_out(PointId::drum_drum, "axle1-left");
        yard.all_good();
        yard.read("axle1-left", what::drum_diameter, kInch,
                  {{"mouth, 0°", inches}, {"mouth, 90°", inches}, {"deep, 0°", inches}, {"deep, 90°", inches}});
        yard.back_on("axle1-left");
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::drum_drum, "axle1-left").grade == Grade::watch);
    }
}

TEST_CASE("B43 the maker's range of play replaces practice") {
    for (const auto& [most, outcome] : {std::pair("0.005", not_before_repair), std::pair("0.010", nothing_against)}) {
        AnswerYard yard = disc_yard();
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
        AnswerYard yard = disc_yard();
        yard.all_good();
        yard.read("axle1-left", what::end_play, kInch, {{"", play}});
        const TowAnswer a = ask(yard);
        CHECK_OUTCOME(a, outcome);
        if (outcome == nothing_against) CHECK(at(a, PointId::hub_play, "axle1-left").grade == Grade::watch);
    }
}

TEST_CASE("B45 fenders to 84 in and no identification lamps: not before repair") {
    AnswerYard yard = disc_yard();
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
    AnswerYard yard = plain_yard("1500");
    yard.change_visit([](Visit& v) { v.region.clear(); });
    yard.all_good();
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::brk_need, "axle1-left").grade == Grade::watch);
    CHECK(english(at(a, PointId::brk_need, "axle1-left").fact).find("your state decides") != std::string::npos);
}

TEST_CASE("B47 brakes that are fitted must work, required or not: do not tow") {
    AnswerYard yard({an_axle(BrakeKind::electric_drum)}, Actuation::electric);
    yard.change_trailer([](Trailer& t) { t.gvwr = *make_amount("2500", kPound); });
    yard.change_visit([](Visit& v) { v.duty = Duty::private_use; });
    yard.all_good();
    yard.seen(PointId::brk_works, "axle1-left", "dead");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(a.reason()->source.text == "49 CFR 393.48(a)");
}

TEST_CASE("B48 a carrier's lift axle without brakes: not before repair") {
    AnswerYard yard({an_axle(BrakeKind::electric_drum), an_axle(BrakeKind::none)}, Actuation::electric);
    yard.change_trailer([](Trailer& t) { t.axles[1].lift = true; });
    yard.all_good();
    CHECK_OUTCOME(ask(yard), not_before_repair);
}

TEST_CASE("B49 U-bolts undone, no torque after: cannot tell") {
    AnswerYard yard = disc_yard();
    yard.all_good();
    yard.done("running-gear", "G3", "axle1-left");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK_FALSE(at(a, PointId::susp_ubolt, "axle1-left").known);
    yard.torque("axle1-left", "U-bolts");
    CHECK_OUTCOME(ask(yard), nothing_against);
}

TEST_CASE("B50 92 psi hot after town driving: cannot tell") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::tire_press, "axle1-left");
    yard.all_good();
    yard.read("axle1-left", what::pressure_hot, kPsi, {{"", "92"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::tire_press, "axle1-left").fact.id == FactId::pressure_hot);
}

TEST_CASE("B51 12.0 V at rest, but held for 15 minutes with 10.8 V at the end: nothing against it, to be watched") {
    AnswerYard yard = electric_yard();
    yard.leave_out(PointId::away_batt);
    yard.all_good();
    yard.read("actuator", what::battery_volts, "V", {{"rest", "12.0"}, {"after 15 min", "10.8"}});
    yard.look(PointId::away_batt, "actuator");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::away_batt, "actuator").grade == Grade::watch);
}
