// What applies to which trailer: the rules behind the points table. Each reads the layout alone, except those of work,
// which read what the job records. Pure; any thread.
#pragma once

#include "core/trade/point.h"

namespace cotter::applies {

[[nodiscard]] Applies always(const Layout& layout, const Place& place);

// By the axle at the place; a station or an axle that is not entered: not_known.
[[nodiscard]] Applies duals(const Layout& layout, const Place& place);
[[nodiscard]] Applies oil_hub(const Layout& layout, const Place& place);
[[nodiscard]] Applies greased_hub(const Layout& layout, const Place& place);  // any hub but an oil bath
[[nodiscard]] Applies oil_cap(const Layout& layout, const Place& place);      // a cap with a seat: any but a grease hub
[[nodiscard]] Applies grease_cap(const Layout& layout, const Place& place);   // a pressed cap: a grease hub
[[nodiscard]] Applies braked(const Layout& layout, const Place& place);
[[nodiscard]] Applies hydraulic_brake(const Layout& layout, const Place& place);
[[nodiscard]] Applies hydraulic_disc(const Layout& layout, const Place& place);
[[nodiscard]] Applies hydraulic_drum(const Layout& layout, const Place& place);
[[nodiscard]] Applies any_disc(const Layout& layout, const Place& place);    // air discs too
[[nodiscard]] Applies any_drum(const Layout& layout, const Place& place);    // air drums too
[[nodiscard]] Applies shoe_brake(const Layout& layout, const Place& place);  // drums without air
[[nodiscard]] Applies electric_brake(const Layout& layout, const Place& place);
[[nodiscard]] Applies overrun_brake(const Layout& layout, const Place& place);
[[nodiscard]] Applies air_brake(const Layout& layout, const Place& place);
[[nodiscard]] Applies air_rod(const Layout& layout, const Place& place);  // a push rod: any air brake but a wedge
[[nodiscard]] Applies air_wedge(const Layout& layout, const Place& place);
[[nodiscard]] Applies spring_brake(const Layout& layout, const Place& place);   // by the Chamber record
[[nodiscard]] Applies fluid_or_air(const Layout& layout, const Place& place);   // hydraulic or air: there are hoses
[[nodiscard]] Applies bolted_wheel(const Layout& layout, const Place& place);   // wheel bolts instead of studs
[[nodiscard]] Applies studded_wheel(const Layout& layout, const Place& place);  // anything but wheel bolts
[[nodiscard]] Applies leaf_springs(const Layout& layout, const Place& place);
[[nodiscard]] Applies torsion(const Layout& layout, const Place& place);
[[nodiscard]] Applies air_springs(const Layout& layout, const Place& place);
[[nodiscard]] Applies sprung(const Layout& layout, const Place& place);  // leaf or air springs
[[nodiscard]] Applies sliding_axle(const Layout& layout, const Place& place);

// By what the trailer has.
[[nodiscard]] Applies some_brake(const Layout& layout, const Place& place);
[[nodiscard]] Applies hydraulic_system(const Layout& layout, const Place& place);
[[nodiscard]] Applies air_system(const Layout& layout, const Place& place);
[[nodiscard]] Applies parking_brake(const Layout& layout, const Place& place);
[[nodiscard]] Applies pushed(const Layout& layout, const Place& place);  // surge or overrun
[[nodiscard]] Applies surge(const Layout& layout, const Place& place);
[[nodiscard]] Applies powered_unit(const Layout& layout, const Place& place);  // electric, air or vacuum over hydraulic
[[nodiscard]] Applies electric_pull(const Layout& layout, const Place& place);  // a battery applies the brakes
[[nodiscard]] Applies away_cable(const Layout& layout, const Place& place);
[[nodiscard]] Applies air_abs(const Layout& layout, const Place& place);  // air-braked, built from 1 Mar 1998
[[nodiscard]] Applies ball_coupler(const Layout& layout, const Place& place);
[[nodiscard]] Applies kingpin(const Layout& layout, const Place& place);
[[nodiscard]] Applies pintle(const Layout& layout, const Place& place);
[[nodiscard]] Applies chains(const Layout& layout, const Place& place);        // any coupler but a kingpin
[[nodiscard]] Applies wide(const Layout& layout, const Place& place);          // 80 in (2.03 m) and more
[[nodiscard]] Applies long_trailer(const Layout& layout, const Place& place);  // 30 ft (9.14 m) and more
[[nodiscard]] Applies taped(const Layout& layout, const Place& place);         // wide, and rated above 10,000 lb
[[nodiscard]] Applies rear_guard(const Layout& layout, const Place& place);
[[nodiscard]] Applies carries_animals(const Layout& layout, const Place& place);

// By what the job records.
[[nodiscard]] Applies wheel_was_off(const Layout& layout, const Place& place);
[[nodiscard]] Applies hub_was_opened(const Layout& layout, const Place& place);
[[nodiscard]] Applies u_bolts_undone(const Layout& layout, const Place& place);
[[nodiscard]] Applies hydraulics_opened(const Layout& layout, const Place& place);
[[nodiscard]] Applies heat_wanted(const Layout& layout, const Place& place);  // brake or hub work, or a hub was read
[[nodiscard]] Applies driven_since_work(const Layout& layout, const Place& place);
[[nodiscard]] Applies braking_in_doubt(const Layout& layout, const Place& place);  // brk.works or brk.drive is bad
[[nodiscard]] Applies weighed(const Layout& layout, const Place& place);
[[nodiscard]] bool by_record(AppliesRule rule);  // is it one of these?

}  // namespace cotter::applies
