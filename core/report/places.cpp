// Sorting by place.
#include "core/report/places.h"

#include <algorithm>

#include "core/report/say.h"

namespace cotter {

namespace {

class Sorting {
public:
    void open(const Place& place) { (void)at(place); }

    template <class R>
    void take(const Job& job, std::vector<const R*> PlaceRecords::*list) {
        for (const R& record : job.all<R>()) (at(record.place).*list).push_back(&record);
    }

    std::vector<PlaceRecords> out;

private:
    PlaceRecords& at(Place place) {
        place = without_wheel(place);
        for (PlaceRecords& known : out)
            if (known.place == place) return known;
        out.push_back({place, {}, {}, {}, {}, {}});
        return out.back();
    }
};

// The whole trailer, then corners from the front, left before right, then stations.
int rank(const Place& place) {
    if (place.is_corner()) return place.axle * 2 + static_cast<int>(place.side);
    return place.station == Station::trailer ? 0 : 100 + static_cast<int>(place.station);
}

template <class R>
std::size_t without_value(const std::vector<const R*>& records) {
    return static_cast<std::size_t>(
        std::count_if(records.begin(), records.end(), [](const R* r) { return r->taken != Taken::measured; }));
}

}  // namespace

bool PlaceRecords::empty() const {
    return shots.empty() && findings.empty() && readings.empty() && torques.empty() && levels.empty();
}

std::optional<Grade> PlaceRecords::worst() const {
    std::optional<Grade> out;
    for (const Finding* finding : findings) out = out ? std::max(*out, finding->grade) : finding->grade;
    return out;
}

std::optional<Grade> PlaceRecords::worst_not_repaired() const {
    std::optional<Grade> out;
    for (const Finding* finding : findings)
        if (finding->outcome != Outcome::repaired) out = out ? std::max(*out, finding->grade) : finding->grade;
    return out;
}

std::size_t PlaceRecords::not_taken() const {
    return without_value(readings) + without_value(torques) + without_value(levels);
}

std::vector<PlaceRecords> by_place(const Job& job) {
    Sorting sorting;
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners()) sorting.open(corner);
    sorting.take(job, &PlaceRecords::shots);
    sorting.take(job, &PlaceRecords::findings);
    sorting.take(job, &PlaceRecords::readings);
    sorting.take(job, &PlaceRecords::torques);
    sorting.take(job, &PlaceRecords::levels);
    std::stable_sort(sorting.out.begin(), sorting.out.end(),
                     [](const auto& a, const auto& b) { return rank(a.place) < rank(b.place); });
    return std::move(sorting.out);
}

}  // namespace cotter
