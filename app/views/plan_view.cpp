// See plan_view.h.
#include "app/views/plan_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/summary_view.h"
#include "core/work/fluid.h"
#include "core/work/torque.h"
#include "core/work/torque_check.h"

namespace cotter {

bool at_place(const Place& record, const Place& place) {
    if (place.is_corner() && place.wheel == Wheel::only) return record.axle == place.axle && record.side == place.side;
    return record == place;
}

namespace {

template <class R>
std::size_t count_at(const Job& job, const Place& place) {
    return static_cast<std::size_t>(
        std::count_if(job.all<R>().begin(), job.all<R>().end(), [&](const R& r) { return at_place(r.place, place); }));
}

// The newest one of those that `fits`; nullptr: none.
template <class R, class Fits>
const R* newest_at(const Job& job, const Place& place, Fits&& fits) {
    const R* newest = nullptr;
    for (const R& r : job.all<R>())
        if (at_place(r.place, place) && fits(r) && (newest == nullptr || newest->at <= r.at)) newest = &r;
    return newest;
}

// A record alone proves nothing: nuts stand at the maker's torque after a full check, oil at its line, settled.
std::string torque_lack(const Job& job, const Place& place) {
    const Torque* nuts = newest_at<Torque>(job, place, [](const Torque& t) { return t.joint == kWheelNuts; });
    if (nuts == nullptr) return "no torque";
    return nuts->taken == Taken::measured && proves_torque(check_torque(*nuts)) ? "" : "torque not proved";
}

std::string oil_lack(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    const auto axle = static_cast<std::size_t>(place.axle - 1);
    if (trailer == nullptr || axle >= trailer->axles.size() || trailer->axles[axle].hub != HubKind::oil_bath) return {};
    const Level* oil = newest_at<Level>(job, place, [](const Level& l) { return l.fluid == "hub oil"; });
    if (oil == nullptr) return "no oil level";
    return proves_level(check_level(*oil)) ? "" : "oil level not proved";
}

// What a complete corner has and this one lacks, as one short text.
std::string missing_at(const Job& job, const Place& place) {
    std::string out;
    const auto add = [&](const std::string& lack) {
        if (!lack.empty()) out += (out.empty() ? "" : ", ") + lack;
    };
    add(count_at<Shot>(job, place) > 0 ? "" : "no photo");
    if (!place.is_corner()) return out;
    add(count_at<Reading>(job, place) > 0 ? "" : "no reading");
    add(torque_lack(job, place));
    add(oil_lack(job, place));
    return out;
}

// The gravest that the answer about towing knows there. A place where nobody looked, or where nothing is wrong so far,
// has none: a good sign would say that all of it was looked at.
std::optional<Grade> worst_known(const TowAnswer& tow, const Place& place) {
    std::optional<Grade> worst;
    for (const PointAnswer& a : tow.points)
        if (a.known && a.grade > Grade::serviceable && at_place(a.place, place))
            worst = std::max(worst.value_or(a.grade), a.grade);
    return worst;
}

}  // namespace

PlanSpot plan_spot(const Job& job, const Place& place, SideWords words) {
    PlanSpot spot;
    spot.place = place;
    spot.label = place_words(place, words);
    const std::size_t shots = count_at<Shot>(job, place);
    const std::size_t findings = count_at<Finding>(job, place);
    const std::size_t rest = count_at<Reading>(job, place) + count_at<Torque>(job, place) + count_at<Level>(job, place);
    spot.missing = missing_at(job, place);
    if (shots + findings + rest == 0) {
        spot.state = "nothing yet";
        return spot;
    }
    spot.progress = spot.missing.empty() ? PlanState::complete : PlanState::begun;
    spot.state = count_words(shots, "photo", "photos");
    if (findings > 0) spot.state += ", " + count_words(findings, "finding", "findings");
    return spot;
}

PlanView plan_view(const Session& session) {
    const Job& job = session.job();
    const SideWords words = session.settings().sides;
    PlanView view;
    view.chrome = chrome_of(session, trailer_words(job), job.signed_off() ? "signed off" : "");
    view.drawbar_up = "front";
    if (const Trailer* trailer = job.only<Trailer>()) {
        view.axles = static_cast<int>(trailer->axles.size());
        for (const Axle& axle : trailer->axles) view.duals.push_back(axle.wheels == Wheels::dual);
        for (const Place& corner : trailer->corners())
            if (corner.wheel != Wheel::inner)
                view.corners.push_back(plan_spot(job, Place::corner(corner.axle, corner.side), words));
    }
    for (const Station s : {Station::drawbar, Station::actuator, Station::frame, Station::lights, Station::trailer})
        view.stations.push_back(plan_spot(job, Place::at(s), words));
    for (PlanSpot& spot : view.corners) {  // without what must be known to tow it, no corner is complete
        const auto& unknowns = session.summary().unknowns;
        const bool open = std::any_of(unknowns.begin(), unknowns.end(),
                                      [&](const Unknown& u) { return u.essential && at_place(u.place, spot.place); });
        if (!open || spot.progress != PlanState::complete) continue;
        spot.progress = PlanState::begun;
        spot.missing = "not all measured";
    }
    for (auto* spots : {&view.corners, &view.stations})
        for (PlanSpot& spot : *spots) spot.worst = worst_known(session.towing(), spot.place);
    const auto done = std::count_if(view.corners.begin(), view.corners.end(),
                                    [](const PlanSpot& s) { return s.progress == PlanState::complete; });
    view.towing = towing_question(session.summary());
    view.answer = session.summary().towing;
    view.summary = fmt::format("{} of {} corners complete", done, view.corners.size());
    view.points = fmt::format("{} of {} looked at", session.towing().looked_at, session.towing().of);
    return view;
}

}  // namespace cotter
