// The rules of single points, one function each, and what several of them need. For core/judge.
#pragma once

#include "core/judge/answering.h"

namespace cotter::answering {

// Plate (answer_plate.cpp)
void plate_rule(const Scene& scene, const Ask& ask, Replies& out);
void use_duty(const Scene& scene, const Ask& ask, Replies& out);
void use_tow(const Scene& scene, const Ask& ask, Replies& out);
// Tires (answer_tires.cpp, answer_tire_load.cpp)
void tire_id(const Scene& scene, const Ask& ask, Replies& out);
void tire_load(const Scene& scene, const Ask& ask, Replies& out);
void tire_tread(const Scene& scene, const Ask& ask, Replies& out);
void tire_press(const Scene& scene, const Ask& ask, Replies& out);
void tire_age(const Scene& scene, const Ask& ask, Replies& out);
void tire_dual(const Scene& scene, const Ask& ask, Replies& out);
// Wheels and hubs (answer_hubs.cpp)
void torque_rule(const Scene& scene, const Ask& ask, Replies& out);
void hub_oil(const Scene& scene, const Ask& ask, Replies& out);
void hub_play(const Scene& scene, const Ask& ask, Replies& out);
void hub_lock(const Scene& scene, const Ask& ask, Replies& out);
void hub_heat(const Scene& scene, const Ask& ask, Replies& out);
// Brakes (answer_need.cpp, answer_brakes.cpp, answer_electric.cpp)
void brk_need(const Scene& scene, const Ask& ask, Replies& out);
void brk_stop(const Scene& scene, const Ask& ask, Replies& out);
void brk_pair(const Scene& scene, const Ask& ask, Replies& out);
void brk_adjust(const Scene& scene, const Ask& ask, Replies& out);
void disc_pad(const Scene& scene, const Ask& ask, Replies& out);
void disc_rotor(const Scene& scene, const Ask& ask, Replies& out);
void disc_runout(const Scene& scene, const Ask& ask, Replies& out);
void drum_shoe(const Scene& scene, const Ask& ask, Replies& out);
void drum_drum(const Scene& scene, const Ask& ask, Replies& out);
void elec_amps(const Scene& scene, const Ask& ask, Replies& out);
void elec_mag(const Scene& scene, const Ask& ask, Replies& out);
// Air (answer_air.cpp)
void air_kind(const Scene& scene, const Ask& ask, Replies& out);
void air_stroke(const Scene& scene, const Ask& ask, Replies& out);
void air_pair(const Scene& scene, const Ask& ask, Replies& out);
void air_lining(const Scene& scene, const Ask& ask, Replies& out);
void air_leak(const Scene& scene, const Ask& ask, Replies& out);
// Actuation and breakaway (answer_actuation.cpp, answer_breakaway.cpp)
void act_level(const Scene& scene, const Ask& ask, Replies& out);
void act_fluid(const Scene& scene, const Ask& ask, Replies& out);
void act_hold(const Scene& scene, const Ask& ask, Replies& out);
void act_press(const Scene& scene, const Ask& ask, Replies& out);
void act_surge(const Scene& scene, const Ask& ask, Replies& out);
void act_power(const Scene& scene, const Ask& ask, Replies& out);
void away_pull(const Scene& scene, const Ask& ask, Replies& out);
void away_15(const Scene& scene, const Ask& ask, Replies& out);
void away_batt(const Scene& scene, const Ask& ask, Replies& out);
// Coupling, lights, suspension, frame, load
void cpl_rate(const Scene& scene, const Ask& ask, Replies& out);
void cpl_fit(const Scene& scene, const Ask& ask, Replies& out);
void worn_by_reading(const Scene& scene, const Ask& ask, Replies& out);  // readings that can only forbid
void susp_align(const Scene& scene, const Ask& ask, Replies& out);
void frame_guard(const Scene& scene, const Ask& ask, Replies& out);
void load_known(const Scene& scene, const Ask& ask, Replies& out);
void load_gross(const Scene& scene, const Ask& ask, Replies& out);
void load_tongue(const Scene& scene, const Ask& ask, Replies& out);

// answer_shared.cpp
[[nodiscard]] bool thinner(const Measure* a, const Measure* b);
[[nodiscard]] Fact few(std::size_t there, std::int64_t wanted);
[[nodiscard]] std::vector<Place> wheels_of_axle(const Scene& scene, int axle);

// A sidewall as last read at a wheel.
struct TireSeen {
    const Sidewall* tire = nullptr;
    const Sitting* sitting = nullptr;
};
[[nodiscard]] const Sidewall* sidewall_in(const Scene& scene, const Sitting& sitting, const Place& wheel);
[[nodiscard]] std::optional<TireSeen> newest_sidewall(const Scene& scene, const Place& wheel);
struct TireRating {
    std::optional<double> kg;  // one tire, P tires divided by 1.10
    Fact because;              // why there is none
};
[[nodiscard]] TireRating tire_rating(const Sidewall& tire, bool dual);
// What a tire is rated, by its sidewall as last read, or by a reading of older packets; for duals the dual figure.
struct TireRated {
    TireRating rating;
    const Sitting* sitting = nullptr;
    Instant at;
    std::string_view by;
    Uuid record;
};
[[nodiscard]] std::optional<TireRated> rating_at(const Scene& scene, const Place& wheel);

// A weight as last taken, while it still counts: weights keep for a trip.
struct Weighed {
    double kg = 0, step = 0;
    Amount shown;
    const Sitting* sitting = nullptr;
    const Reading* reading = nullptr;
    Instant until;
};
[[nodiscard]] std::optional<Weighed> axle_weighed(const Scene& scene, int axle);
[[nodiscard]] std::optional<Weighed> wheel_weighed(const Scene& scene, const Place& corner);
[[nodiscard]] std::optional<Weighed> tongue_weighed(const Scene& scene);
struct Gross {
    double kg = 0, step = 0;
    bool weighed = false;
    std::optional<Weighed> newest;  // of the weights in it
};
// All axles and the tongue, as weighed; nothing unless every one of them was.
[[nodiscard]] std::optional<Gross> gross_weighed(const Scene& scene);
// A reply that follows from weights: the newest's time, the first end.
[[nodiscard]] Reply reply_from(const Scene& scene, std::initializer_list<const Weighed*> inputs);

// A worn part that reads better by more than two steps, with no replacement recorded, contradicts itself.
void doubt_regrown(const Scene& scene, const Ask& ask, std::string_view what, Work renewed, Replies& out,
                   bool larger_is_better = true);
// The day on which a lining or pad wears down to its limit at the rate of the last two visits.
void end_at_forecast(const Scene& scene, const Ask& ask, std::string_view what, double limit_si, Replies& out);

// answer_torque.cpp: why a tightening proves nothing; nothing when it does.
[[nodiscard]] std::optional<Fact> torque_objection(const Torque& torque, const Axle* axle);

}  // namespace cotter::answering
