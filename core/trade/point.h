// The one table of points: what is looked at on a trailer, where, by whom, how it is answered, how much it matters for
// towing, what the law says about it and how long an answer keeps. Screens, judge, hand-over, the owner's walk, the
// report and the office all derive from it; none keeps a list of its own.
//
// The rows are constexpr data in core/trade/points_*.cpp, one file a subject; what cannot be data (does a point apply
// to this trailer?) is a pure function there. A point's id is what records hold: append only, never renamed.
// Values without allocation; any thread.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/survey/job.h"
#include "core/trade/law.h"

namespace cotter {

// In the order of the table. The text of an id is what files hold.
enum class PointId : std::uint8_t {
    // plate and layout
    plate_id,
    plate_built,
    plate_gvwr,
    plate_gawr,
    plate_axle,
    plate_tire,
    plate_axles,
    plate_act,
    plate_cpl,
    use_duty,
    use_tow,
    // tires and wheels
    tire_id,
    tire_load,
    tire_tread,
    tire_face,
    tire_press,
    tire_age,
    tire_dual,
    wheel_look,
    wheel_seat,
    wheel_nuts,
    wheel_torque,
    // hubs and bearings
    hub_leak,
    hub_oil,
    hub_play,
    hub_parts,
    hub_lock,
    hub_heat,
    // brakes of every kind
    brk_need,
    brk_works,
    brk_parts,
    brk_drive,
    brk_stop,
    brk_park,
    brk_pair,
    // disc, drum, electric, overrun
    disc_pad,
    disc_rotor,
    disc_runout,
    drum_shoe,
    drum_drum,
    hyd_corner,
    elec_amps,
    elec_mag,
    ovr_line,
    brk_adjust,
    // air
    air_kind,
    air_stroke,
    air_pair,
    air_lining,
    air_leak,
    air_spring,
    air_abs,
    air_supply,
    // actuation and breakaway
    act_level,
    act_leak,
    act_fluid,
    act_hold,
    act_press,
    act_surge,
    act_power,
    away_pull,
    away_15,
    away_batt,
    away_cable,
    // coupling
    cpl_rate,
    cpl_fit,
    cpl_wear,
    cpl_chain,
    cpl_jack,
    // lights
    lamp_base,
    lamp_wide,
    lamp_long,
    lamp_refl,
    lamp_plug,
    // suspension, frame, load
    susp_leaf,
    susp_tors,
    susp_air,
    susp_ubolt,
    susp_align,
    susp_slide,
    frame_main,
    frame_clear,
    frame_deck,
    frame_guard,
    load_known,
    load_gross,
    load_tongue,
    load_safe
};
constexpr auto names(PointId) {
    return name_list(
        "plate.id", "plate.built", "plate.gvwr", "plate.gawr", "plate.axle", "plate.tire", "plate.axles", "plate.act",
        "plate.cpl", "use.duty", "use.tow", "tire.id", "tire.load", "tire.tread", "tire.face", "tire.press", "tire.age",
        "tire.dual", "wheel.look", "wheel.seat", "wheel.nuts", "wheel.torque", "hub.leak", "hub.oil", "hub.play",
        "hub.parts", "hub.lock", "hub.heat", "brk.need", "brk.works", "brk.parts", "brk.drive", "brk.stop", "brk.park",
        "brk.pair", "disc.pad", "disc.rotor", "disc.runout", "drum.shoe", "drum.drum", "hyd.corner", "elec.amps",
        "elec.mag", "ovr.line", "brk.adjust", "air.kind", "air.stroke", "air.pair", "air.lining", "air.leak",
        "air.spring", "air.abs", "air.supply", "act.level", "act.leak", "act.fluid", "act.hold", "act.press",
        "act.surge", "act.power", "away.pull", "away.15", "away.batt", "away.cable", "cpl.rate", "cpl.fit", "cpl.wear",
        "cpl.chain", "cpl.jack", "lamp.base", "lamp.wide", "lamp.long", "lamp.refl", "lamp.plug", "susp.leaf",
        "susp.tors", "susp.air", "susp.ubolt", "susp.align", "susp.slide", "frame.main", "frame.clear", "frame.deck",
        "frame.guard", "load.known", "load.gross", "load.tongue", "load.safe");
}

// Where a point is answered: once at each such place. `wheel`: duals have two at a corner.
enum class Spot : std::uint8_t { trailer, axle, corner, wheel, actuator, drawbar, frame, lights };

enum class Importance : std::uint8_t {
    optional,
    wanted,
    essential,            // without a good answer nobody can say that nothing was found against towing
    essential_after_work  // essential once the work it belongs to was done (essential_when), else wanted
};

// How long a good answer keeps (points.md 3.3). Distances count where a counter is fitted.
enum class Keeps : std::uint8_t {
    plate,      // until changed
    visit,      // this visit alone
    trip,       // the same day, and until loaded, unloaded or coupled to another vehicle
    quarter,    // 91 days, 3,000 mi
    year,       // 12 months, 12,000 mi
    two_years,  // 24 months
    until_work  // until that place is worked on
};

// Which reason comes first when nobody can tell: the most dangerous.
enum class Danger : std::uint8_t { brakes, coupling, wheels, tires, rest };

// What a job says about the layout, for the rules of what applies.
struct Layout {
    const Trailer* trailer = nullptr;  // nullptr: nothing is known
    const Visit* visit = nullptr;
    const Job* job = nullptr;

    [[nodiscard]] const Axle* axle(int number) const;  // counted from 1; nullptr: no such axle
};
// `not_known`: the layout does not say. An essential point that may apply cannot be left out.
enum class Applies : std::uint8_t { no, yes, not_known };
using AppliesRule = Applies (*)(const Layout& layout, const Place& place);

// One entry of a look list. The worst entry that is chosen grades the answer.
struct LookEntry {
    std::string_view id;    // within the point; what records hold: append only, never renamed
    std::string_view text;  // plain words, as it is seen: "Cords or belts show"
    Grade grade = Grade::do_not_tow;
    Law law{};                    // when it is not the point's own
    AppliesRule where = nullptr;  // offered where this is not `no`; nullptr: wherever the point applies
};
enum class ListKind : std::uint8_t {
    none,
    faults,  // entries are what can be wrong; none chosen: looks good
    ticks,   // each entry is answered by itself; all must be good. The grade is that of a bad one
    choice   // exactly one entry is chosen; its grade says what it means
};

struct TradePoint {
    PointId id;
    std::string_view title;  // "Tread depth"
    Spot spot = Spot::trailer;
    AppliesRule applies = nullptr;  // never nullptr in the table
    Reach reach = Reach::outside;   // who can answer it: from outside, with the wheel on, with the wheel off
    Importance importance = Importance::essential;
    AppliesRule essential_when = nullptr;  // a wanted point is essential where this is not `no`
    Keeps keeps = Keeps::trip;
    std::optional<Keeps> keeps_outside{};  // when answered from outside only, if that keeps for a shorter time
    Danger danger = Danger::rest;
    Law law{};
    bool maker = false;      // the maker's figure is needed
    std::string_view ask{};  // one question, asking what is wrong; empty when it is not asked as a look
    ListKind list = ListKind::none;
    std::span<const LookEntry> entries{};
    std::span<const std::string_view> readings{};  // names in the table of readings that can answer it
    std::span<const Slot> slots{};                 // photos that show it
    bool level = false;                            // answered by a Level record
    bool torque = false;                           // answered by a Torque record
    bool bearing = false;                          // answered by a BearingSetting record
    bool timed = false;                            // answered by a BreakawayTest record
    bool plate = false;                            // answered by plate data, a Sidewall or a Chamber record
    bool computed = false;                         // follows from other answers
};

[[nodiscard]] std::span<const TradePoint> all_points();  // in the order of PointId
[[nodiscard]] const TradePoint& point(PointId id);
[[nodiscard]] const TradePoint* find_point(std::string_view id);  // nullptr: not in the table

// The first point in the table that a reading can answer; nullptr for a reading in no row ("hub counter").
[[nodiscard]] const TradePoint* point_of_reading(std::string_view name);

[[nodiscard]] Layout layout_of(const Job& job);
// An axle's place, by convention: its left corner.
[[nodiscard]] Place axle_place(int axle);
// The places at which a point is answered on this trailer, in order; empty when the layout says that it does not apply.
// A point that may apply (not_known) has its places too. Without axles nothing at a corner has a place.
[[nodiscard]] std::vector<Place> places_of(const TradePoint& point, const Layout& layout);
// What applies at this place: `applies`, and whether there is such a place at all.
[[nodiscard]] Applies applies_at(const TradePoint& point, const Layout& layout, const Place& place);
// The same, whether or not the work that makes it apply was done or its reading taken: what a screen may offer there.
[[nodiscard]] Applies could_apply(const TradePoint& point, const Layout& layout, const Place& place);
// How much the point matters at this place: never essential_after_work, which is settled here.
[[nodiscard]] Importance importance_at(const TradePoint& point, const Layout& layout, const Place& place);
// The entries of its list that are offered at this place.
[[nodiscard]] std::vector<const LookEntry*> entries_at(const TradePoint& point, const Layout& layout,
                                                       const Place& place);
[[nodiscard]] const LookEntry* find_entry(const TradePoint& point, std::string_view id);  // nullptr: not in its list
// Its source on this trailer: the tire placard's depends on the trailer's rating.
[[nodiscard]] Law law_at(const TradePoint& point, const Layout& layout);

// The spots of this kind at a corner (its wheels with it, and its axle with the left one) or at a station.
[[nodiscard]] std::vector<Place> spots_at(Spot spot, const Layout& layout, const Place& place);

struct PointAt {
    const TradePoint* point = nullptr;
    Place place;
};
// What is answered at a corner or a station, in table order.
[[nodiscard]] std::vector<PointAt> points_at(const Layout& layout, const Place& place);

}  // namespace cotter
