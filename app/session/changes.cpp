// Changes to visit, trailer, readings, levels, and signing off. See changes.h.
#include "app/session/changes.h"

namespace cotter {

Changes opening_changes(const Settings& settings, const Stamp& stamp) {
    Visit visit;
    visit.id = stamp.new_id<Visit>();
    visit.opened = stamp.at;
    visit.technician = stamp.by;
    visit.company = settings.company;
    if (settings.owner) visit.role = VisitRole::owner;
    return {Put{visit, {}}};
}

Result<Changes> changes_of(const Job&, const PutVisit& c, const Stamp&) {
    return Changes{Put{c.visit, {}}};
}

Result<Changes> changes_of(const Job&, const PutTrailer& c, const Stamp& stamp) {
    Trailer trailer = c.trailer;
    if (trailer.id.nil()) trailer.id = stamp.new_id<Trailer>();
    return Changes{Put{std::move(trailer), {}}};
}

Result<Changes> changes_of(const Job&, const PutReading& c, const Stamp& stamp) {
    Reading reading = c.reading;
    if (reading.id.nil()) reading.id = stamp.new_id<Reading>();
    reading.at = stamp.at;
    reading.by = stamp.by;
    return Changes{Put{std::move(reading), {}}};
}

Result<Changes> changes_of(const Job& job, const RemoveReading& c, const Stamp&) {
    if (job.find(c.reading) == nullptr) return fail(Errc::refused, "the reading is not there any more");
    Changes out;
    let_go(job, c.reading, out);
    out.emplace_back(Remove{RecordKind::reading, c.reading.uuid});
    return out;
}

Result<Changes> changes_of(const Job&, const PutLevel& c, const Stamp& stamp) {
    Level level = c.level;
    if (level.id.nil()) level.id = stamp.new_id<Level>();
    level.at = stamp.at;
    level.by = stamp.by;
    return Changes{Put{std::move(level), {}}};
}

Result<Changes> changes_of(const Job& job, const SignJob& c, const Stamp& stamp) {
    if (job.signed_off()) return fail(Errc::refused, "the job is signed off already");
    if (c.by.empty()) return fail(Errc::refused, "nobody's name is given", {}, "enter who hands the trailer over");
    return Changes{Put{SignOff{stamp.new_id<SignOff>(), stamp.at, c.by, c.statement, c.acknowledged}, {}}};
}

}  // namespace cotter
