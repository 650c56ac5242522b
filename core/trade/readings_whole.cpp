// Readings of coupling, lights, suspension, frame, load and use.
#include "core/trade/reading_parts.h"

namespace cotter {

namespace {

using namespace specs;

constexpr std::array kReadings{
    taken(what::coupling_wear, {"coupling", ratio, 0, 1, "coupler pintle eye"},
          {"caliper, against a new section", {}, kShare, 0.001, 0.6}, kHigh),
    extra(what::slider_movement, {"coupling", length, 0, 0.2, "coupler drawbar"}, {"rule", {}, kTape, 0.0004, 0.05},
          kFractions | kHigh),
    extra(what::ball_measured, {"coupling", length, 0.02, 0.15, "ball"}, {"caliper", {}, kDrumGauge, 0.045, 0.08},
          kFractions),
    taken(what::chain_wear, {"coupling", length, 0, 0.02, "chain"}, {"caliper", {}, kGauge, 0.0001, 0.006},
          kFractions | kHigh),
    taken(what::lamp_volts, {"lights", voltage, 0, 30}, {"multimeter", kLamps, kVolts, 3, 16}),
    taken(what::ride_height, {"suspension", length, 0, 3, "spring torsion axle"}, {"tape", kSides, kTape, 0.1, 1.5},
          kFractions),
    taken(what::axle_spacing, {"suspension", length, 0.2, 12, "spring shackle axle"}, {"tape", kSides, kTape, 0.5, 3},
          kFractions),
    extra(what::axle_offset, {"suspension", length, 0.5, 25, "spring shackle axle"}, {"tape", kSides, kTape, 1, 15},
          kFractions),
    extra(what::tracking, {"suspension", length, 0, 2, "spring shackle axle"},
          {"tape, on a straight, level, paved road", {}, kTape, 0.001, 0.5}, kFractions | kHigh),
    taken(what::shackle_wear, {"suspension", length, 0, 0.03, "shackle"}, {"caliper", {}, kGauge, 0.0001, 0.01},
          kFractions | kHigh),
    taken(what::torsion_angle, {"suspension", angle, -1.6, 1.6, "torsion"}, {"angle finder", {}, kAngle, -0.9, 0.9},
          kSign),
    extra(what::air_spring_drop, {"suspension", pressure, 0, 120 * kPsi, "air spring"},
          {"gauge and watch", {}, kAirGauge, 0.5 * kPsi, 60 * kPsi}, kHigh),
    extra(what::u_bolt_thread, {"suspension", length, 0, 0.2, "U-bolt"}, {"rule", {}, kTape, 0.001, 0.08}, kFractions),
    taken(what::guard_height, {"frame", length, 0, 3, "guard"}, {"tape", {}, kTape, 0.1, 1.5}, kFractions | kHigh),
    taken(what::guard_side, {"frame", length, -1, 1.5, "guard"}, {"tape, in from the side", kSides, kTape, -0.3, 0.6},
          kFractions | kSign | kHigh),
    taken(what::guard_rear, {"frame", length, -1, 3, "guard"}, {"tape, forward of the rear", {}, kTape, -0.1, 1},
          kFractions | kSign | kHigh),
    taken(what::guard_member, {"frame", length, 0, 1, "guard"}, {"tape", {}, kTape, 0.03, 0.4}, kFractions),
    extra(what::axle_weight, {"load", mass, 20, 15 * kTon}, {"scale", {}, kScale, 100, 12 * kTon}, kHigh),
    extra(what::wheel_weight, {"load", mass, 10, 8 * kTon}, {"wheel scale", {}, kScale, 50, 6 * kTon}, kHigh),
    taken(what::tongue_weight, {"load", mass, -2 * kTon, 10 * kTon}, {"tongue scale", {}, kScale, 20, 3000}, kSign),
    computed(what::tongue_share, {"load", ratio, -1, 1}),
    replaced(what::tow_vehicle_rating, {"load", mass, 300, 50 * kTon}),
    taken(what::run_since, {"use", length, 1000, 1e9}, {"owner's estimate", {}, kRoad, 1000, 1e9}),
    taken(what::run_total, {"use", length, 0, 1e10}, {"hub counter", {}, kRoad, 1000, 2e9}),
};

}  // namespace

std::span<const ReadingSpec> whole_readings() {
    return kReadings;
}

}  // namespace cotter
