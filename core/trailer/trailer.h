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

// The texts of these lists are what files and packets hold: append only. `air_untyped` is how packets named every air
// brake before its kinds were told apart; it reads as "air, kind not known".
enum class BrakeKind {
    none,  // an idler: an answer, and judged
    hydraulic_disc,
    hydraulic_drum,
    electric_drum,
    air_untyped,
    overrun,  // mechanical, by rods and cables
    air_cam,
    air_wedge,
    air_disc,
    not_known
};
constexpr auto names(BrakeKind) {
    return name_list("none", "hydraulic disc", "hydraulic drum", "electric drum", "air (out of scope)",
                     "mechanical overrun", "air S-cam", "air wedge", "air disc", "not known");
}
[[nodiscard]] bool is_air(BrakeKind brake);
[[nodiscard]] bool is_hydraulic(BrakeKind brake);
[[nodiscard]] bool is_braked(BrakeKind brake);  // false for `none` alone: what is not known may be a brake

enum class HubKind { oil_bath, grease, semi_fluid_grease, preset, not_known };
constexpr auto names(HubKind) {
    return name_list("oil bath", "grease", "semi-fluid grease", "preset", "not known");
}

enum class Actuation {
    none,
    surge,
    electric_over_hydraulic,
    electric,
    other,
    overrun,
    air_over_hydraulic,
    vacuum_over_hydraulic,
    air
};
constexpr auto names(Actuation) {
    return name_list("none", "surge", "electric-over-hydraulic", "electric", "other", "overrun", "air-over-hydraulic",
                     "vacuum-over-hydraulic", "air");
}

enum class Fastening { not_known, stud_piloted, hub_piloted, wheel_bolts, clamp_ring };
constexpr auto names(Fastening) {
    return name_list("not known", "stud-piloted", "hub-piloted", "wheel bolts", "clamp ring");
}

enum class WheelMetal { not_known, steel, aluminum };
constexpr auto names(WheelMetal) {
    return name_list("not known", "steel", "aluminum");
}

enum class Suspension { not_known, leaf, torsion, air, none };
constexpr auto names(Suspension) {
    return name_list("not known", "leaf", "torsion", "air", "none");
}

enum class CouplerKind { not_known, ball, european_ball, pintle_eye, gooseneck_ball, kingpin };
constexpr auto names(CouplerKind) {
    return name_list("not known", "ball", "European ball", "pintle and eye", "gooseneck ball", "kingpin");
}

struct Axle {
    Wheels wheels = Wheels::single;
    BrakeKind brake = BrakeKind::none;
    HubKind hub = HubKind::grease;
    int studs = 0;                        // per wheel, 4…10; 0 when not counted yet
    std::string stud_thread;              // "1/2-20", as stamped or measured
    std::string model;                    // the axle tag's text, the key for remembered maker's figures
    std::optional<Amount> gawr;           // maker's rating of this axle
    std::string maker;                    // from the axle tag
    std::string tire_size;                // from the placard, for this axle; empty: as the trailer's
    std::optional<Amount> tire_pressure;  // cold, from the placard, for this axle; none: as the trailer's
    Fastening fastening = Fastening::not_known;
    WheelMetal wheel_metal = WheelMetal::not_known;
    Suspension suspension = Suspension::not_known;
    bool lift = false;    // can be raised
    bool slides = false;  // its position can be moved along the frame

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
        f.may("maker", s.maker);
        f.may("tire_size", s.tire_size);
        f.may("tire_pressure", s.tire_pressure);
        f.may("fastening", s.fastening);
        f.may("wheel_metal", s.wheel_metal);
        f.may("suspension", s.suspension);
        f.may("lift", s.lift);
        f.may("slides", s.slides);
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
    std::optional<Actuation> actuation;   // none: not entered, which is not Actuation::none
    std::string built;                    // "2019-04" as on the plate, or "2019"; empty when unknown
    CouplerKind coupler = CouplerKind::not_known;
    std::optional<Amount> coupler_rating;  // mass, as stamped
    std::optional<Amount> ball_size;       // length: the ball that the coupler is made for
    std::optional<Amount> width;           // overall, fenders counted
    std::optional<Amount> length;          // overall
    std::string guard_exempt;              // why no rear guard is required ("low chassis"); empty: no reason known
    std::vector<std::string> not_known;    // ids of plate points that were answered "not known"
    std::vector<Axle> axles;               // front to rear, 1…4

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
        f.may("built", s.built);
        f.may("coupler", s.coupler);
        f.may("coupler_rating", s.coupler_rating);
        f.may("ball_size", s.ball_size);
        f.may("width", s.width);
        f.may("length", s.length);
        f.may("guard_exempt", s.guard_exempt);
        f.may("not_known", s.not_known);
        f.must("axles", s.axles);
    }
};

}  // namespace cotter
