// See tried.h.
#include "core/work/tried.h"

#include <algorithm>
#include <charconv>
#include <optional>

#include "core/trade/work_done.h"

namespace cotter {

namespace {

constexpr double kMostLost = 0.10;
constexpr double kHoldMinutes = 5;
constexpr std::int64_t kBreakawaySeconds = 15 * 60;
constexpr std::size_t kAllAxlesBelow = 3;

// "after 5 min" -> 5
std::optional<double> minutes_of(std::string_view where) {
    constexpr std::string_view kAfter = "after ";
    if (!where.starts_with(kAfter)) return std::nullopt;
    where.remove_prefix(kAfter.size());
    int minutes = 0;
    const auto [end, error] = std::from_chars(where.data(), where.data() + where.size(), minutes);
    if (error != std::errc{} || !std::string_view(end, where.data() + where.size() - end).starts_with(" min"))
        return std::nullopt;
    return minutes;
}

Place corner_of(const Place& place) {
    return Place::corner(place.axle, place.side);
}

const BreakawayTest* newest_test(const Job& job) {
    const BreakawayTest* found = nullptr;
    for (const BreakawayTest& test : job.all<BreakawayTest>())
        if (found == nullptr || found->at <= test.at) found = &test;
    return found;
}

const WheelHeld* wheel_in(const BreakawayTest& test, const Place& corner) {
    for (const WheelHeld& wheel : test.wheels)
        if (wheel.place.is_corner() && corner_of(wheel.place) == corner) return &wheel;
    return nullptr;
}

bool held_at_start(const BreakawayTest& test, int axle, Side side) {
    const WheelHeld* wheel = wheel_in(test, Place::corner(axle, side));
    return wheel != nullptr && wheel->at_start == Held::holds;
}

bool some_axle_held(const BreakawayTest& test, const Trailer& trailer) {
    for (int axle = 1; axle <= static_cast<int>(trailer.axles.size()); ++axle)
        if (held_at_start(test, axle, Side::left) && held_at_start(test, axle, Side::right)) return true;
    return false;
}

bool wheel_passed(const BreakawayTest& test, const Trailer& trailer, const Place& corner) {
    const WheelHeld* wheel = wheel_in(test, corner);
    if (wheel == nullptr || wheel->pin_back != Held::turns) return false;
    const bool not_acted_on = trailer.axles.size() >= kAllAxlesBelow && wheel->at_start == Held::turns &&
                              !held_at_start(test, corner.axle, Side::left) &&
                              !held_at_start(test, corner.axle, Side::right) && some_axle_held(test, trailer);
    return not_acted_on || (wheel->at_start == Held::holds && wheel->at_end == Held::holds);
}

constexpr Work kWorks[] = {Work::wheel_off,       Work::hub_opened,   Work::hydraulics_opened,
                           Work::linings_renewed, Work::brake_opened, Work::electrics,
                           Work::tire_changed,    Work::u_bolts,      Work::cap};

}  // namespace

bool held_pressure(const Reading& hold) {
    std::optional<double> start, end;
    double longest = 0;
    for (const ReadingPoint& point : hold.points) {
        if (point.where.starts_with("start")) start = point.value.value();
        const auto minutes = minutes_of(point.where);
        if (!minutes || *minutes < longest) continue;
        longest = *minutes;
        end = point.value.value();
    }
    const double allowed = kMostLost * std::min(longest / kHoldMinutes, 1.0);
    return start && end && *start > 0 && longest > 0 && *start - *end <= allowed * *start;
}

bool passed_breakaway(const Job& job) {
    const BreakawayTest* test = newest_test(job);
    const Trailer* trailer = job.only<Trailer>();
    if (test == nullptr || trailer == nullptr || !test->ended || !test->pin_in_again) return false;
    if (test->ended->unix_s - test->started.unix_s < kBreakawaySeconds) return false;
    const auto corners = trailer->corners();
    return std::all_of(corners.begin(), corners.end(), [&](const Place& corner) {
        const BrakeKind brake = trailer->axles[static_cast<std::size_t>(corner.axle) - 1].brake;
        return !is_braked(brake) || wheel_passed(*test, *trailer, corner);
    });
}

bool looks_good_since_work(const Job& job, std::string_view point, const Place& place) {
    const Look* newest = nullptr;
    for (const Look& look : job.all<Look>())
        if (look.point == point && look.place == place && (newest == nullptr || newest->at <= look.at)) newest = &look;
    const auto id = from_name<PointId>(point);
    if (newest == nullptr || newest->result != LookResult::good || !id) return false;
    return std::none_of(std::begin(kWorks), std::end(kWorks), [&](Work work) {
        const auto done = opens_again(work, *id) ? work_done(job, work, place) : std::nullopt;
        return done && newest->at < *done;
    });
}

}  // namespace cotter
