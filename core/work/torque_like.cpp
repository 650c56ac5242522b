// See torque_like.h.
#include "core/work/torque_like.h"

#include "core/work/torque.h"
#include "core/work/torque_check.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

const Axle* axle_of(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr || !place.is_corner() || !trailer->has(place)) return nullptr;
    return &trailer->axles[static_cast<std::size_t>(place.axle - 1)];
}

bool like_axles(Axle a, Axle b) {
    a.studs = b.studs = 0;  // the joints' own counts are compared
    return a == b;
}

bool like_count(const Torque& wanted, const Torque& lender) {
    if (wanted.fasteners == 0) return wanted.joint != kWheelNuts;
    return wanted.fasteners == lender.fasteners;
}

bool sure_of_unit(const Torque& t) {
    return t.unit_confirmed || !doubt_target(t.joint, *t.target);
}

}  // namespace

const Torque* torque_to_lend(const Job& job, const Torque& wanted) {
    const Axle* here = axle_of(job, wanted.place);
    if (here == nullptr || wanted.target) return nullptr;
    const Torque* found = nullptr;
    for (const Torque& t : job.all<Torque>()) {
        if (t.id == wanted.id || t.joint != wanted.joint || !t.target || t.target_source.empty()) continue;
        const Axle* there = axle_of(job, t.place);
        if (there == nullptr || !like_axles(*here, *there) || !like_count(wanted, t) || !sure_of_unit(t)) continue;
        if (found == nullptr || found->at <= t.at) found = &t;
    }
    return found;
}

Torque with_lent(Torque wanted, const Torque& lender) {
    const Torque from = in_present_form(lender);
    wanted.fasteners = wanted.fasteners == 0 ? from.fasteners : wanted.fasteners;
    wanted.target = from.target;
    wanted.target_source = from.target_source;
    wanted.target_from = from.place;
    wanted.unit_confirmed = from.unit_confirmed;
    if (!wanted.wrench.empty() || !wanted.passes.empty()) return wanted;  // it is tightened by a wrench of its own
    wanted.wrench = from.wrench;
    wanted.wrench_calibrated = from.wrench_calibrated;
    wanted.adapter = from.adapter;
    return wanted;
}

Torque with_count(Torque torque, int fasteners) {
    const bool lent = torque.target_from && torque.fasteners != fasteners;
    torque.fasteners = fasteners;
    if (!lent) return torque;
    torque.target.reset();
    torque.target_source.clear();
    torque.target_from.reset();
    torque.unit_confirmed = false;
    return torque;
}

}  // namespace cotter
