// Changes to torques: passes and the nuts in them. See changes.h.
#include <algorithm>

#include "app/session/changes.h"
#include "core/work/torque_progress.h"
#include "core/work/wrench.h"

namespace cotter {

// A record in an older form is put in the present one: the next pass says its torque at the nut in a field of its own.
Result<Changes> changes_of(const Job&, const PutTorque& c, const Stamp& stamp) {
    Torque torque = in_present_form(c.torque);
    if (torque.id.nil()) torque.id = stamp.new_id<Torque>();
    torque.at = stamp.at;
    torque.by = stamp.by;
    return Changes{Put{std::move(torque), {}}};
}

namespace {

Result<> click(Torque& torque, int nut) {
    if (torque.passes.empty()) return fail(Errc::refused, "no pass has been begun");
    if (nut < 1 || nut > torque.fasteners) return fail(Errc::refused, "there is no such nut on this wheel");
    std::vector<int>& done = torque.passes.back().tightened;
    if (std::find(done.begin(), done.end(), nut) != done.end())
        return fail(Errc::refused, "this nut has clicked in this pass already");
    done.push_back(nut);
    return {};
}

}  // namespace

Result<Changes> changes_of(const Job& job, const TightenNut& c, const Stamp& stamp) {
    const Torque* there = job.find(c.torque);
    if (there == nullptr) return fail(Errc::refused, "no pass has been begun");
    Torque torque = *there;
    COTTER_TRY(click(torque, c.nut));
    return changes_of(job, PutTorque{std::move(torque)}, stamp);
}

Result<Changes> changes_of(const Job& job, const StartPass& c, const Stamp& stamp) {
    const Torque* there = job.find(c.torque.id);
    if (there == nullptr && !c.torque.id.nil()) return fail(Errc::refused, "the torque is not there any more");
    COTTER_ASSIGN(Torque torque, begin_pass(there != nullptr ? *there : c.torque, c.at_nut));
    if (c.nut != 0) COTTER_TRY(click(torque, c.nut));
    return changes_of(job, PutTorque{std::move(torque)}, stamp);
}

}  // namespace cotter
