// See plan_view.h.
#include "app/views/plan_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/summary_view.h"

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

bool nuts_torqued(const Job& job, const Place& place) {
    return std::any_of(job.all<Torque>().begin(), job.all<Torque>().end(), [&](const Torque& t) {
        return at_place(t.place, place) && t.taken == Taken::measured && !t.passes.empty() &&
               static_cast<int>(t.passes.back().tightened.size()) >= t.fasteners;
    });
}

// What a complete corner has and this one lacks, as one short text.
std::string missing_at(const Job& job, const Place& place) {
    std::string out;
    const auto lacks = [&](bool there, const char* what) {
        if (!there) out += (out.empty() ? "no " : ", no ") + std::string(what);
    };
    lacks(count_at<Shot>(job, place) > 0, "photo");
    if (!place.is_corner()) return out;
    lacks(count_at<Reading>(job, place) > 0, "reading");
    lacks(nuts_torqued(job, place), "torque");
    const Trailer* trailer = job.only<Trailer>();
    const auto axle = static_cast<std::size_t>(place.axle - 1);
    if (trailer != nullptr && axle < trailer->axles.size() && trailer->axles[axle].hub == HubKind::oil_bath)
        lacks(count_at<Level>(job, place) > 0, "oil level");
    return out;
}

}  // namespace

PlanSpot plan_spot(const Job& job, const Place& place, SideWords words) {
    PlanSpot spot;
    spot.place = place;
    spot.label = place_words(place, words);
    const std::size_t shots = count_at<Shot>(job, place);
    const std::size_t findings = count_at<Finding>(job, place);
    const std::size_t rest = count_at<Reading>(job, place) + count_at<Torque>(job, place) + count_at<Level>(job, place);
    for (const Finding& f : job.all<Finding>())
        if (at_place(f.place, place) && f.outcome != Outcome::repaired)
            spot.worst = std::max(spot.worst.value_or(f.grade), f.grade);
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
    const auto done = std::count_if(view.corners.begin(), view.corners.end(),
                                    [](const PlanSpot& s) { return s.progress == PlanState::complete; });
    view.towing = towing_question(session.summary());
    view.towing_grade = towing_grade(session.summary());
    view.summary = fmt::format("{} of {} corners complete", done, view.corners.size());
    return view;
}

}  // namespace cotter
