// Changes by looking: answers to points, sidewalls, chambers, the breakaway test, events. See changes.h.
#include "app/session/put_stamped.h"

namespace cotter {

namespace {

template <class R>
Result<Changes> take_out(const Job& job, RecordKind kind, const Id<R>& id, const char* gone) {
    if (job.find(id) == nullptr) return fail(Errc::refused, gone);
    return Changes{Remove{kind, id.uuid}};
}

const Look* look_there(const Job& job, const Look& look) {
    for (const Look& other : job.all<Look>())
        if (other.point == look.point && other.place == look.place && other.stage == look.stage) return &other;
    return nullptr;
}

Id<Finding> finding_put(const Changes& changes) {
    for (const Change& change : changes)
        if (const Put* put = std::get_if<Put>(&change))
            if (const Finding* finding = std::get_if<Finding>(&put->record)) return finding->id;
    return {};
}

}  // namespace

// One answer a point, place and stage: a second thought replaces the first, and its finding with it.
Result<Changes> changes_of(const Job& job, const PutLook& c, const Stamp& stamp) {
    Look look = c.look;
    const Look* there = look_there(job, look);
    if (there != nullptr) look.id = there->id;
    look.finding = there == nullptr ? std::nullopt : there->finding;
    Changes out;
    if (c.finding) {
        FindingDraft draft = *c.finding;
        if (draft.id.empty() && look.finding) draft.id = look.finding->text();
        COTTER_ASSIGN(out, changes_of(job, PutFinding{draft}, stamp));
        look.finding = finding_put(out);
    }
    Changes put = put_stamped(std::move(look), stamp);
    out.insert(out.end(), put.begin(), put.end());
    return out;
}

Result<Changes> changes_of(const Job& job, const RemoveLook& c, const Stamp&) {
    return take_out(job, RecordKind::look, c.look, "the answer is not there any more");
}

Result<Changes> changes_of(const Job&, const PutSidewall& c, const Stamp& stamp) {
    return put_stamped(c.sidewall, stamp);
}

Result<Changes> changes_of(const Job& job, const RemoveSidewall& c, const Stamp&) {
    return take_out(job, RecordKind::sidewall, c.sidewall, "the tire's entry is not there any more");
}

Result<Changes> changes_of(const Job&, const PutChamber& c, const Stamp& stamp) {
    return put_stamped(c.chamber, stamp);
}

Result<Changes> changes_of(const Job& job, const RemoveChamber& c, const Stamp&) {
    return take_out(job, RecordKind::chamber, c.chamber, "the chamber's entry is not there any more");
}

Result<Changes> changes_of(const Job&, const PutBreakawayTest& c, const Stamp& stamp) {
    return put_stamped(c.test, stamp);
}

Result<Changes> changes_of(const Job& job, const RemoveBreakawayTest& c, const Stamp&) {
    return take_out(job, RecordKind::breakaway_test, c.test, "the test is not there any more");
}

Result<Changes> changes_of(const Job&, const PutEvent& c, const Stamp& stamp) {
    return put_stamped(c.event, stamp);
}

Result<Changes> changes_of(const Job& job, const RemoveEvent& c, const Stamp&) {
    return take_out(job, RecordKind::event, c.event, "the entry is not there any more");
}

}  // namespace cotter
