// What applies to which trailer, and where.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "core/trade/point.h"
#include "core/trade/work_done.h"

using namespace cotter;
using enum PointId;

namespace {

Instant moment(int minute) {
    return {1778763600 + 60 * minute, -300};
}

Trailer trailer_of(std::vector<Axle> axles, Actuation actuation) {
    Trailer t;
    t.axles = std::move(axles);
    for (Axle& axle : t.axles) axle.suspension = Suspension::leaf;
    t.actuation = actuation;
    t.coupler = CouplerKind::ball;
    t.width = *make_amount("78", "[in_i]");
    t.length = *make_amount("20", "[ft_i]");
    t.gvwr = *make_amount("7000", "[lb_av]");
    t.built = "2019-04";
    return t;
}

Axle axle_of(BrakeKind brake, HubKind hub = HubKind::grease, Wheels wheels = Wheels::single) {
    Axle axle;
    axle.brake = brake;
    axle.hub = hub;
    axle.wheels = wheels;
    return axle;
}

struct Case {
    Job job;
    explicit Case(Trailer trailer) {
        job.all<Visit>().emplace_back();
        job.all<Trailer>().push_back(std::move(trailer));
    }
    [[nodiscard]] Layout layout() const { return layout_of(job); }
    [[nodiscard]] std::string where(PointId id) const {
        std::string out;
        for (const Place& place : places_of(point(id), layout())) out += (out.empty() ? "" : " ") + place.text();
        return out;
    }
    void none(std::initializer_list<PointId> ids) const {
        for (const PointId id : ids) {
            CAPTURE(point(id).title);
            CHECK(where(id) == "");
        }
    }
};

Case boat() {
    return Case(trailer_of({axle_of(BrakeKind::hydraulic_drum)}, Actuation::surge));
}
Case tandem_with_idler() {
    return Case(trailer_of({axle_of(BrakeKind::electric_drum, HubKind::oil_bath), axle_of(BrakeKind::none)},
                           Actuation::electric));
}
Case triple_duals() {
    const Axle axle = axle_of(BrakeKind::hydraulic_disc, HubKind::oil_bath, Wheels::dual);
    Trailer t = trailer_of({axle, axle, axle}, Actuation::electric_over_hydraulic);
    t.coupler = CouplerKind::gooseneck_ball;
    return Case(std::move(t));
}
Case air_semi() {
    const Axle axle = axle_of(BrakeKind::air_cam, HubKind::oil_bath, Wheels::dual);
    Trailer t = trailer_of({axle, axle}, Actuation::air);
    for (Axle& a : t.axles) a.suspension = Suspension::air;
    t.coupler = CouplerKind::kingpin;
    t.width = *make_amount("102", "[in_i]");
    t.length = *make_amount("53", "[ft_i]");
    t.gvwr = *make_amount("68000", "[lb_av]");
    return Case(std::move(t));
}

}  // namespace

TEST_CASE("a boat trailer on one axle with hydraulic drums") {
    const Case c = boat();
    CHECK(c.where(drum_shoe) == "axle1-left axle1-right");
    CHECK(c.where(drum_drum) == "axle1-left axle1-right");
    CHECK(c.where(hyd_corner) == "axle1-left axle1-right");
    CHECK(c.where(act_level) == "actuator");
    CHECK(c.where(act_surge) == "actuator");
    CHECK(c.where(tire_tread) == "axle1-left axle1-right");
    CHECK(c.where(plate_gawr) == "axle1-left");
    CHECK(c.where(away_15) == "trailer");
    CHECK(c.where(cpl_chain) == "drawbar");
    CHECK(c.where(lamp_base) == "lights");
    CHECK(c.where(frame_main) == "frame");
    c.none({disc_pad,    disc_rotor,   disc_runout, elec_amps, elec_mag,  ovr_line,   hub_oil,
            tire_dual,   air_kind,     air_stroke,  air_leak,  air_abs,   air_supply, act_power,
            away_batt,   brk_park,     lamp_wide,   lamp_long, susp_tors, susp_air,   susp_slide,
            frame_guard, wheel_torque, wheel_seat,  hub_lock,  hub_heat,  load_gross});
    const Place actuator = Place::at(Station::actuator), trailer = Place::at(Station::trailer);
    CHECK(importance_at(point(use_tow), c.layout(), trailer) == Importance::essential);
    CHECK(importance_at(point(act_hold), c.layout(), actuator) == Importance::wanted);
}

TEST_CASE("a tandem with electric drums and an idler axle") {
    const Case c = tandem_with_idler();
    CHECK(c.where(elec_amps) == "axle1-left axle1-right");
    CHECK(c.where(brk_parts) == "axle1-left axle1-right");
    CHECK(c.where(away_pull) == "axle1-left axle1-right");
    CHECK(c.where(brk_need) == "axle1-left axle2-left");
    CHECK(c.where(hub_oil) == "axle1-left axle1-right");
    CHECK(c.where(hub_play) == "axle1-left axle1-right axle2-left axle2-right");
    CHECK(c.where(away_batt) == "actuator");
    CHECK(c.where(away_cable) == "drawbar");
    c.none({act_level, act_leak, act_fluid, act_hold, act_surge, hyd_corner, disc_pad});
    CHECK(importance_at(point(use_tow), c.layout(), Place::at(Station::trailer)) == Importance::wanted);
}

TEST_CASE("three axles with duals") {
    const Case c = triple_duals();
    CHECK(c.where(tire_tread) ==
          "axle1-left-outer axle1-left-inner axle1-right-outer axle1-right-inner axle2-left-outer axle2-left-inner "
          "axle2-right-outer axle2-right-inner axle3-left-outer axle3-left-inner axle3-right-outer axle3-right-inner");
    CHECK(places_of(point(tire_dual), c.layout()).size() == 6);
    CHECK(places_of(point(disc_pad), c.layout()).size() == 6);
    CHECK(c.where(act_power) == "actuator");
    c.none({drum_shoe, drum_drum, brk_adjust, act_surge});
    const Place touching = Place::corner(1, Side::left, Wheel::inner);
    const auto entries = entries_at(point(tire_face), c.layout(), touching);
    CHECK(std::any_of(entries.begin(), entries.end(), [](const LookEntry* e) { return e->id == "mate"; }));
    const Case single = boat();
    const auto fewer = entries_at(point(tire_face), single.layout(), Place::corner(1, Side::left));
    CHECK(fewer.size() == entries.size() - 1);
}

TEST_CASE("an air-braked semitrailer") {
    Case c = air_semi();
    CHECK(places_of(point(air_stroke), c.layout()).size() == 4);
    CHECK(places_of(point(air_pair), c.layout()).size() == 2);
    CHECK(places_of(point(drum_drum), c.layout()).size() == 4);
    CHECK(c.where(air_abs) == "trailer");
    CHECK(c.where(brk_park) == "trailer");
    CHECK(c.where(lamp_wide) == "lights");
    CHECK(c.where(lamp_long) == "lights");
    CHECK(places_of(point(susp_air), c.layout()).size() == 4);
    c.none({cpl_chain, away_cable, act_level, drum_shoe, disc_pad, frame_guard, susp_leaf});
    // Whether there are spring brakes says the chamber's tag.
    const Place corner = Place::corner(1, Side::left);
    CHECK(applies_at(point(air_spring), c.layout(), corner) == Applies::not_known);
    Chamber chamber;
    chamber.place = corner;
    chamber.spring_brake = Fitted::no;
    c.job.all<Chamber>().push_back(chamber);
    CHECK(applies_at(point(air_spring), c.layout(), corner) == Applies::no);
    c.job.all<Chamber>().back().spring_brake = Fitted::yes;
    CHECK(applies_at(point(air_spring), c.layout(), corner) == Applies::yes);
    // ABS is bound to a date of building.
    Trailer& trailer = c.job.all<Trailer>().front();
    const auto abs = [&] { return applies_at(point(air_abs), c.layout(), Place::at(Station::trailer)); };
    trailer.built = "1998-02";
    CHECK(abs() == Applies::no);
    trailer.built = "1998-03";
    CHECK(abs() == Applies::yes);
    trailer.built = "1998";
    CHECK(abs() == Applies::not_known);
    trailer.built = "1997";
    CHECK(abs() == Applies::no);
    trailer.built = "";
    CHECK(abs() == Applies::not_known);
}

TEST_CASE("the rear guard is a carrier's, from 10,000 lb, by the build date") {
    Case c = air_semi();
    const auto guard = [&] { return applies_at(point(frame_guard), c.layout(), Place::at(Station::trailer)); };
    Visit& visit = c.job.all<Visit>().front();
    Trailer& trailer = c.job.all<Trailer>().front();
    visit.duty = Duty::carrier;
    CHECK(guard() == Applies::yes);
    visit.duty = Duty::farm;
    CHECK(guard() == Applies::no);
    visit.duty = Duty::carrier;
    trailer.gvwr = *make_amount("10000", "[lb_av]");
    CHECK(guard() == Applies::yes);
    trailer.gvwr = *make_amount("9999", "[lb_av]");
    CHECK(guard() == Applies::no);
    trailer.gvwr.reset();
    CHECK(guard() == Applies::not_known);
    trailer.gvwr = *make_amount("68000", "[lb_av]");
    trailer.built = "1996";  // an older rule may apply
    CHECK(guard() == Applies::not_known);
    trailer.guard_exempt = "low chassis";
    CHECK(guard() == Applies::no);
    trailer.guard_exempt.clear();
    trailer.built = "1952";
    CHECK(guard() == Applies::no);
}

TEST_CASE("some air-braked trailers carry chocks instead of a parking brake") {
    Case c = air_semi();
    const auto parking = [&] { return applies_at(point(brk_park), c.layout(), Place::at(Station::trailer)); };
    CHECK(parking() == Applies::yes);
    c.job.all<Trailer>().front().kind = "Converter dolly";
    CHECK(parking() == Applies::no);
    c.job.all<Trailer>().front().axles.front().brake = BrakeKind::overrun;  // has its lever
    CHECK(parking() == Applies::yes);
}

TEST_CASE("a floor that carries animals is essential") {
    Case c = boat();
    const Place frame = Place::at(Station::frame);
    CHECK(importance_at(point(frame_deck), c.layout(), frame) == Importance::wanted);
    c.job.all<Trailer>().front().kind = "Livestock trailer";
    CHECK(importance_at(point(frame_deck), c.layout(), frame) == Importance::essential);
}

TEST_CASE("what the layout does not say may apply, and is not left out") {
    Trailer t = trailer_of({axle_of(BrakeKind::not_known, HubKind::not_known)}, Actuation::other);
    t.actuation.reset();
    t.axles.front().suspension = Suspension::not_known;
    t.coupler = CouplerKind::not_known;
    t.width.reset();
    t.length.reset();
    const Case c(std::move(t));
    const Place corner = Place::corner(1, Side::left);
    for (const PointId id : {disc_pad, drum_shoe, drum_drum, elec_amps, ovr_line, air_stroke, hub_oil, brk_works,
                             susp_leaf, susp_tors, susp_air}) {
        CAPTURE(point(id).title);
        CHECK(applies_at(point(id), c.layout(), corner) == Applies::not_known);
        CHECK_FALSE(c.where(id).empty());
    }
    CHECK(applies_at(point(act_level), c.layout(), Place::at(Station::actuator)) == Applies::not_known);
    CHECK(applies_at(point(cpl_chain), c.layout(), Place::at(Station::drawbar)) == Applies::not_known);
    CHECK(applies_at(point(lamp_wide), c.layout(), Place::at(Station::lights)) == Applies::not_known);
    CHECK(applies_at(point(tire_tread), c.layout(), Place::corner(2, Side::left)) == Applies::no);  // no such axle
}

TEST_CASE("a trailer without any brake has no breakaway and no actuation to look at") {
    const Case c(trailer_of({axle_of(BrakeKind::none)}, Actuation::none));
    c.none({away_pull, away_15, away_cable, away_batt, brk_works, brk_drive, act_level, act_surge});
    CHECK(c.where(brk_need) == "axle1-left");
}

TEST_CASE("without an actuation entered, the brakes say which there may be") {
    const auto at = [](const Case& c, PointId id) {
        return applies_at(point(id), c.layout(), Place::at(Station::actuator));
    };
    Case electric = tandem_with_idler();
    electric.job.all<Trailer>().front().actuation.reset();
    CHECK(at(electric, act_surge) == Applies::no);
    CHECK(at(electric, act_power) == Applies::no);
    CHECK(at(electric, away_batt) == Applies::not_known);
    Case hydraulic = boat();
    hydraulic.job.all<Trailer>().front().actuation.reset();
    CHECK(at(hydraulic, act_surge) == Applies::not_known);
    CHECK(at(hydraulic, act_power) == Applies::not_known);
    CHECK(at(hydraulic, act_level) == Applies::yes);
    Case air = air_semi();
    air.job.all<Trailer>().front().actuation = Actuation::other;
    CHECK(at(air, act_surge) == Applies::no);
    CHECK(at(air, air_leak) == Applies::yes);
    const Case none(trailer_of({axle_of(BrakeKind::none)}, Actuation::other));
    CHECK(at(none, act_surge) == Applies::no);
}

TEST_CASE("work done asks for what was put back") {
    Case c = tandem_with_idler();
    const Place corner = Place::corner(1, Side::left);
    CHECK(c.where(wheel_torque) == "");
    StepMark mark;
    mark.procedure = "wheel-off";
    mark.step = "U7";
    mark.place = corner;
    mark.at = moment(5);
    c.job.all<StepMark>().push_back(mark);
    CHECK(c.where(wheel_torque) == "");  // lifted, not off
    c.job.all<StepMark>().back().step = "U8";
    CHECK(c.where(wheel_torque) == "axle1-left");
    CHECK(importance_at(point(wheel_torque), c.layout(), corner) == Importance::essential);
    CHECK(work_done(c.job, Work::wheel_off, corner) == moment(5));
    CHECK_FALSE(work_done(c.job, Work::wheel_off, Place::corner(1, Side::right)));
    c.job.all<StepMark>().back().word = StepWord::not_needed;
    CHECK(c.where(wheel_torque) == "");

    BearingSetting setting;
    setting.place = corner;
    setting.at = moment(9);
    c.job.all<BearingSetting>().push_back(setting);
    CHECK(c.where(hub_lock) == "axle1-left");
    CHECK(c.where(wheel_torque) == "axle1-left");  // a hub comes off with its wheel
    CHECK(c.where(hub_heat) == "axle1-left axle1-right axle2-left axle2-right");
    CHECK(importance_at(point(hub_heat), c.layout(), corner) == Importance::wanted);
    Event drive;
    drive.kind = EventKind::driven;
    c.job.all<Event>().push_back(drive);
    CHECK(importance_at(point(hub_heat), c.layout(), corner) == Importance::essential);
    CHECK(opens_again(Work::hub_opened, hub_play));
    CHECK_FALSE(opens_again(Work::cap, hub_play));
    CHECK(opens_again(Work::cap, hub_oil));
}

TEST_CASE("a repaired hose opens the whole hydraulic system") {
    Case c = boat();
    const Place actuator = Place::at(Station::actuator);
    Finding hose;
    hose.place = Place::corner(1, Side::right);
    hose.component = "brake hose";
    hose.outcome = Outcome::open;
    c.job.all<Finding>().push_back(hose);
    CHECK(importance_at(point(act_hold), c.layout(), actuator) == Importance::wanted);
    c.job.all<Finding>().back().outcome = Outcome::repaired;
    CHECK(importance_at(point(act_hold), c.layout(), actuator) == Importance::essential);
    CHECK(work_done_anywhere(c.job, Work::hydraulics_opened));
    CHECK_FALSE(work_done_anywhere(c.job, Work::linings_renewed));
}

TEST_CASE("a bad brake makes the line pressure essential") {
    Case c = boat();
    const Place actuator = Place::at(Station::actuator);
    CHECK(importance_at(point(act_press), c.layout(), actuator) == Importance::wanted);
    Look look;
    look.point = "brk.works";
    look.result = LookResult::bad;
    c.job.all<Look>().push_back(look);
    CHECK(importance_at(point(act_press), c.layout(), actuator) == Importance::essential);
}

TEST_CASE("a corner's points are its own, its wheels' and, on the left, its axle's") {
    const Case c = triple_duals();
    const auto at = [&](const Place& place) {
        std::set<std::string> out;
        for (const PointAt& p : points_at(c.layout(), place))
            out.insert(std::string(name_of(p.point->id)) + " " + p.place.text());
        return out;
    };
    const auto left = at(Place::corner(2, Side::left));
    CHECK(left.count("tire.tread axle2-left-inner") == 1);
    CHECK(left.count("disc.pad axle2-left") == 1);
    CHECK(left.count("plate.gawr axle2-left") == 1);
    CHECK(left.count("tire.tread axle1-left-inner") == 0);
    CHECK(at(Place::corner(2, Side::right)).count("plate.gawr axle2-left") == 0);
    CHECK(at(Place::at(Station::drawbar)).count("cpl.chain drawbar") == 1);
    CHECK(at(Place::at(Station::drawbar)).count("lamp.base lights") == 0);
}

TEST_CASE("every point has a place on some trailer") {
    std::set<PointId> seen;
    const auto take = [&](const Case& c) {
        for (const TradePoint& p : all_points())
            if (!places_of(p, c.layout()).empty()) seen.insert(p.id);
    };
    take(boat());
    take(tandem_with_idler());
    take(triple_duals());
    Case air = air_semi();
    air.job.all<Visit>().front().duty = Duty::carrier;
    air.job.all<Trailer>().front().axles.front().slides = true;
    Reading weight;
    weight.what = "axle weight";
    air.job.all<Reading>().push_back(weight);
    StepMark springs;
    springs.procedure = "running-gear";
    springs.step = "G3";
    springs.place = Place::corner(1, Side::left);
    air.job.all<StepMark>().push_back(springs);
    BearingSetting setting;
    setting.place = Place::corner(1, Side::left);
    air.job.all<BearingSetting>().push_back(setting);
    take(air);
    Case overrun(trailer_of({axle_of(BrakeKind::overrun)}, Actuation::overrun));
    overrun.job.all<Trailer>().front().axles.front().suspension = Suspension::torsion;
    take(overrun);
    for (const TradePoint& p : all_points()) {
        CAPTURE(name_of(p.id));
        CHECK(seen.count(p.id) == 1);
    }
}
