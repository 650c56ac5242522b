// The table put together, and where each point is answered.
#include <algorithm>

#include "core/trade/points_parts.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

constexpr double kPound = 0.45359237;

std::vector<TradePoint> join_parts() {
    std::vector<TradePoint> out;
    for (const auto part : {plate_points(), wheel_points(), hub_points(), brake_points(), disc_drum_points(),
                            air_points(), actuation_points(), coupling_points(), light_points(), running_points()})
        out.insert(out.end(), part.begin(), part.end());
    return out;
}

Place corner_of(const Place& place) {
    return Place::corner(place.axle, place.side);
}

// Every place of a point's kind that this trailer has, whether the point applies there or not.
std::vector<Place> spots(Spot spot, const Trailer* trailer) {
    switch (spot) {
        case Spot::trailer:
            return {Place::at(Station::trailer)};
        case Spot::actuator:
            return {Place::at(Station::actuator)};
        case Spot::drawbar:
            return {Place::at(Station::drawbar)};
        case Spot::frame:
            return {Place::at(Station::frame)};
        case Spot::lights:
            return {Place::at(Station::lights)};
        default:
            break;
    }
    std::vector<Place> out;
    if (trailer == nullptr) return out;
    for (const Place& corner : trailer->corners()) {
        const bool dual = trailer->axles[static_cast<std::size_t>(corner.axle - 1)].wheels == Wheels::dual;
        if (spot == Spot::axle) {
            if (corner.side == Side::left) out.push_back(corner);
        } else if (spot == Spot::wheel && dual) {
            out.push_back(Place::corner(corner.axle, corner.side, Wheel::outer));
            out.push_back(Place::corner(corner.axle, corner.side, Wheel::inner));
        } else {
            out.push_back(corner);
        }
    }
    return out;
}

}  // namespace

const Axle* Layout::axle(int number) const {
    if (trailer == nullptr || number < 1 || number > static_cast<int>(trailer->axles.size())) return nullptr;
    return &trailer->axles[static_cast<std::size_t>(number - 1)];
}

std::span<const TradePoint> all_points() {
    static const std::vector<TradePoint> all = join_parts();
    return all;
}

const TradePoint& point(PointId id) {
    return all_points()[static_cast<std::size_t>(id)];
}

const TradePoint* find_point(std::string_view id) {
    const auto known = from_name<PointId>(id);
    return known ? &point(*known) : nullptr;
}

const TradePoint* point_of_reading(std::string_view name) {
    const ReadingSpec* spec = reading_spec(name);
    if (spec == nullptr) return nullptr;
    for (const TradePoint& p : all_points())
        if (std::find(p.readings.begin(), p.readings.end(), spec->name) != p.readings.end()) return &p;
    return nullptr;
}

Layout layout_of(const Job& job) {
    return {job.only<Trailer>(), job.only<Visit>(), &job};
}

Place axle_place(int axle) {
    return Place::corner(axle, Side::left);
}

Applies applies_at(const TradePoint& point, const Layout& layout, const Place& place) {
    const auto all = spots(point.spot, layout.trailer);
    if (std::find(all.begin(), all.end(), place) == all.end()) return Applies::no;
    return point.applies(layout, place);
}

std::vector<Place> places_of(const TradePoint& point, const Layout& layout) {
    std::vector<Place> out = spots(point.spot, layout.trailer);
    std::erase_if(out, [&](const Place& place) { return point.applies(layout, place) == Applies::no; });
    return out;
}

Applies could_apply(const TradePoint& point, const Layout& layout, const Place& place) {
    const auto all = spots(point.spot, layout.trailer);
    if (std::find(all.begin(), all.end(), place) == all.end()) return Applies::no;
    return applies::by_record(point.applies) ? Applies::yes : point.applies(layout, place);
}

Importance importance_at(const TradePoint& point, const Layout& layout, const Place& place) {
    if (point.essential_when != nullptr && point.essential_when(layout, place) != Applies::no)
        return Importance::essential;
    return point.importance == Importance::essential_after_work ? Importance::wanted : point.importance;
}

std::vector<const LookEntry*> entries_at(const TradePoint& point, const Layout& layout, const Place& place) {
    std::vector<const LookEntry*> out;
    for (const LookEntry& entry : point.entries)
        if (entry.where == nullptr || entry.where(layout, place) != Applies::no) out.push_back(&entry);
    return out;
}

const LookEntry* find_entry(const TradePoint& point, std::string_view id) {
    for (const LookEntry& entry : point.entries)
        if (entry.id == id) return &entry;
    return nullptr;
}

Law law_at(const TradePoint& point, const Layout& layout) {
    const bool heavy =
        layout.trailer != nullptr && layout.trailer->gvwr && layout.trailer->gvwr->si() > 10000 * kPound * (1 + 1e-9);
    if (point.id == PointId::plate_tire && heavy) return {"49 CFR 571.120 S5.3", Evidence::memory};
    return point.law;
}

std::vector<Place> spots_at(Spot spot, const Layout& layout, const Place& place) {
    std::vector<Place> out = spots(spot, layout.trailer);
    std::erase_if(out, [&](const Place& at) {
        if (!place.is_corner()) return at != place;
        const bool corner = at.is_corner() && corner_of(at) == corner_of(place);
        return !corner || (place.wheel != Wheel::only && at.wheel != place.wheel);
    });
    return out;
}

std::vector<PointAt> points_at(const Layout& layout, const Place& place) {
    std::vector<PointAt> out;
    for (const TradePoint& p : all_points())
        for (const Place& at : spots_at(p.spot, layout, place))
            if (p.applies(layout, at) != Applies::no) out.push_back({&p, at});
    return out;
}

}  // namespace cotter
