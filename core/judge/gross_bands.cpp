// The figures.
#include "core/judge/gross_bands.h"

#include <algorithm>

namespace cotter::bands {

namespace {

constexpr double kPsi = 6894.757293168;
constexpr double kGrain = 1e-9;  // of the arithmetic: a value at the figure is not beyond it

bool over(double value, double figure) {
    return value > figure + kGrain * figure;
}
bool under(double value, double figure) {
    return value < figure - kGrain * figure;
}

// In the unit entered: inches by their own figures, everything metric in mm.
struct PlayFigures {
    double value, watch, repair, gross;
};
PlayFigures play_figures(const Amount& play) {
    if (play.unit == "[in_i]") return {play.number.value(), 0.005, 0.020, 0.050};
    return {play.si() * 1000, 0.13, 0.51, 1.27};
}

}  // namespace

std::optional<Grade> end_play(const Amount& play) {
    const PlayFigures f = play_figures(play);
    if (!(f.value >= 0)) return std::nullopt;
    if (over(f.value, f.gross)) return Grade::do_not_tow;
    if (over(f.value, f.repair)) return Grade::repair;
    return f.value == 0 || over(f.value, f.watch) ? Grade::watch : Grade::serviceable;
}

bool end_play_gross(const Amount& play) {
    const PlayFigures f = play_figures(play);
    return over(f.value, f.gross);
}

Grade magnet_current(double amps) {
    if (!over(amps, 0.2)) return Grade::do_not_tow;
    if (under(amps, 1.25) || over(amps, 8.2)) return Grade::repair;
    return under(amps, 2.5) || over(amps, 4.1) ? Grade::watch : Grade::serviceable;
}

Grade magnet_resistance(double ohm) {
    constexpr double kSupply = 12;
    if (under(ohm, 1)) return Grade::repair;
    const double amps = kSupply / ohm;
    if (!over(amps, 0.2)) return Grade::do_not_tow;
    return under(amps, 2.5) || over(amps, 4.1) ? Grade::watch : Grade::serviceable;
}

Grade hub_heat(double own, double above, bool fahrenheit) {
    const double look = fahrenheit ? 20 : 11.1, stop = fahrenheit ? 50 : 27.8, gross = fahrenheit ? 100 : 55.6;
    if (over(own, fahrenheit ? 250 : 121) || over(above, gross)) return Grade::do_not_tow;
    if (over(above, stop)) return Grade::repair;
    return over(above, look) ? Grade::watch : Grade::serviceable;
}

bool brake_cold(double above, bool fahrenheit) {
    return over(-above, fahrenheit ? 50 : 27.8);
}

bool flat(double pascal) {
    return under(pascal, 15 * kPsi);
}

Grade cold_pressure(double pascal, double placard) {
    if (flat(pascal) || under(pascal, placard / 2)) return Grade::do_not_tow;
    return over(pascal, placard * 0.8) ? Grade::serviceable : Grade::repair;
}

Grade cold_pressure_unplaced(double pascal, double reference) {
    return flat(pascal) || under(pascal, reference / 2) ? Grade::do_not_tow : Grade::serviceable;
}

Grade line_pressure(double share) {
    if (under(share, 0.25)) return Grade::do_not_tow;
    if (under(share, 0.5)) return Grade::repair;
    return under(share, 0.8) ? Grade::watch : Grade::serviceable;
}

Grade hold(double start, double drop) {
    if (!(start > 0) || over(drop, 0.5)) return Grade::do_not_tow;
    if (over(drop, 0.10)) return Grade::repair;
    return over(drop, 0.05) ? Grade::watch : Grade::serviceable;
}

Grade battery_rest(double volts) {
    if (under(volts, 10.5)) return Grade::do_not_tow;
    return under(volts, 12.2) ? Grade::watch : Grade::serviceable;
}

Grade battery_load(double volts) {
    return under(volts, 10.5) ? Grade::do_not_tow : Grade::serviceable;
}

Grade tongue_share(double share, bool high) {
    if (!(share > 0)) return Grade::do_not_tow;
    return under(share, high ? 0.15 : 0.10) || over(share, high ? 0.25 : 0.15) ? Grade::watch : Grade::serviceable;
}

Grade air_leak(double psi, bool applied) {
    const double rate = applied ? 4 : 3;
    if (over(psi, 2 * rate)) return Grade::repair;
    return over(psi, rate) ? Grade::watch : Grade::serviceable;
}

}  // namespace cotter::bands
