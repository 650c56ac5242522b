// Paths through the brake pipes.
#include "core/work/bleed.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/work/amounts.h"
#include "core/work/fluid.h"

namespace cotter {

namespace {

constexpr const char* kActuator = "actuator";
constexpr double kSameLength = 0.001;  // m

std::string leg_name(const PipeLeg& leg) {
    return one_line(leg.from + " to " + leg.to, 80);
}

// The pipes as a tree that grows from the actuator.
class Pipes {
public:
    explicit Pipes(const PipeRoute& route) : route_(route) {}

    Result<> check() const {
        if (route_.legs.empty())
            return fail(Errc::refused, "the pipe route is empty", {},
                        "enter each pipe from the actuator to the corners");
        for (const PipeLeg& leg : route_.legs) COTTER_TRY(check_leg(leg));
        return {};
    }

    // Walks from a corner back to the actuator.
    Result<BleedStop> path_to(const Place& place) const {
        BleedStop stop{place, 0, 0, {}};
        std::string at = place.text();
        bool bores_known = true;
        for (std::size_t steps = 0; at != kActuator; ++steps) {
            const PipeLeg* leg = feeding(at);
            if (leg == nullptr)
                return fail(Errc::refused, fmt::format("no pipe leads from the actuator to {}", place.text()),
                            one_line(at, 40), "enter the missing pipe");
            if (steps > route_.legs.size())
                return fail(Errc::refused, "the pipes lead in a circle", leg_name(*leg), "look at the route again");
            stop.path += leg->length.si();
            if (leg->bore)
                stop.volume += bore_volume(leg->bore->si(), leg->length.si());
            else
                bores_known = false;
            at = leg->from;
        }
        if (!bores_known) stop.volume = 0;
        return stop;
    }

private:
    Result<> check_leg(const PipeLeg& leg) const {
        auto length = need_quantity(leg.length, Quantity::length, "the pipe's length");
        if (!length) return unexpected(context(length.error(), leg_name(leg)));
        if (leg.bore) COTTER_TRY(need_quantity(*leg.bore, Quantity::length, "the pipe's bore"));
        if (!(leg.length.si() > 0))
            return fail(Errc::refused, "the pipe's length is not above zero", leg_name(leg),
                        "measure it along its way");
        if (leg.from.empty() || leg.to.empty() || leg.from == leg.to || leg.to == kActuator)
            return fail(Errc::refused, "a pipe leads from the actuator's side to a tee or a corner", leg_name(leg));
        const auto feeds = std::count_if(route_.legs.begin(), route_.legs.end(),
                                         [&](const PipeLeg& other) { return other.to == leg.to; });
        if (feeds > 1)
            return fail(Errc::refused, fmt::format("two pipes lead to {}", one_line(leg.to, 40)), leg_name(leg),
                        "give each tee a name of its own");
        return {};
    }

    const PipeLeg* feeding(const std::string& end) const {
        for (const PipeLeg& leg : route_.legs)
            if (leg.to == end) return &leg;
        return nullptr;
    }

    const PipeRoute& route_;
};

bool is_hydraulic(const Trailer& trailer, const Place& corner) {
    return is_hydraulic(trailer.axles[static_cast<std::size_t>(corner.axle) - 1].brake);
}

bool bled_before(const BleedStop& a, const BleedStop& b) {
    if (std::abs(a.path - b.path) > kSameLength) return a.path > b.path;
    if (a.place.axle != b.place.axle) return a.place.axle > b.place.axle;
    return a.place.side == Side::right && b.place.side == Side::left;
}

Result<> check_corners(const PipeRoute& route, const Trailer& trailer) {
    for (const PipeLeg& leg : route.legs) {
        const auto place = Place::parse(leg.to);
        if (place && place->is_corner() && !trailer.has(*place))
            return fail(Errc::refused, "the trailer has no such corner", leg_name(leg), "look at the axle count");
    }
    return {};
}

}  // namespace

Result<std::vector<BleedStop>> bleed_order(const PipeRoute& route, const Trailer& trailer) {
    const Pipes pipes(route);
    COTTER_TRY(pipes.check());
    COTTER_TRY(check_corners(route, trailer));
    std::vector<BleedStop> out;
    for (const Place& corner : trailer.corners()) {
        if (!is_hydraulic(trailer, corner)) continue;
        COTTER_ASSIGN(BleedStop stop, pipes.path_to(corner));
        out.push_back(std::move(stop));
    }
    if (out.empty()) return fail(Errc::refused, "the trailer has no hydraulic brake to bleed");
    // Places that the tolerance calls equal must not depend on the order they came in.
    std::stable_sort(out.begin(), out.end(), bled_before);
    for (std::size_t i = 0; i < out.size(); ++i)
        out[i].words =
            fmt::format("{}: {} m of pipe from the actuator{}", out[i].place.text(), rounded_text(out[i].path, 1),
                        i == 0                ? ", the farthest, so first"
                        : i + 1 == out.size() ? ", the nearest, so last"
                                              : "");
    return out;
}

std::optional<double> pipe_volume(const PipeRoute& route) {
    double out = 0;
    for (const PipeLeg& leg : route.legs) {
        if (!leg.bore) return std::nullopt;
        out += bore_volume(leg.bore->si(), leg.length.si());
    }
    return route.legs.empty() ? std::nullopt : std::optional(out);
}

std::vector<BleedTally> bleed_tallies(const Job& job) {
    std::vector<BleedTally> out;
    for (const BleedCount& count : job.all<BleedCount>()) {
        auto it = std::find_if(out.begin(), out.end(), [&](const BleedTally& t) { return t.place == count.place; });
        if (it == out.end()) it = out.insert(out.end(), BleedTally{count.place, 0, 0, false});
        ++it->rounds;
        it->drawn += count.drawn.si();
        it->clean = count.clear && !count.bubbles;
    }
    return out;
}

std::vector<BleedRemark> check_bleeding(const Job& job, const std::vector<BleedStop>& order) {
    std::vector<BleedRemark> out;
    const auto tallies = bleed_tallies(job);
    std::vector<Place> planned, went;
    for (const BleedTally& tally : tallies) went.push_back(tally.place);
    for (const BleedStop& stop : order) {
        const auto it =
            std::find_if(tallies.begin(), tallies.end(), [&](const auto& t) { return t.place == stop.place; });
        if (it == tallies.end())
            out.push_back({true, fmt::format("{} is not bled yet", stop.place.text())});
        else if (!it->clean)
            out.push_back(
                {true, fmt::format("{} did not run clear and without bubbles at its end", stop.place.text())});
        if (it != tallies.end()) planned.push_back(stop.place);
    }
    if (planned != went) out.push_back({false, "the corners were bled in another order than farthest first"});
    return out;
}

}  // namespace cotter
