// Changes to torques: passes and the nuts in them. See changes.h.
#include <algorithm>

#include "app/session/changes.h"

namespace cotter {

Result<Changes> changes_of(const Job&, const PutTorque& c, const Stamp& stamp) {
    Torque torque = c.torque;
    if (torque.id.nil()) torque.id = stamp.new_id<Torque>();
    torque.at = stamp.at;
    torque.by = stamp.by;
    return Changes{Put{std::move(torque), {}}};
}

Result<Changes> changes_of(const Job& job, const TightenNut& c, const Stamp& stamp) {
    const Torque* there = job.find(c.torque);
    if (there == nullptr || there->passes.empty()) return fail(Errc::refused, "no pass has been begun");
    if (c.nut < 1 || c.nut > there->fasteners) return fail(Errc::refused, "there is no such nut on this wheel");
    Torque torque = *there;
    std::vector<int>& done = torque.passes.back().tightened;
    if (std::find(done.begin(), done.end(), c.nut) != done.end())
        return fail(Errc::refused, "this nut has clicked in this pass already");
    done.push_back(c.nut);
    return changes_of(job, PutTorque{std::move(torque)}, stamp);
}

Result<Changes> changes_of(const Job& job, const StartPass& c, const Stamp& stamp) {
    const Torque* there = job.find(c.torque);
    if (there == nullptr) return fail(Errc::refused, "the torque is not there any more");
    Torque torque = *there;
    torque.taken = Taken::measured;
    torque.reason.clear();
    torque.passes.push_back({c.setting, {}});
    return changes_of(job, PutTorque{std::move(torque)}, stamp);
}

}  // namespace cotter
