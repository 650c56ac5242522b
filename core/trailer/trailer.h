// The trailer as it stands at a job: identity, ratings and the layout of its axles.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/amount.h"
#include "core/base/id.h"
#include "core/trailer/place.h"

namespace cotter {

enum class Wheels { single, dual };
constexpr auto names(Wheels) {
    return name_list("single", "dual");
}

// Air brakes are named so that they can be recorded; judging and working on them is out of Cotter's scope.
enum class BrakeKind { none, hydraulic_disc, hydraulic_drum, electric_drum, air_out_of_scope };
constexpr auto names(BrakeKind) {
    return name_list("none", "hydraulic disc", "hydraulic drum", "electric drum", "air (out of scope)");
}

enum class HubKind { oil_bath, grease, semi_fluid_grease };
constexpr auto names(HubKind) {
    return name_list("oil bath", "grease", "semi-fluid grease");
}

enum class Actuation { none, surge, electric_over_hydraulic, electric, other };
constexpr auto names(Actuation) {
    return name_list("none", "surge", "electric-over-hydraulic", "electric", "other");
}

struct Axle {
    Wheels wheels = Wheels::single;
    BrakeKind brake = BrakeKind::none;
    HubKind hub = HubKind::grease;
    int studs = 0;               // per wheel, 4…10; 0 when not counted yet
    std::string stud_thread;     // "1/2-20", as stamped or measured
    std::string model;           // the axle tag's text, the key for remembered maker's figures
    std::optional<Amount> gawr;  // maker's rating of this axle

    bool operator==(const Axle&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("wheels", s.wheels);
        f.must("brake", s.brake);
        f.must("hub", s.hub);
        f.may("studs", s.studs);
        f.may("stud_thread", s.stud_thread);
        f.may("model", s.model);
        f.may("gawr", s.gawr);
    }
};

struct Trailer {
    Id<Trailer> id;
    std::string unit;  // the fleet's own number, "NUR-07"
    std::string plate;
    std::string vin;               // as read
    bool vin_nonstandard = false;  // home-built, state-assigned or before 1981: no check digit; needs a photo
    int model_year = 0;            // 0 when unknown; never guessed from the VIN's letter
    std::string kind;              // "tandem-axle deck trailer"
    std::string maker;
    std::optional<Amount> gvwr;  // maker's rating of the whole trailer
    std::string tyre_size;
    std::optional<Amount> tyre_pressure;  // cold, from the placard
    Actuation actuation = Actuation::none;
    std::vector<Axle> axles;  // front to rear, 1…4

    bool operator==(const Trailer&) const = default;
    [[nodiscard]] bool has(const Place& place) const;  // is there such a place on this trailer?
    [[nodiscard]] std::vector<Place> corners() const;  // front to rear, left before right
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("unit", s.unit);
        f.may("plate", s.plate);
        f.may("vin", s.vin);
        f.may("vin_nonstandard", s.vin_nonstandard);
        f.may("model_year", s.model_year);
        f.may("kind", s.kind);
        f.may("maker", s.maker);
        f.may("gvwr", s.gvwr);
        f.may("tyre_size", s.tyre_size);
        f.may("tyre_pressure", s.tyre_pressure);
        f.may("actuation", s.actuation);
        f.must("axles", s.axles);
    }
};

}  // namespace cotter
