// See identify_view.h.
#include "app/views/identify_view.h"

#include <algorithm>

#include "core/trailer/vin.h"

namespace cotter {

namespace {

bool on_corners(const Job& job) {
    const auto any = [](const auto& records) {
        return std::any_of(records.begin(), records.end(), [](const auto& r) { return r.place.is_corner(); });
    };
    return any(job.all<Shot>()) || any(job.all<Finding>()) || any(job.all<Reading>()) || any(job.all<Torque>()) ||
           any(job.all<Level>());
}

// In what this page asks for.
bool alike(const Axle& a, const Axle& b) {
    return a.wheels == b.wheels && a.brake == b.brake && a.hub == b.hub && a.studs == b.studs;
}

}  // namespace

Trailer with_axles(Trailer trailer, std::size_t count) {
    Axle like;  // what nobody said is not known: an axle is no idler by silence
    like.brake = BrakeKind::not_known;
    like.hub = HubKind::not_known;
    if (!trailer.axles.empty()) like = trailer.axles.back();
    trailer.axles.resize(count, like);
    return trailer;
}

IdentifyView identify_view(const Session& session) {
    const Job& job = session.job();
    IdentifyView view;
    view.chrome = chrome_of(session, "Trailer", trailer_words(job));
    if (const Trailer* trailer = job.only<Trailer>()) view.trailer = *trailer;
    if (const Visit* visit = job.only<Visit>()) view.visit = *visit;
    view.axles_fixed = on_corners(job);
    const auto& axles = view.trailer.axles;
    view.same_axles = std::all_of(axles.begin(), axles.end(), [&](const Axle& a) { return alike(a, axles.front()); });
    view.vin = session.drafts().vin.empty() ? view.trailer.vin : session.drafts().vin;
    const bool stands = view.trailer.vin_nonstandard && view.vin == view.trailer.vin;
    if (!view.vin.empty() && !stands) view.vin_note = check_vin(view.vin).reason;
    for (const Shot& shot : job.all<Shot>()) {
        if (shot.slot != Slot::data_plate) continue;
        view.plate_shot = shot.photo.sha256;
        view.plate_shot_id = shot.id.text();
    }
    return view;
}

}  // namespace cotter
