// What is asked for where, derived from the points: readings for the keypad, photos for their slots. Pure; any thread.
#pragma once

#include <string>
#include <vector>

#include "core/trade/point.h"
#include "core/trade/reading_spec.h"

namespace cotter {

// A reading that is offered. With dual wheels each tire has its own place.
struct WantedReading {
    const ReadingSpec* spec = nullptr;
    Place place;
    bool missing = false;  // it should be taken: its absence is a gap
    Reach reach = Reach::outside;
};
// At a corner (with its wheels, and its axle at the left one) or a station, in the order in which they are usually
// taken; extras last. Without axles there are only stations.
[[nodiscard]] std::vector<WantedReading> readings_wanted(const Layout& layout, const Place& place);
// The names of its spots there: a round over all hubs is one reading of the trailer. Empty: one nameless spot.
[[nodiscard]] std::vector<std::string> spots_of(const ReadingSpec& spec, const Layout& layout, const Place& place);

struct WantedSlot {
    Slot slot = Slot::other;
    bool missing = false;  // it should be taken: its absence is a gap
    Reach reach = Reach::outside;
};
// The photos that show what is looked at there, in the order in which they are usually taken: the wheel as found, then
// deeper with each part that comes off. After the work those come back that can still be seen with the wheel on.
[[nodiscard]] std::vector<WantedSlot> slots_wanted(const Layout& layout, const Place& place, Stage stage);

}  // namespace cotter
