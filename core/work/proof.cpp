// Whether the job holds what a step asks for as evidence.
#include <algorithm>

#include "core/work/bearing.h"
#include "core/work/bleed.h"
#include "core/work/fluid.h"
#include "core/work/progress.h"
#include "core/work/torque_check.h"

namespace cotter {

namespace {

// A corner's records may name one wheel of it.
bool is_at(const Place& record, const Place& wanted, const Proof& proof) {
    if (proof.anywhere || !wanted.is_corner()) return true;
    return record.axle == wanted.axle && record.side == wanted.side;
}

template <class R, class Good>
bool any_of(const Job& job, Good&& good) {
    const auto& all = job.all<R>();
    return std::any_of(all.begin(), all.end(), good);
}

// The newest of the records that `fits` decides; an older good one does not outweigh it.
template <class R, class Fits, class Good>
bool newest_is(const Job& job, Fits&& fits, Good&& good) {
    const R* newest = nullptr;
    for (const R& r : job.all<R>())
        if (fits(r) && (newest == nullptr || newest->at <= r.at)) newest = &r;
    return newest != nullptr && good(*newest);
}

bool has_shot(const Job& job, const Proof& proof, const Place& place) {
    return any_of<Shot>(job, [&](const Shot& s) {
        return name_of(s.slot) == proof.what && is_at(s.place, place, proof) &&
               (!proof.stage || s.stage == *proof.stage);
    });
}

bool has_reading(const Job& job, const Proof& proof, const Place& place) {
    const auto fits = [&](const Reading& r) {
        return r.what == proof.what && is_at(r.place, place, proof) && (!proof.stage || r.stage == *proof.stage);
    };
    return newest_is<Reading>(job, fits,
                              [](const Reading& r) { return r.taken == Taken::measured && !r.points.empty(); });
}

bool has_torque(const Job& job, const Proof& proof, const Place& place) {
    const auto fits = [&](const Torque& t) { return t.joint == proof.what && is_at(t.place, place, proof); };
    return newest_is<Torque>(job, fits, [](const Torque& t) { return proves_torque(check_torque(t)); });
}

bool has_level(const Job& job, const Proof& proof, const Place& place) {
    const auto fits = [&](const Level& l) { return l.fluid == proof.what && is_at(l.place, place, proof); };
    return newest_is<Level>(job, fits, [](const Level& l) { return proves_level(check_level(l)); });
}

bool has_bearing(const Job& job, const Proof& proof, const Place& place) {
    const auto fits = [&](const BearingSetting& b) { return is_at(b.place, place, proof); };
    return newest_is<BearingSetting>(job, fits, [&](const BearingSetting& b) {
        return proof.what == "play" ? proved_play(job, b).has_value() || (b.style == NutStyle::preset && b.locked)
                                    : proves_bearing(check_bearing(job, b));
    });
}

Result<std::vector<BleedStop>> order_of(const Job& job) {
    const PipeRoute* route = job.only<PipeRoute>();
    const Trailer* trailer = job.only<Trailer>();
    if (route == nullptr || trailer == nullptr) return fail(Errc::refused, "the pipe route is not entered");
    return bleed_order(*route, *trailer);
}

bool has_bleeding(const Job& job) {
    const auto order = order_of(job);
    if (!order) return false;
    const auto remarks = check_bleeding(job, *order);
    return std::none_of(remarks.begin(), remarks.end(), [](const BleedRemark& r) { return r.blocks; });
}

}  // namespace

bool holds_proof(const Job& job, const Proof& proof, const Place& place, const StepMark* mark) {
    switch (proof.kind) {
        case ProofKind::shot:
            return has_shot(job, proof, place);
        case ProofKind::reading:
            return has_reading(job, proof, place);
        case ProofKind::torque:
            return has_torque(job, proof, place);
        case ProofKind::level:
            return has_level(job, proof, place);
        case ProofKind::bearing:
            return has_bearing(job, proof, place);
        case ProofKind::route:
            return order_of(job).has_value();
        case ProofKind::bleeding:
            return has_bleeding(job);
        case ProofKind::note:
            break;
    }
    return mark != nullptr && !mark->note.empty();
}

}  // namespace cotter
