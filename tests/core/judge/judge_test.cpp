// Whole jobs judged: the answer, its reasons, and what cannot be told.
#include "core/judge/judge_job.h"

#include <algorithm>

#include "core/trade/reading_spec.h"
#include "tests/core/judge/answer_yard.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {
Summary judged(const AnswerYard& yard) {
    Instant noon = yard.visit().opened;
    noon.unix_s += 5 * 3600;
    return judge_job(yard.job(), shipped_limits(), {{}, noon});
}
}  // namespace

TEST_CASE("judge: may it be towed? the answer is the engine's, and the reason comes first") {
    AnswerYard yard = disc_yard();
    CHECK(judged(yard).towing == Towing::cannot_tell);
    CHECK(judged(yard).answer.starts_with("Cannot tell: "));
    yard.all_good();
    CHECK(judged(yard).towing == Towing::nothing_against);
    CHECK(judged(yard).answer.starts_with("Nothing found against it, "));
    CHECK(judged(yard).caveat.starts_with("Cotter certifies nothing."));
    yard.find("axle2-left", "rotor", "scored in rings", Grade::repair);
    CHECK(judged(yard).towing == Towing::after_repair);
    yard.find("axle1-right", "wheel nuts", "one missing", Grade::do_not_tow);
    const Summary s = judged(yard);
    CHECK(s.towing == Towing::no);
    CHECK(s.answer ==
          "Do not tow: axle 1 right, Every wheel nut or bolt there and tight: wheel nuts: one missing (seen and graded "
          "by A. Tester).");
    REQUIRE(at_place(s.now, Place::corner(1, Side::right)) != nullptr);
    CHECK(at_place(s.now, Place::corner(1, Side::right))->grade == Grade::do_not_tow);
    CHECK(at_place(s.now, Place::corner(2, Side::left))->grade == Grade::repair);
    CHECK(s.now.grade == Grade::do_not_tow);
}

TEST_CASE("judge: the answer counts what else there is in English: 1 more thing, 12 more things, 2 more reasons") {
    AnswerYard yard = disc_yard();
    for (const PointId p : {PointId::cpl_wear, PointId::cpl_chain}) yard.leave_out(p);
    yard.all_good();
    CHECK(judged(yard).answer.ends_with(" And 1 more thing not known."));
    CHECK(judged(disc_yard()).answer.ends_with(" more things not known."));
    for (const char* defect : {"loose", "broken", "worn"})
        yard.find("axle1-left", "toolbox", defect, Grade::do_not_tow);
    CHECK(judged(yard).answer.ends_with(" And 2 more reasons."));
    yard.remove(yard.job().all<Finding>().back().id.uuid);
    CHECK(judged(yard).answer.ends_with(" And 1 more reason."));
}

TEST_CASE("judge: what would settle an unknown is told by kind, not by words") {
    JudgeBench bench;
    bench.trailer().tyre_pressure.reset();
    bench.read("axle1-left", what::pressure_cold, "[psi]", {{"", "80"}});
    bench.read("axle1-left", what::rotor_thickness, "mm", {{"0", "20.2"}});
    const std::vector<Unknown> unknowns = bench.judge().unknowns;
    const auto lacks = [&](std::string_view subject) {
        const auto at = std::find_if(unknowns.begin(), unknowns.end(), [&](const Unknown& u) {
            return u.place == Place::corner(1, Side::left) && u.subject == subject;
        });
        REQUIRE(at != unknowns.end());
        return at->lacks;
    };
    CHECK(lacks("Cold tire pressure") == Lack::placard);
    CHECK(lacks(what::rotor_thickness) == Lack::makers_figure);  // the reading's own name: the figure is asked for it
    CHECK(lacks("Pad thickness") == Lack::reading);
}

TEST_CASE(
    "judge: a repaired part stands against it until the new one is measured, and what its work opened is answered") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::disc_pad, "axle1-left");
    yard.all_good();
    yard.read("axle1-left", what::pad_thickness, "mm", {{"inner", "1.2"}, {"outer", "6.1"}});
    CHECK(judged(yard).towing == Towing::no);
    yard.find("axle1-left", "pads", "thin and tapered", Grade::do_not_tow, Outcome::repaired);
    CHECK(judged(yard).towing == Towing::no);
    yard.read("axle1-left", what::pad_thickness, "mm", {{"inner", "9.8"}, {"outer", "9.9"}}, Stage::after);
    yard.look(PointId::brk_parts, "axle1-left", LookResult::good, {}, Stage::after);
    yard.look(PointId::wheel_seat, "axle1-left", LookResult::good, {}, Stage::after);
    yard.torque("axle1-left");
    yard.look(PointId::wheel_nuts, "axle1-left", LookResult::good, {}, Stage::after);
    yard.look(PointId::brk_works, "axle1-left", LookResult::good, {}, Stage::after);
    CHECK(judged(yard).answer.find("repaired, but not answered since: Brake test at walking pace") !=
          std::string::npos);
    yard.look(PointId::brk_drive, "trailer", LookResult::good, {}, Stage::after);
    const Summary s = judged(yard);
    CHECK(s.towing == Towing::nothing_against);
    CHECK(s.tow_found.outcome == TowOutcome::do_not_tow);
    CHECK(s.found.grade == Grade::do_not_tow);
}

TEST_CASE("judge: not measured and not accessible never count as OK") {
    for (const Taken taken : {Taken::not_measured, Taken::not_accessible}) {
        AnswerYard yard = disc_yard();
        yard.leave_out(PointId::hub_play, "axle1-left");
        yard.all_good();
        Reading r;
        r.id = {yard.id()};
        r.place = Place::corner(1, Side::left);
        r.what = what::end_play;
        r.taken = taken;
        r.reason = "the wheel would not come off";
        r.at = yard.now();
        r.by = "A. Tester";
        yard.put(r);
        const Summary s = judged(yard);
        CHECK(s.towing == Towing::cannot_tell);
        CHECK(s.answer.find("the wheel would not come off") != std::string::npos);
    }
}

TEST_CASE("judge: inner and outer pad may come as two readings; the later of the same point counts") {
    JudgeBench bench;
    bench.read("axle1-left", what::pad_thickness, "mm", {{"inner", "1.2"}});
    bench.read("axle1-left", what::pad_thickness, "mm", {{"outer", "8.0"}});
    CHECK(worst_on(bench.judge().now, what::pad_thickness) == Grade::do_not_tow);
    bench.read("axle1-left", what::pad_thickness, "mm", {{"inner", "8.2"}}).note = "misread before";
    CHECK(worst_on(bench.judge().now, what::pad_thickness) == Grade::serviceable);
}

TEST_CASE("judge: an item of a periodic inspection that is not OK calls for repair") {
    JudgeBench bench;
    bench.complete();
    bench.job.all<Inspection>().push_back({});
    bench.job.all<InspectionAnswer>().push_back(
        {{numbered(7000)}, "5", Answer::not_ok, "left lamp out", {}, "A. Tester"});
    CHECK(bench.judge().towing == Towing::after_repair);
    CHECK(bench.judge().answer.find("item 5 is not OK: left lamp out") != std::string::npos);
}

TEST_CASE("judge: bad input gives 'cannot tell' with its reason") {
    JudgeBench bench;
    bench.complete();
    const auto because = [&](std::string_view subject) {
        const auto all = unknowns_on(bench.judge().now, subject);
        return all.empty() ? std::string() : all.front().because;
    };
    Reading& play = bench.read("axle1-left", what::end_play, "", {{"", "0.004"}});
    play.at.unix_s += 60;
    CHECK(because(what::end_play) == "the unit is missing or not known");
    play.unit = "kPa";
    CHECK(because(what::end_play) == "0.004 kPa is in a unit of something else");
    play.unit = "[in_i]";
    play.points[0].value = *Number::parse("4");
    CHECK(because(what::end_play) == "4 in is not plausible: look at the number and its unit again");
    play.points[0].value = *Number::parse("0.004");
    CHECK(because(what::end_play).empty());
    bench.job.all<Reading>().back().at.unix_s += 90 * 86400;
    CHECK(because(what::end_play).starts_with("dated in the future"));
    bench.read("axle1-left", what::tyre_date, "1", {{"", "6019"}});
    CHECK(because(what::tyre_age).find("the year 2019 has no week 60") != std::string::npos);
    bench.read("axle1-right", what::tyre_date, "1", {{"", "0139"}});
    CHECK(unknowns_on(bench.judge().now, what::tyre_age).at(1).because.find("in the future") != std::string::npos);
}

TEST_CASE("judge: a missing mate is said, not guessed") {
    JudgeBench bench;
    bench.read("axle1-left", what::pad_thickness, "mm", {{"inner", "8.0"}});
    const Summary s = bench.judge();
    REQUIRE(unknowns_on(s.now, what::pad_imbalance).size() == 1);
    CHECK(unknowns_on(s.now, what::pad_imbalance)[0].because == "the outer pad was not measured");
    CHECK(unknowns_on(s.now, what::axle_imbalance)[0].because == "the right side has no reading to compare with");
}

TEST_CASE("judge: imbalance names its likely cause with the arithmetic") {
    JudgeBench bench;
    bench.read("axle1-left", what::pad_when_new, "mm", {{"", "10.0"}});
    bench.read("axle1-left", what::pad_thickness, "mm", {{"inner", "3.2"}, {"outer", "6.9"}});
    bench.read("axle1-right", what::pad_thickness, "mm", {{"inner", "6.1"}, {"outer", "5.8"}});
    const auto inner = reasons_on(bench.judge().now, what::pad_imbalance);
    REQUIRE(inner.size() == 2);
    CHECK(inner[0].grade == Grade::watch);
    CHECK(inner[0].steps.at(1) == "worn from 10.0 mm: 6.8 mm and 3.1 mm, imbalance 75 %");
    CHECK(inner[0].todo.starts_with("inner pad worn more: the caliper does not float"));
    CHECK(inner[1].grade == Grade::serviceable);
    const auto sides = reasons_on(bench.judge().now, what::axle_imbalance);
    REQUIRE(sides.size() == 1);
    CHECK(sides[0].says.starts_with("2.6 mm"));
    CHECK(sides[0].axle == 1);
    CHECK(sides[0].todo.starts_with("left side worn more"));
}

TEST_CASE("judge: rotor against its stamped figure, cut and variation") {
    JudgeBench bench;
    const auto rotor = [&] {
        return &bench.read("axle1-left", what::rotor_thickness, "mm",
                           {{"0", "20.62"},
                            {"45", "20.64"},
                            {"90", "20.66"},
                            {"135", "20.67"},
                            {"180", "20.65"},
                            {"225", "20.63"},
                            {"270", "20.62"},
                            {"315", "20.64"}});
    };
    rotor();
    CHECK(unknowns_on(bench.judge().now, what::rotor_thickness)[0].because ==
          "nothing to hold 20.62 mm against: read the figure on the part, or enter the maker's");
    CHECK(worst_on(bench.judge().now, what::rotor_variation) == Grade::watch);  // never worse: cars' figures
    bench.maker(what::rotor_thickness, Bound::more_than, "20.0", "mm");
    bench.maker(what::rotor_machine_to, Bound::at_least, "20.5", "mm");
    bench.read("axle1-left", what::rotor_cut, "mm", {{"", "0.20"}});
    const Summary s = bench.judge();
    CHECK(worst_on(s.now, what::rotor_thickness) == Grade::serviceable);
    const auto cut = reasons_on(s.now, what::rotor_machine_to);
    REQUIRE(cut.size() == 1);
    CHECK(cut[0].grade == Grade::watch);  // a cut that is only planned keeps no trailer where it is
    CHECK(cut[0].steps.at(0) == "20.62 mm − 2 × 0.20 mm = 20.22 mm");
    MakerLimit stamped = bench.job.all<MakerLimit>().front();
    stamped.origin = FigureOrigin::stamped;
    stamped.value = *make_amount("20.62", "mm");
    bench.job.all<MakerLimit>().front() = stamped;
    CHECK(worst_on(bench.judge().now, what::rotor_thickness) == Grade::do_not_tow);
}

TEST_CASE("judge: runout is not told from end play") {
    JudgeBench bench;
    bench.read("axle1-left", what::rotor_runout, "[in_i]", {{"", "0.004"}});
    CHECK(unknowns_on(bench.judge().now, what::rotor_runout)[0].because ==
          "end play adds straight to runout and was not measured");
    bench.read("axle1-left", what::end_play, "[in_i]", {{"", "0.003"}});
    CHECK(worst_on(bench.judge().now, what::rotor_runout) == Grade::watch);
}

TEST_CASE("judge: one hub hotter than its mates") {
    JudgeBench bench;
    Reading& r = bench.read("trailer", "hub temperature after road test", "Cel",
                            {{"axle 1 left", "54"},
                             {"axle 1 right", "57"},
                             {"axle 2 left", "55"},
                             {"axle 2 right", "88"},
                             {"ambient", "22"}});
    const Summary s = bench.judge();
    const Judgement* hot = at_place(s.now, Place::corner(2, Side::right));
    REQUIRE(hot != nullptr);
    const auto reasons = reasons_on(*hot, what::hub_over_mates);
    REQUIRE(reasons.size() == 2);
    CHECK(reasons[0].grade == Grade::watch);
    CHECK(reasons[0].steps.at(0) ==
          "88 °C − 22 °C of air = 66 K rise; 33 K over the median of its mates, 2.0 times their rise");
    CHECK(reasons[0].steps.at(1).find("shiny metal") != std::string::npos);
    CHECK(worst_on(*at_place(s.now, Place::corner(1, Side::left)), what::hub_over_mates) == Grade::serviceable);
    r.instrument = "contact probe K-1";
    CHECK(reasons_on(bench.judge().now, what::hub_over_mates)[0].steps.size() == 1);
    r.points.pop_back();
    CHECK(unknowns_on(bench.judge().now, what::hub_temperature)[0].because == "the air's temperature was not taken");
}

TEST_CASE("judge: tyres by age, capacity and pressure") {
    JudgeBench bench(BrakeKind::hydraulic_disc, "2026-02-10");
    bench.trailer().tyre_pressure = *make_amount("88", "[psi]");
    for (Axle& axle : bench.trailer().axles) axle.gawr = *make_amount("7000", "[lb_av]");
    bench.read("axle1-left", what::tyre_date, "1", {{"", "3419"}});
    bench.read("axle1-left", what::load_index, "1", {{"", "124"}});
    bench.read("axle1-left", what::pressure_hot, "[psi]", {{"", "92"}}).note = "after an hour at 41 to 55 mph";
    const Summary s = bench.judge();
    CHECK(reasons_on(s.now, what::tyre_age)[0].reading == "6.46 years");
    CHECK(reasons_on(s.now, what::tyre_age)[0].grade == Grade::watch);
    const auto carries = reasons_on(s.now, "tyre capacity");
    REQUIRE(carries.size() == 1);
    CHECK(carries[0].steps.at(0) == "2 × 1600 kg = 3200 kg = 7055 lb");
    CHECK(carries[0].grade == Grade::serviceable);
    CHECK(reasons_on(s.now, what::pressure_hot)[0].steps.at(0) == "92 − 5 = 87 psi, estimated from hot");
    CHECK(worst_on(s.now, what::pressure_hot) == Grade::repair);
    bench.trailer().axles[0].wheels = Wheels::dual;
    bench.trailer().axles[0].gawr = *make_amount("12000", "[lb_av]");
    bench.job.all<Reading>()[1].points[0].value = *Number::parse("118");
    // The index is a single tire's; what each of two carries was not read, so the answer is that nobody can tell.
    CHECK(worst_on(bench.judge().now, "tyre capacity") == Grade::watch);
    CHECK(reasons_on(bench.judge().now, "tyre capacity")[0].says.find("-3.0 %") != std::string::npos);
}

TEST_CASE("judge: pressure hold, fluid and the actuator's class") {
    JudgeBench bench;
    bench.read("actuator", what::pressure_hold, "[psi]", {{"start, after settling", "1000"}, {"after 4 min", "985"}});
    bench.read("actuator", what::line_pressure, "[psi]", {{"", "1000"}});
    bench.read("actuator", what::fluid_boiling, "Cel", {{"", "150"}});
    Level fluid;
    fluid.product = "DOT 4, sealed bottle";
    bench.job.all<Level>().push_back(fluid);
    const Summary s = bench.judge();
    const auto hold = reasons_on(s.now, what::hold_drop);
    REQUIRE(hold.size() == 1);
    CHECK(hold[0].grade == Grade::serviceable);
    CHECK(hold[0].steps.at(0) == "(1000 − 985) ÷ 1000 = 1.5 % in 4 min, 3.75 psi a minute");
    const auto line = reasons_on(s.now, what::line_pressure);
    REQUIRE(line.size() == 1);
    CHECK(line[0].grade == Grade::watch);
    CHECK(line[0].steps.at(0) == "1 − 1000 ÷ 1600 = 37.5 % of the clamp lost");
    CHECK(worst_on(s.now, what::fluid_boiling) == Grade::watch);
}

TEST_CASE("judge: the breakaway battery under load, and its size") {
    JudgeBench bench(BrakeKind::electric_drum);
    bench.read("actuator", what::battery_capacity, "A.h", {{"", "5"}});
    Reading& volts = bench.read("actuator", what::battery_volts, "V", {{"rest", "12.6"}, {"after 15 min", "10.4"}});
    Summary s = bench.judge();
    CHECK(worst_on(s.now, what::battery_volts) == Grade::do_not_tow);
    const auto size = reasons_on(s.now, what::battery_capacity);
    REQUIRE(size.size() == 1);
    CHECK(size[0].grade == Grade::watch);
    CHECK(size[0].says == "5 Ah gives 12 A for 9.5 to 14.0 min; 15 are needed");
    CHECK(size[0].steps.at(0) == "4 magnets, 12.0 A; 15 min take 3.0 Ah, so 5.3 to 7.2 Ah must be printed on it");
    volts = Reading(volts);
    bench.job.all<Reading>().back().points = {{"rest", *Number::parse("12.6")},
                                              {"after 5 min", *Number::parse("11.9")}};
    s = bench.judge();
    CHECK(unknowns_on(s.now, what::battery_volts)[0].because == "the load was taken off after 5 of 15 minutes");
}

TEST_CASE("judge: weights, and surge brakes behind a light vehicle") {
    JudgeBench bench;
    for (Axle& axle : bench.trailer().axles) axle.gawr = *make_amount("7000", "[lb_av]");
    bench.read("trailer", what::axle_weight, "[lb_av]", {{"axle 1", "6240"}, {"axle 2", "6610"}});
    bench.read("trailer", what::tongue_weight, "[lb_av]", {{"", "1480"}});
    Summary s = bench.judge();
    CHECK(worst_on(s.now, what::axle_weight) == Grade::serviceable);
    const auto gross = reasons_on(s.now, "gross weight");
    REQUIRE(gross.size() == 1);
    CHECK(gross[0].grade == Grade::do_not_tow);
    CHECK(gross[0].says == "14330 lb of 14000 lb rated: over by 330 lb (2.4 %)");
    CHECK(reasons_on(s.now, what::tongue_share)[0].reading == "10.3 %");
    bench.trailer().gvwr = *make_amount("14340", "[lb_av]");
    bench.job.all<Reading>()[0].resolution = *Number::parse("10");
    CHECK(worst_on(bench.judge().now, "gross weight") == Grade::watch);  // inside the scale's step: no pass
    bench.trailer().actuation = Actuation::surge;
    bench.trailer().gvwr = *make_amount("12000", "[lb_av]");
    CHECK(unknowns_on(bench.judge().now, "surge brakes").size() == 1);
    bench.read("trailer", what::tow_vehicle_rating, "[lb_av]", {{"", "6857.2"}});
    CHECK(worst_on(bench.judge().now, "surge brakes") == Grade::serviceable);
    bench.job.all<Reading>().back().points[0].value = *Number::parse("6857");
    CHECK(worst_on(bench.judge().now, "surge brakes") == Grade::do_not_tow);
}
