// See bleed_view.h.
#include "app/views/bleed_view.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/views/place_text.h"
#include "app/views/plan_view.h"
#include "core/work/fluid.h"

namespace cotter {

namespace {

constexpr const char* kActuator = "actuator";

std::string end_label(const std::string& code, SideWords sides) {
    const auto place = Place::parse(code);
    return place && place->is_corner() ? place_words(*place, sides) : upper_first(code);
}

bool reached(const PipeRoute& route, const std::string& code) {
    return std::any_of(route.legs.begin(), route.legs.end(), [&](const PipeLeg& leg) { return leg.to == code; });
}

bool has_brake(const Trailer& trailer, const Place& corner) {
    const BrakeKind brake = trailer.axles[static_cast<std::size_t>(corner.axle) - 1].brake;
    return brake == BrakeKind::hydraulic_disc || brake == BrakeKind::hydraulic_drum;
}

// A pipe begins at the actuator or where another one ends; it ends at a corner that has none yet, or at a new tee.
void fill_ends(BleedView& view, const Job& job, SideWords sides) {
    view.from.push_back({kActuator, "Actuator"});
    int tees = 0;
    for (const PipeLeg& leg : view.route.legs) {
        const auto place = Place::parse(leg.to);
        if (place && place->is_corner()) continue;
        view.from.push_back({leg.to, end_label(leg.to, sides)});
        ++tees;
    }
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr) return;
    for (const Place& c : trailer->corners()) {
        const Place corner = Place::corner(c.axle, c.side);
        if (c.wheel == Wheel::inner || !has_brake(*trailer, corner) || reached(view.route, corner.text())) continue;
        view.to.push_back({corner.text(), place_words(corner, sides)});
    }
    if (!view.to.empty()) view.to.push_back({fmt::format("tee {}", tees + 1), fmt::format("A tee (tee {})", tees + 1)});
}

BleedRow row_of(const Job& job, const BleedStop& stop, std::size_t number, SideWords sides) {
    BleedRow row{stop.place, fmt::format("{} {}", number, place_words(stop.place, sides)), "not yet", {}, false};
    const auto colon = stop.words.find(": ");
    row.under = colon == std::string::npos ? stop.words : upper_first(stop.words.substr(colon + 2));
    for (const BleedTally& tally : bleed_tallies(job)) {
        if (!at_place(tally.place, stop.place)) continue;
        row.value = fmt::format("{} mL in {}", std::lround(tally.drawn * 1e6),
                                count_words(static_cast<std::size_t>(tally.rounds), "round", "rounds"));
        row.clean = tally.clean;
        row.under = tally.clean ? "Ran clear and without bubbles" : "Not clear and without bubbles yet";
    }
    return row;
}

void fill_order(BleedView& view, const Job& job, SideWords sides) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr) {
        view.no_order = "Enter the trailer's axles first.";
        return;
    }
    if (view.route.legs.empty()) {
        view.no_order = "Enter the pipes, then the order follows from their lengths.";
        return;
    }
    const auto order = bleed_order(view.route, *trailer);
    if (!order) {
        view.no_order = in_words(upper_first(order.error().what), sides) + ".";
        return;
    }
    for (const BleedStop& stop : *order) {
        view.order.push_back(row_of(job, stop, view.order.size() + 1, sides));
        if (!view.order.back().clean && !view.next) view.next = view.order.size() - 1;
    }
    view.remarks = check_bleeding(job, *order);
    for (BleedRemark& r : view.remarks) r.words = in_words(r.words, sides);
    view.done = std::none_of(view.remarks.begin(), view.remarks.end(), [](const BleedRemark& r) { return r.blocks; });
}

std::string ran_words(const BleedCount& count) {
    return fmt::format("{}, {}", count.clear ? "clear" : "dark or dirty",
                       count.bubbles ? "still bubbles" : "no bubbles");
}

void fill_rounds(BleedView& view, const Job& job, SideWords sides) {
    for (const BleedCount& count : job.all<BleedCount>()) {
        RoundRow row{count.id, place_words(count.place, sides), count.drawn.text(), upper_first(ran_words(count))};
        if (!count.fluid.empty()) row.under += ", " + count.fluid;
        row.under += ", " + clock_words(count.at);
        view.rounds.insert(view.rounds.begin(), std::move(row));
    }
}

std::string millilitres(double cubic_metres) {
    return fmt::format("{}", std::lround(cubic_metres * 1e6));
}

std::string holds_words(const PipeRoute& route) {
    if (route.legs.empty()) return {};
    const auto unknown = std::count_if(route.legs.begin(), route.legs.end(), [](const PipeLeg& l) { return !l.bore; });
    const auto volume = pipe_volume(route);
    if (!volume)
        return fmt::format("What the pipes hold cannot be told: the inside diameter of {} is not entered.",
                           count_words(static_cast<std::size_t>(unknown), "pipe", "pipes"));
    const FlushPlan plan = flush_plan(*volume, 0, 0);
    return fmt::format(
        "The pipes hold {} mL. A flush takes two to three times what the system holds: {} to {} mL for the pipes, and "
        "as many times what calipers and reservoir hold.",
        millilitres(*volume), millilitres(plan.least), millilitres(plan.most));
}

}  // namespace

BleedView bleed_view(const Session& session) {
    const Job& job = session.job();
    const SideWords sides = session.settings().sides;
    BleedView view;
    view.chrome = chrome_of(session, "Bleeding", trailer_words(job));
    if (const PipeRoute* route = job.only<PipeRoute>()) view.route = *route;
    for (const PipeLeg& leg : view.route.legs)
        view.legs.push_back({end_label(leg.from, sides) + " to " + end_label(leg.to, sides), leg.length.text(),
                             leg.bore ? leg.bore->text() + " inside" : std::string()});
    view.holds = holds_words(view.route);
    fill_ends(view, job, sides);
    fill_order(view, job, sides);
    fill_rounds(view, job, sides);
    const auto name_fluid = [&](const std::string& name) {
        if (!name.empty() && std::find(view.fluids.begin(), view.fluids.end(), name) == view.fluids.end())
            view.fluids.push_back(name);
    };
    for (const Level& level : job.all<Level>())
        if (level.fluid == "brake fluid") name_fluid(level.product);
    for (const BleedCount& count : job.all<BleedCount>()) {
        name_fluid(count.fluid);
        if (!count.fluid.empty()) view.fluid = count.fluid;
    }
    if (view.fluid.empty() && view.fluids.size() == 1) view.fluid = view.fluids.front();
    for (const char* usual : {"DOT 3", "DOT 4", "DOT 5.1"}) name_fluid(usual);
    for (const std::string& fluid : view.fluids)
        view.doubts.push_back(fluid_doubt_lines(session, Place::at(Station::actuator), "brake fluid", fluid, {}));
    view.drafts = session.drafts();
    return view;
}

}  // namespace cotter
