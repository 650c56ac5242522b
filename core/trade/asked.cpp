// See asked.h.
#include "core/trade/asked.h"

#include <algorithm>
#include <array>

#include "core/trade/rules.h"

namespace cotter {

namespace {

// Readings that are taken elsewhere than at their point, or only by one kind of brake. A name in this list is offered
// by its rows alone.
struct TakenAt {
    std::string_view name;
    Spot spot;
    AppliesRule where;
    Reach reach = Reach::outside;
};
constexpr std::array kTakenAt{
    TakenAt{what::hub_temperature, Spot::corner, applies::always},
    TakenAt{what::hub_temperature, Spot::trailer, applies::always},  // one round, with the air
    TakenAt{what::axle_weight, Spot::trailer, applies::always},
    TakenAt{what::wheel_weight, Spot::corner, applies::always},
    TakenAt{what::tongue_weight, Spot::drawbar, applies::always},
    TakenAt{what::battery_volts, Spot::actuator, applies::electric_pull},
    TakenAt{what::magnets_total, Spot::actuator, applies::electric_pull},
    TakenAt{what::push_rod_stroke, Spot::corner, applies::air_rod, Reach::wheel_on},
    TakenAt{what::wedge_movement, Spot::corner, applies::air_wedge, Reach::wheel_on},
    TakenAt{what::run_total, Spot::trailer, applies::always},
    TakenAt{what::run_since, Spot::trailer, applies::always},
};

bool has_rows(std::string_view name) {
    return std::any_of(kTakenAt.begin(), kTakenAt.end(), [&](const TakenAt& row) { return row.name == name; });
}

std::optional<Spot> spot_of(const Place& place) {
    if (place.is_corner()) return std::nullopt;
    switch (place.station) {
        case Station::drawbar:
            return Spot::drawbar;
        case Station::actuator:
            return Spot::actuator;
        case Station::frame:
            return Spot::frame;
        case Station::lights:
            return Spot::lights;
        case Station::trailer:
            break;
    }
    return Spot::trailer;
}

// Whether the missing reading of a row is a gap: its point applies now, and is more than optional.
bool counts(std::string_view name, const Layout& layout, const Place& place) {
    if (reading_spec(name)->use != ReadingUse::taken) return false;
    const TradePoint* point = point_of_reading(name);
    if (point == nullptr) return true;
    if (point->importance == Importance::optional) return false;
    return point->spot == Spot::corner ? applies_at(*point, layout, place) != Applies::no
                                       : !places_of(*point, layout).empty();
}

using WantedList = std::vector<WantedReading>;

void add(WantedList& out, const WantedReading& wanted) {
    const auto same = [&](const WantedReading& w) { return w.spec == wanted.spec && w.place == wanted.place; };
    if (std::none_of(out.begin(), out.end(), same)) out.push_back(wanted);
}

void add_rows(WantedList& out, const Layout& layout, const Place& place) {
    const std::optional<Spot> station = spot_of(place);
    for (const TakenAt& row : kTakenAt) {
        const bool here = station ? row.spot == *station : row.spot == Spot::corner;
        if (here && row.where(layout, place) != Applies::no)
            add(out, {reading_spec(row.name), place, counts(row.name, layout, place), row.reach});
    }
}

// Every point whose component is there, whether or not work has made it due.
std::vector<PointAt> points_possible(const Layout& layout, const Place& place) {
    std::vector<PointAt> out;
    for (const TradePoint& p : all_points())
        for (const Place& at : spots_at(p.spot, layout, place))
            if (could_apply(p, layout, at) != Applies::no) out.push_back({&p, at});
    return out;
}

bool missing_at(const PointAt& at, const Layout& layout) {
    return at.point->importance != Importance::optional && applies_at(*at.point, layout, at.place) != Applies::no;
}

// From the wheel as found to what shows when parts come off.
constexpr std::array kSlotOrder{Slot::whole,      Slot::data_plate, Slot::coupler,   Slot::chains, Slot::reservoir,
                                Slot::wheel_on,   Slot::nuts,       Slot::cap,       Slot::tread,  Slot::sidewall,
                                Slot::springs,    Slot::brake,      Slot::caliper,   Slot::lining, Slot::rotor_face,
                                Slot::rotor_edge, Slot::guide_pin,  Slot::hose_line, Slot::wiring, Slot::bearing,
                                Slot::spindle,    Slot::seal_side};

bool seen_after(Slot slot, const Place& place) {
    return !place.is_corner() || slot == Slot::wheel_on || slot == Slot::nuts || slot == Slot::cap;
}

}  // namespace

std::vector<WantedReading> readings_wanted(const Layout& layout, const Place& place) {
    WantedList out;
    if (place.is_corner() && layout.axle(place.axle) == nullptr) return out;
    for (const PointAt& at : points_possible(layout, place))
        for (const std::string_view name : at.point->readings) {
            const ReadingSpec* spec = reading_spec(name);
            if (!is_offered(*spec) || has_rows(name)) continue;
            const bool missing = spec->use == ReadingUse::taken && missing_at(at, layout);
            add(out, {spec, at.place, missing, at.point->reach});
        }
    add_rows(out, layout, place);
    const auto rank = [](const WantedReading& w) {
        return std::pair(w.spec->use == ReadingUse::extra, w.spec - all_readings().data());
    };
    std::stable_sort(out.begin(), out.end(),
                     [&](const WantedReading& a, const WantedReading& b) { return rank(a) < rank(b); });
    return out;
}

std::vector<std::string> spots_of(const ReadingSpec& spec, const Layout& layout, const Place& place) {
    const std::size_t axles = layout.trailer == nullptr ? 0 : layout.trailer->axles.size();
    std::vector<std::string> out;
    if (spec.name == what::axle_weight) {
        for (std::size_t i = 1; i <= axles; ++i) out.push_back("axle " + std::to_string(i));
        return out;
    }
    if (spec.name == what::hub_temperature && place == Place::at(Station::trailer)) {
        if (layout.trailer != nullptr)
            for (const Place& corner : layout.trailer->corners())
                out.push_back("axle " + std::to_string(corner.axle) + " " + std::string(name_of(corner.side)));
        out.emplace_back("ambient");
        return out;
    }
    for (const std::string_view point : spec.points) out.emplace_back(point);
    return out;
}

std::vector<WantedSlot> slots_wanted(const Layout& layout, const Place& place, Stage stage) {
    std::vector<WantedSlot> found;
    for (const PointAt& at : points_possible(layout, place))
        for (const Slot slot : at.point->slots) {
            if (stage == Stage::after && !seen_after(slot, place)) continue;
            const auto there =
                std::find_if(found.begin(), found.end(), [&](const WantedSlot& w) { return w.slot == slot; });
            const WantedSlot wanted{slot, missing_at(at, layout), at.point->reach};
            if (there == found.end()) {
                found.push_back(wanted);
            } else {
                there->missing = there->missing || wanted.missing;
                there->reach = std::min(there->reach, wanted.reach);
            }
        }
    const auto rank = [](const WantedSlot& w) {
        return std::find(kSlotOrder.begin(), kSlotOrder.end(), w.slot) - kSlotOrder.begin();
    };
    std::stable_sort(found.begin(), found.end(),
                     [&](const WantedSlot& a, const WantedSlot& b) { return rank(a) < rank(b); });
    return found;
}

}  // namespace cotter
