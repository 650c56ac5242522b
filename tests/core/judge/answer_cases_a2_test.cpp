// What went wrong once, the whole trailer: each case by its number, through edits to the answer. The yard is good in
// every other respect, on 2026-11-29, a carrier's.
#include "core/judge/fact_english.h"
#include "tests/core/judge/answer_yard.h"

using namespace cotter;
using namespace cotter::test;
using enum TowOutcome;

namespace {
bool open_at(const TowAnswer& a, PointId point, const char* place) {
    return !at(a, point, place).known && at(a, point, place).essential;
}
}  // namespace

TEST_CASE("A19 7,000 lb and no brakes at all: do not tow") {
    AnswerYard yard({an_axle(BrakeKind::none), an_axle(BrakeKind::none)}, Actuation::none);
    yard.all_good();
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(a.reason()->fact.id == FactId::brakes_required);
    CHECK(a.reason()->source.text == "49 CFR 393.42(a)");
}

TEST_CASE("A20 one axle without brakes: by duty and state") {
    const auto answer = [](Duty duty, const char* region) {
        AnswerYard yard({an_axle(BrakeKind::electric_drum), an_axle(BrakeKind::none)}, Actuation::electric);
        yard.change_visit([&](Visit& v) {
            v.duty = duty;
            v.region = region;
        });
        yard.all_good();
        return std::pair(ask(yard), yard.job());
    };
    CHECK_OUTCOME(answer(Duty::carrier, "US-OH").first, not_before_repair);
    CHECK_OUTCOME(answer(Duty::private_use, "US-VA").first, nothing_against);
    const auto [pennsylvania, job] = answer(Duty::private_use, "US-PA");
    CHECK_OUTCOME(pennsylvania, not_before_repair);
    CHECK(source_line(pennsylvania.reason()->source, law_setting(job)).ends_with("(section seen in part)"));
    CHECK_OUTCOME(answer(Duty::private_use, "").first, cannot_tell);
    CHECK(answer(Duty::private_use, "").first.reason()->fact.id == FactId::idler_state_unknown);
}

TEST_CASE("A21 what nobody looked at is named, each at its place") {
    AnswerYard yard = disc_yard();
    for (const PointId p :
         {PointId::cpl_fit, PointId::cpl_wear, PointId::cpl_chain, PointId::lamp_base, PointId::lamp_refl,
          PointId::wheel_nuts, PointId::tire_face, PointId::tire_press, PointId::hub_leak, PointId::act_leak,
          PointId::frame_main, PointId::frame_clear, PointId::load_safe})
        yard.leave_out(p);
    yard.all_good();
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    for (const char* corner : {"axle1-left", "axle1-right", "axle2-left", "axle2-right"})
        for (const PointId p : {PointId::wheel_nuts, PointId::tire_face, PointId::tire_press, PointId::hub_leak})
            CHECK(open_at(a, p, corner));
    CHECK(open_at(a, PointId::cpl_chain, "drawbar"));
    CHECK(open_at(a, PointId::lamp_base, "lights"));
    CHECK(open_at(a, PointId::load_safe, "trailer"));
    CHECK(a.open.size() == 4 * 4 + 9);
    CHECK(english(a, law_setting(yard.job())).ends_with(" And 24 more things not known."));
}

TEST_CASE("A22 a renewed hub cap does not open the bearing's play again") {
    AnswerYard yard({an_axle(BrakeKind::hydraulic_disc), an_axle(BrakeKind::hydraulic_disc)}, Actuation::surge);
    yard.change_trailer([](Trailer& t) {
        for (Axle& axle : t.axles) axle.hub = HubKind::oil_bath;
    });
    yard.all_good();
    yard.read("axle1-left", what::end_play, kInch, {{"", "0.004"}});
    yard.find("axle1-left", "hub cap", "cracked", Grade::repair, Outcome::repaired);
    TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, not_before_repair);
    CHECK(a.reason()->fact.id == FactId::repaired_not_seen);
    yard.look(PointId::hub_leak, "axle1-left", LookResult::good, {}, Stage::after);
    yard.level("axle1-left", "hub oil", LevelMark::below, LevelMark::at);
    a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::hub_play, "axle1-left").known);
}

TEST_CASE("A23 22.5 % on a ball: nothing against it, to be watched") {
    AnswerYard yard = disc_yard();
    yard.change_trailer([](Trailer& t) {
        t.gvwr = *make_amount("14000", kPound);
        t.coupler_rating = *make_amount("20000", kPound);
        for (Axle& axle : t.axles) axle.gawr = *make_amount("7000", kPound);
    });
    yard.change_visit([](Visit& v) { v.tow->gvwr = *make_amount("14000", kPound); });
    yard.leave_out(PointId::tire_id);
    yard.all_good();
    for (const Place& corner : yard.trailer().corners()) {
        Sidewall s = yard.sidewall_record(corner.text().c_str());
        s.index_single = 124;
        yard.put(s);
    }
    yard.weigh({"5000", "5000"}, "2900");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    CHECK(at(a, PointId::load_tongue, "trailer").grade == Grade::watch);
    CHECK(english(at(a, PointId::load_tongue, "trailer").fact).find("22.5") != std::string::npos);
}

TEST_CASE("A24 surge, 8,600 lb on 7,000 behind 4,000: do not tow, for two reasons") {
    AnswerYard yard = disc_yard();
    yard.change_visit([](Visit& v) { v.tow->gvwr = *make_amount("4000", kPound); });
    yard.all_good();
    yard.weigh({"3900", "3800"}, "900");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(at(a, PointId::load_gross, "trailer").grade == Grade::do_not_tow);
    CHECK(at(a, PointId::act_surge, "actuator").fact.id == FactId::surge_ratio_over);
    CHECK(english(at(a, PointId::act_surge, "actuator").fact).find("2.15") != std::string::npos);
}

TEST_CASE("A25 38 ft behind a two-axle truck with a light trailer: beyond its 35 ft") {
    AnswerYard yard = disc_yard();
    yard.change_trailer([](Trailer& t) { t.gvwr = *make_amount("2990", kPound); });
    yard.all_good();
    yard.read("trailer", what::stop_distance, "[ft_i]", {{"", "38"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(source_line(a.reason()->source, law_setting(yard.job())).find("(section seen in part)") != std::string::npos);
    yard.change_trailer([](Trailer& t) { t.gvwr = *make_amount("7000", kPound); });
    CHECK_OUTCOME(ask(yard), nothing_against);
}

TEST_CASE("A26 a rear guard is not asked of a 3,500 lb trailer") {
    AnswerYard yard = plain_yard("3500");
    yard.change_visit([](Visit& v) {
        v.duty = Duty::carrier;
        v.interstate = true;
    });
    yard.change_trailer([](Trailer& t) {
        t.axles = {an_axle(BrakeKind::electric_drum)};
        t.actuation = Actuation::electric;
    });
    yard.all_good();
    yard.read("trailer", what::guard_height, kInch, {{"", "24"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, nothing_against);
    for (const PointAnswer& p : a.points) CHECK(p.point != PointId::frame_guard);
}

TEST_CASE("A29 nuts clicked round instead of across: cannot tell, and the order is named") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::wheel_torque, "axle1-left");
    yard.all_good();
    yard.change_trailer([](Trailer& t) { t.axles[0].studs = 0; });
    Torque t = yard.torque_record("axle1-left");
    t.fasteners = 8;
    for (Pass& pass : t.passes) pass.tightened = {1, 2, 3, 4, 5, 6, 7, 8};
    yard.put(t);
    yard.look(PointId::wheel_nuts, "axle1-left");
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(english(at(a, PointId::wheel_torque, "axle1-left").fact).find("1-2-3-4-5-6-7-8") != std::string::npos);
}

TEST_CASE("A30 a wheel-nut target of 120 lb-in is a slip until it is confirmed: cannot tell") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::wheel_torque, "axle1-left");
    yard.all_good();
    Torque t = yard.torque_record("axle1-left");
    t.target = *make_amount("120", "[lbf_av].[in_i]");
    for (Pass& pass : t.passes) pass.setting = *t.target;
    yard.put(t);
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK(at(a, PointId::wheel_torque, "axle1-left").fact.id == FactId::torque_unit);
}

TEST_CASE("A31 a wheel that was off without torque: cannot tell, torque or not is not the cause") {
    AnswerYard yard = disc_yard();
    yard.leave_out(PointId::wheel_torque, "axle2-left");
    yard.all_good();
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    REQUIRE(a.open.size() == 1);
    CHECK(a.points[a.open[0]].point == PointId::wheel_torque);
    CHECK(a.points[a.open[0]].place == Place::corner(2, Side::left));
    // A torque alone says nothing of the wheel having been off: no seat, no nuts are asked for again.
    AnswerYard plain = plain_yard("1500");
    plain.all_good();
    plain.torque("axle1-left");
    CHECK_OUTCOME(ask(plain), nothing_against);
}

TEST_CASE("A32 an owner's look: one pressure of four, no pull: cannot tell, the rest named") {
    AnswerYard yard = electric_yard();
    yard.change_visit([](Visit& v) { v.role = VisitRole::owner; });
    yard.leave_out(PointId::tire_press);
    yard.leave_out(PointId::away_pull);
    yard.leave_out(PointId::away_15);
    yard.owners_look();
    yard.read("axle1-left", what::pressure_cold, kPsi, {{"", "80"}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, cannot_tell);
    CHECK_FALSE(open_at(a, PointId::tire_press, "axle1-left"));
    for (const char* corner : {"axle1-right", "axle2-left", "axle2-right"})
        CHECK(open_at(a, PointId::tire_press, corner));
    CHECK(open_at(a, PointId::away_pull, "axle1-left"));
    CHECK(open_at(a, PointId::away_15, "trailer"));
    CHECK(open_at(a, PointId::hub_play, "axle1-left"));
    CHECK(open_at(a, PointId::drum_shoe, "axle1-left"));
}

TEST_CASE("A33 an owner's 80, 9, 9, 9 psi without a placard: do not tow") {
    AnswerYard yard = electric_yard();
    yard.change_visit([](Visit& v) { v.role = VisitRole::owner; });
    yard.change_trailer([](Trailer& t) { t.tyre_pressure.reset(); });
    yard.leave_out(PointId::tire_press);
    yard.leave_out(PointId::tire_id);
    yard.owners_look();
    const char* corners[] = {"axle1-left", "axle1-right", "axle2-left", "axle2-right"};
    const char* values[] = {"80", "9", "9", "9"};
    for (int i = 0; i < 4; ++i) yard.read(corners[i], what::pressure_cold, kPsi, {{"", values[i]}});
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(a.worst.size() == 3);
}

TEST_CASE("A34 an owner's 7,000 lb without brakes, no state: do not tow, as reference") {
    AnswerYard yard({an_axle(BrakeKind::none), an_axle(BrakeKind::none)}, Actuation::none);
    yard.change_visit([](Visit& v) {
        v.role = VisitRole::owner;
        v.duty = Duty::private_use;
        v.region.clear();
    });
    yard.owners_look();
    const TowAnswer a = ask(yard);
    CHECK_OUTCOME(a, do_not_tow);
    CHECK(source_line(a.reason()->source, law_setting(yard.job())) ==
          "Reference (binds commercial trailers): 49 CFR 393.42(a); your state decides");
}

TEST_CASE("A42 three more things not known") {
    CHECK(and_more(3, "more thing not known", "more things not known") == " And 3 more things not known.");
    CHECK(and_more(1, "more thing not known", "more things not known") == " And 1 more thing not known.");
    CHECK(and_more(0, "more thing not known", "more things not known").empty());
    AnswerYard yard = disc_yard();
    for (const PointId p : {PointId::cpl_fit, PointId::cpl_wear, PointId::cpl_chain, PointId::lamp_base})
        yard.leave_out(p);
    yard.all_good();
    CHECK(english(ask(yard), law_setting(yard.job())) ==
          "Cannot tell: drawbar, Coupled: right ball, closed and locked: not looked at. And 3 more things not known.");
}
