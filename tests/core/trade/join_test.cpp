// The lists that screens take from the table say what the table says: each point's readings and photos are offered
// where it may apply, and nowhere else.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "core/trade/asked.h"

using namespace cotter;

namespace {

std::vector<Place> all_places(const Trailer& trailer) {
    std::vector<Place> out = trailer.corners();
    for (const Station s : {Station::drawbar, Station::actuator, Station::frame, Station::lights, Station::trailer})
        out.push_back(Place::at(s));
    return out;
}

// Every brake with every hub, actuation and wheel: more than is ever built, which is the point.
std::vector<Job> jobs() {
    std::vector<Job> out;
    for (std::size_t b = 0; b < names(BrakeKind{}).size(); ++b)
        for (std::size_t h = 0; h < names(HubKind{}).size(); ++h)
            for (std::size_t a = 0; a < names(Actuation{}).size(); ++a) {
                Job job;
                Trailer trailer;
                Axle axle;
                axle.brake = static_cast<BrakeKind>(b);
                axle.hub = static_cast<HubKind>(h);
                axle.wheels = (a + h) % 2 == 0 ? Wheels::single : Wheels::dual;
                axle.suspension = static_cast<Suspension>((a + b) % names(Suspension{}).size());
                trailer.axles = {axle};
                trailer.actuation = static_cast<Actuation>(a);
                trailer.coupler = static_cast<CouplerKind>((a + h) % names(CouplerKind{}).size());
                job.all<Visit>().emplace_back();
                job.all<Trailer>().push_back(trailer);
                out.push_back(job);
            }
    return out;
}

bool could_be_somewhere(const TradePoint& p, const Layout& layout) {
    const auto places = all_places(*layout.trailer);
    return std::any_of(places.begin(), places.end(), [&](const Place& place) {
        const auto spots = spots_at(p.spot, layout, place);
        return std::any_of(spots.begin(), spots.end(),
                           [&](const Place& at) { return could_apply(p, layout, at) != Applies::no; });
    });
}

}  // namespace

TEST_CASE("every reading that is offered belongs to a point that may apply, and every such point has its readings") {
    std::set<std::string_view> offered_once;
    std::size_t offers = 0;
    for (const Job& job : jobs()) {
        const Layout layout = layout_of(job);
        CAPTURE(name_of(layout.trailer->axles.front().brake));
        CAPTURE(name_of(*layout.trailer->actuation));
        std::set<std::string_view> offered;
        for (const Place& place : all_places(*layout.trailer))
            for (const WantedReading& w : readings_wanted(layout, place)) {
                CAPTURE(w.spec->name);
                CHECK(is_offered(*w.spec));
                const TradePoint* p = point_of_reading(w.spec->name);
                if (p != nullptr) CHECK(could_be_somewhere(*p, layout));
                offered.insert(w.spec->name);
                ++offers;
            }
        for (const TradePoint& p : all_points()) {
            CAPTURE(p.title);
            const bool possible = could_be_somewhere(p, layout);
            const bool asks = std::any_of(p.readings.begin(), p.readings.end(),
                                          [](std::string_view name) { return is_offered(*reading_spec(name)); });
            const bool has = std::any_of(p.readings.begin(), p.readings.end(),
                                         [&](std::string_view name) { return offered.count(name) == 1; });
            if (possible && asks && !p.timed) CHECK(has);  // a timed test needs no battery
        }
        offered_once.insert(offered.begin(), offered.end());
    }
    std::size_t to_take = 0;
    for (const ReadingSpec& spec : all_readings()) {
        CAPTURE(spec.name);
        CHECK((offered_once.count(spec.name) == 1) == is_offered(spec));
        to_take += is_offered(spec) ? 1 : 0;
    }
    CHECK(offers > 1000);
    MESSAGE(all_points().size() << " points, " << to_take << " readings, each offered somewhere; " << jobs().size()
                                << " layouts");
}

TEST_CASE("a photo is asked for exactly where a point that it shows may apply") {
    for (const Job& job : jobs()) {
        const Layout layout = layout_of(job);
        for (const Place& place : all_places(*layout.trailer)) {
            std::set<Slot> shown;
            for (const TradePoint& p : all_points())
                for (const Place& at : spots_at(p.spot, layout, place))
                    if (could_apply(p, layout, at) != Applies::no) shown.insert(p.slots.begin(), p.slots.end());
            std::set<Slot> wanted;
            for (const WantedSlot& w : slots_wanted(layout, place, Stage::before)) wanted.insert(w.slot);
            CHECK(wanted == shown);
        }
    }
}

TEST_CASE("what is missing is a part of what is offered, and follows the point that applies") {
    for (const Job& job : jobs()) {
        const Layout layout = layout_of(job);
        for (const Place& corner : layout.trailer->corners())
            for (const WantedReading& w : readings_wanted(layout, corner)) {
                if (!w.missing) continue;
                CAPTURE(w.spec->name);
                const TradePoint* p = point_of_reading(w.spec->name);
                REQUIRE(p != nullptr);
                CHECK(applies_at(*p, layout, w.place) != Applies::no);
            }
    }
}
