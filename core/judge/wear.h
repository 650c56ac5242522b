// Wear rate and remaining life from two measurements, with uncertainty. Any consistent units. Pure; any thread.
#pragma once

namespace cotter {

// Two thicknesses of the same spot of the same part, and the way run (or the days passed) between them.
struct WearPair {
    double first = 0, second = 0;  // thickness; the second is the later one
    double way = 0;                // > 0
    double limit = 0;              // where life ends
    double u_thickness = 0;        // standard uncertainty of one thickness
    double u_way = 0;              // of the way, in its unit
};

enum class WearAnswer {
    told,
    too_small,  // first − second is under 2·√2·u_thickness: it may be nothing but scatter
    grew,       // it got thicker, or stayed: check the corner, the part or the method
    no_way,     // the way is not known or not above zero
    at_limit,   // the second is at or beyond the limit already
};

// Method: rate = d / way with d = first − second; left = (second − limit) · way / d. The uncertainty is that of first
// order propagation, the three shares squared and added; `plan` is left − 2·u, never under zero.
struct WearLife {
    WearAnswer answer = WearAnswer::no_way;
    double worn = 0;   // d
    double least = 0;  // the d under which nothing is told
    double rate = 0;   // per unit of way
    double left = 0;
    double from_second = 0, from_first = 0, from_way = 0;  // shares of the uncertainty
    double u = 0;
    double plan = 0;
};

[[nodiscard]] WearLife wear_life(const WearPair& pair);

}  // namespace cotter
