// Gross bands: how far beyond a figure of common practice a value must be before it does more than warn. A figure of
// practice warns; it fails only at twice that or more, at what physics or another rule gives, or where a function is
// absent. A maker's own figure replaces what is below a band's gravest step, never that step itself.
// Figures come in pairs, inch and metric, and are compared in the unit that was entered. Pure; any thread.
#pragma once

#include <optional>

#include "core/base/amount.h"
#include "core/survey/words.h"

namespace cotter::bands {

// End play of a wheel bearing without a maker's figure, length: over 0.005 in (0.13 mm) watch, over 0.020 (0.51)
// repair, over 0.050 (1.27) do not tow. None at all is preload: watch. Below zero is no play: std::nullopt.
[[nodiscard]] std::optional<Grade> end_play(const Amount& play);
[[nodiscard]] bool end_play_gross(const Amount& play);  // over 0.050 in, whatever the maker allows

// One 12 V magnet at full demand, A: under 2.5 or over 4.1 watch, under 1.25 or over 8.2 repair, 0.2 and less do not
// tow: no action on that wheel.
[[nodiscard]] Grade magnet_current(double amps);
// Its resistance, ohm: under 1 repair (a short), so high that at 12 V less than 0.2 A flows do not tow (open); else by
// the current that it would draw, at most watch.
[[nodiscard]] Grade magnet_resistance(double ohm);

// A hub after stops, all within five minutes. `own` in °C or °F; `over` the median of the other hubs, in that unit.
// Over 20 °F (11.1 K) watch, over 50 °F (27.8 K) repair, over 100 °F (55.6 K) or above 250 °F (121 °C) do not tow.
[[nodiscard]] Grade hub_heat(double own, double over, bool fahrenheit);
[[nodiscard]] bool brake_cold(double over, bool fahrenheit);  // more than 50 °F (27.8 K) below its mates

// A cold tire against the placard's pressure: 80 % and less repair (run so, it comes off without being aired up),
// under half do not tow, under 15 psi do not tow whatever the placard. Watch is never given.
[[nodiscard]] Grade cold_pressure(double pascal, double placard_pascal);
// The same where no placard is known, against the sidewall's largest pressure or the fullest of its mates: under half,
// or under 15 psi, do not tow; else serviceable, which proves nothing.
[[nodiscard]] Grade cold_pressure_unplaced(double pascal, double reference_pascal);
[[nodiscard]] bool flat(double pascal);  // under 15 psi

// Line pressure at full demand as a share of the unit's label: under 0.8 watch, 0.5 repair, 0.25 do not tow.
[[nodiscard]] Grade line_pressure(double share);
inline constexpr double kDrumPsi = 1000, kDiscPsi = 1600;  // common practice where there is no label

// Pressure held for five minutes after settling, share lost: over 0.05 watch, 0.10 repair, 0.50 do not tow. A start at
// nothing: do not tow.
[[nodiscard]] Grade hold(double start, double drop_share);

// A 12 V lead-acid battery: rest under 12.2 V watch; under 10.5 V, at rest or under load up to 15 minutes, do not tow.
[[nodiscard]] Grade battery_rest(double volts);
[[nodiscard]] Grade battery_load(double volts);

// Tongue weight as a share of gross: outside the usual share watch, nothing or less on the hitch do not tow.
// `high`: gooseneck or kingpin, 15 to 25 %; else a ball, 10 to 15 %.
[[nodiscard]] Grade tongue_share(double share, bool high);

// Air lost in a minute, psi, of a combination: over 3 with the brakes released or 4 applied watch, over twice repair.
[[nodiscard]] Grade air_leak(double psi, bool applied);

}  // namespace cotter::bands
