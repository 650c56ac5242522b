// What an owner's bad answer says.
#include "core/work/owner.h"

namespace cotter {

Result<Finding> finding_of(const Step& step, const Place& place, const Id<Finding>& id, Instant at,
                           const std::string& by) {
    if (!step.ask) return fail(Errc::refused, "the step asks nothing", step.title);
    Finding f;
    f.id = id;
    f.place = place;
    f.component = step.ask->component;
    f.defect = step.ask->defect;
    f.grade = step.ask->grade;
    f.todo = step.ask->now;
    f.at = at;
    f.by = by;
    return f;
}

}  // namespace cotter
