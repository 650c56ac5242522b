// What is asked for where: readings and photos, derived from the points.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "core/trade/asked.h"
#include "core/trade/components.h"

using namespace cotter;

namespace {

const Place kLeft = Place::corner(1, Side::left);

Trailer trailer_of(BrakeKind brake, HubKind hub, Actuation actuation, int axles = 1) {
    Trailer trailer;
    Axle axle;
    axle.brake = brake;
    axle.hub = hub;
    axle.suspension = Suspension::leaf;
    trailer.axles.assign(static_cast<std::size_t>(axles), axle);
    trailer.actuation = actuation;
    trailer.coupler = CouplerKind::ball;
    return trailer;
}

struct Asked {
    Job job;
    explicit Asked(Trailer trailer) { job.all<Trailer>().push_back(std::move(trailer)); }
    [[nodiscard]] std::string readings(const Place& place, bool missing) const {
        std::string out;
        for (const WantedReading& w : readings_wanted(layout_of(job), place))
            if (w.missing == missing) out += (out.empty() ? "" : "; ") + std::string(w.spec->name);
        return out;
    }
    [[nodiscard]] std::string slots(const Place& place, Stage stage, bool missing) const {
        std::string out;
        for (const WantedSlot& w : slots_wanted(layout_of(job), place, stage))
            if (w.missing == missing) out += (out.empty() ? "" : "; ") + std::string(name_of(w.slot));
        return out;
    }
};

}  // namespace

TEST_CASE("a corner is asked for what its brake and hub have, worn parts first, extras last") {
    const Asked disc(trailer_of(BrakeKind::hydraulic_disc, HubKind::oil_bath, Actuation::surge));
    CHECK(disc.readings(kLeft, true) ==
          "tread depth; tyre pressure, cold; end play; pad thickness; rotor thickness; rotor runout; ride height; axle "
          "spacing; shackle hole wear");
    CHECK(disc.readings(kLeft, false) ==
          "hub temperature; tyre pressure, hot; pad thickness when new; rotor cut per side; coupler to axle end; "
          "tracking to either side; U-bolt thread past the nut; wheel weight");
    const Asked drum(trailer_of(BrakeKind::electric_drum, HubKind::grease, Actuation::electric));
    CHECK(drum.readings(kLeft, true) ==
          "tread depth; tyre pressure, cold; end play; lining thickness; drum diameter; magnet current; magnet "
          "resistance; volts at the magnet; ride height; axle spacing; shackle hole wear");
    CHECK(drum.readings(Place::at(Station::actuator), true) ==
          "breakaway battery under load; breakaway battery capacity");
    CHECK(disc.readings(Place::at(Station::actuator), true).find("slide travel") != std::string::npos);
    CHECK(Asked(Trailer{}).readings(kLeft, true) == "");
}

TEST_CASE("what air brakes need is asked for where there is air") {
    const Asked cam(trailer_of(BrakeKind::air_cam, HubKind::oil_bath, Actuation::air));
    CHECK(cam.readings(kLeft, true).find("push-rod stroke") != std::string::npos);
    CHECK(cam.readings(kLeft, true).find("wedge") == std::string::npos);
    CHECK(cam.readings(Place::at(Station::actuator), true) == "tank pressure; air pressure drop in 1 min");
    const Asked wedge(trailer_of(BrakeKind::air_wedge, HubKind::oil_bath, Actuation::air));
    CHECK(wedge.readings(kLeft, true).find("wedge brake scribe movement") != std::string::npos);
    CHECK(wedge.readings(kLeft, true).find("push-rod") == std::string::npos);
}

TEST_CASE("a round over all hubs is one reading of the trailer, with the air") {
    const Asked c(trailer_of(BrakeKind::hydraulic_disc, HubKind::oil_bath, Actuation::surge, 2));
    const auto spots = [&](std::string_view name, const Place& place) {
        return spots_of(*reading_spec(name), layout_of(c.job), place);
    };
    CHECK(spots(what::hub_temperature, Place::at(Station::trailer)) ==
          std::vector<std::string>{"axle 1 left", "axle 1 right", "axle 2 left", "axle 2 right", "ambient"});
    CHECK(spots(what::hub_temperature, kLeft).empty());
    CHECK(spots(what::axle_weight, Place::at(Station::trailer)) == std::vector<std::string>{"axle 1", "axle 2"});
    CHECK(spots(what::tread_depth, kLeft).size() == 3);
    CHECK(c.readings(Place::at(Station::trailer), false).find("axle weight") != std::string::npos);
}

TEST_CASE("photos are wanted of what is there, and of what lies inside once it was opened") {
    Asked drum(trailer_of(BrakeKind::electric_drum, HubKind::grease, Actuation::electric));
    CHECK(drum.slots(kLeft, Stage::before, true) ==
          "wheel on; nuts; cap; tread; sidewall; springs; brake; lining; wiring");
    CHECK(drum.slots(kLeft, Stage::before, false) == "bearing; spindle; seal side");
    CHECK(drum.slots(kLeft, Stage::after, true) == "wheel on; nuts; cap");
    BearingSetting setting;
    setting.place = kLeft;
    drum.job.all<BearingSetting>().push_back(setting);
    CHECK(drum.slots(kLeft, Stage::before, false) == "");
    const Asked disc(trailer_of(BrakeKind::hydraulic_disc, HubKind::oil_bath, Actuation::surge));
    CHECK(disc.slots(kLeft, Stage::before, true) ==
          "wheel on; nuts; cap; tread; sidewall; springs; brake; caliper; lining; rotor face; rotor edge; guide pin; "
          "hose and line");
    CHECK(disc.slots(Place::at(Station::drawbar), Stage::before, true) == "coupler; chains; wiring");
    CHECK(disc.slots(Place::at(Station::trailer), Stage::before, true) == "whole; data plate");
}

TEST_CASE("an owner is asked for what shows from outside") {
    const Asked c(trailer_of(BrakeKind::hydraulic_disc, HubKind::oil_bath, Actuation::surge));
    for (const WantedReading& w : readings_wanted(layout_of(c.job), kLeft)) {
        CAPTURE(w.spec->name);
        const bool outside = w.spec->name == what::tread_depth || w.spec->name == what::pressure_cold ||
                             w.spec->name == what::pressure_hot || w.spec->name == what::hub_temperature ||
                             w.spec->name == what::wheel_weight || w.spec->name == what::shackle_wear;
        CHECK((w.reach == Reach::outside) == outside);
    }
}

TEST_CASE("a component exists where the layout has it, or does not say") {
    const Asked drum(trailer_of(BrakeKind::hydraulic_drum, HubKind::grease, Actuation::surge));
    const Layout layout = layout_of(drum.job);
    const auto may = [&](std::string_view component, std::string_view defect = {}) {
        return can_be_found(component, defect, layout, kLeft);
    };
    CHECK_FALSE(may("rotor"));
    CHECK_FALSE(may("guide pin"));
    CHECK_FALSE(may("hub oil"));
    CHECK_FALSE(may("brake magnet"));
    CHECK_FALSE(may("torsion axle"));
    CHECK_FALSE(may("hub", "oil thrown over the wheel"));
    CHECK(may("hub", "grease thrown over the wheel"));
    CHECK(may("drum"));
    CHECK(may("brake hose"));
    CHECK(may("surge actuator"));
    CHECK(may("winch", "bent"));
    CHECK(can_be_found("drum", {}, layout, Place::at(Station::trailer)));
    CHECK_FALSE(can_be_found("rotor", {}, layout, Place::at(Station::trailer)));
    for (const std::string_view name : {"rotor", "drum", "hub oil", "hub grease", "brake magnet", "torsion axle"}) {
        CAPTURE(name);
        CHECK(can_be_found(name, {}, Layout{}, kLeft));  // nothing is known: anything may be
    }
    CHECK(find_component("winch") == nullptr);
    CHECK(find_component("tire") == find_component("tyre"));
}

TEST_CASE("a repair ends the readings of the part by any of its words, in any case") {
    const ReadingSpec& lining = *reading_spec(what::lining_thickness);
    CHECK(ended_by_repair(lining, "shoes"));
    CHECK(ended_by_repair(lining, "Brake Lining"));
    CHECK_FALSE(ended_by_repair(lining, "pads"));
    CHECK(ended_by_repair(*reading_spec(what::tread_depth), "Tire"));
    CHECK_FALSE(ended_by_repair(*reading_spec(what::magnet_volts), "anything"));
}
