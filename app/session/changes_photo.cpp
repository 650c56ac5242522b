// Changes to shots, findings and tags. See changes.h.
#include "app/session/changes.h"

namespace cotter {

namespace {

template <class Keep>
void remove_tags(const Job& job, Changes& out, Keep keep) {
    for (const Tag& tag : job.all<Tag>())
        if (!keep(tag)) out.push_back(Remove{RecordKind::tag, tag.id.uuid});
}

template <class R>
Result<Id<R>> id_of(const std::string& text) {
    COTTER_ASSIGN(const Uuid uuid, Uuid::parse(text));
    return Id<R>{uuid};
}

// The draft's words into `finding`, which keeps what the draft does not speak of.
void fill(Finding& finding, const FindingDraft& draft, const Stamp& stamp) {
    finding.place = draft.place;
    finding.component = draft.component;
    finding.defect = draft.defect;
    finding.grade = draft.grade.value_or(Grade::watch);
    finding.note = draft.note;
    finding.todo = draft.todo;
    finding.at = stamp.at;
    finding.by = stamp.by;
}

}  // namespace

Result<Changes> changes_of(const Job& job, const PutFinding& c, const Stamp& stamp) {
    const FindingDraft& draft = c.draft;
    Finding finding;
    if (draft.id.empty()) {
        finding.id = stamp.new_id<Finding>();
    } else {
        COTTER_ASSIGN(const auto id, id_of<Finding>(draft.id));
        const Finding* there = job.find(id);
        if (there == nullptr) return fail(Errc::refused, "the finding is not there any more");
        finding = *there;
    }
    if (!draft.grade) return fail(Errc::refused, "no grade is chosen", {}, "choose one of the four");
    fill(finding, draft, stamp);
    Changes out{Put{finding, {}}};
    if (draft.shot.empty() || draft.points.empty()) return out;
    COTTER_ASSIGN(const auto shot, id_of<Shot>(draft.shot));
    out.push_back(Put{Tag{stamp.new_id<Tag>(), shot, finding.id, draft.shape, draft.points}, {}});
    return out;
}

Result<Changes> changes_of(const Job& job, const SetOutcome& c, const Stamp& stamp) {
    const Finding* there = job.find(c.finding);
    if (there == nullptr) return fail(Errc::refused, "the finding is not there any more");
    Finding finding = *there;
    finding.outcome = c.outcome;
    finding.outcome_note = c.note;
    finding.at = stamp.at;
    finding.by = stamp.by;
    return Changes{Put{std::move(finding), {}}};
}

Result<Changes> changes_of(const Job& job, const RemoveFinding& c, const Stamp&) {
    if (job.find(c.finding) == nullptr) return fail(Errc::refused, "the finding is not there any more");
    Changes out;
    remove_tags(job, out, [&](const Tag& tag) { return tag.finding != c.finding; });
    out.push_back(Remove{RecordKind::finding, c.finding.uuid});
    return out;
}

Result<Changes> changes_of(const Job&, const PutTag& c, const Stamp& stamp) {
    Tag tag = c.tag;
    if (tag.id.nil()) tag.id = stamp.new_id<Tag>();
    return Changes{Put{std::move(tag), {}}};
}

Result<Changes> changes_of(const Job& job, const RemoveTag& c, const Stamp&) {
    if (job.find(c.tag) == nullptr) return fail(Errc::refused, "the mark is not there any more");
    return Changes{Remove{RecordKind::tag, c.tag.uuid}};
}

Result<Changes> changes_of(const Job&, const PutShot& c, const Stamp& stamp) {
    Shot shot = c.shot;
    if (shot.id.nil()) {
        shot.id = stamp.new_id<Shot>();
        shot.added = stamp.at;
    }
    return Changes{Put{std::move(shot), {}}};
}

Result<Changes> changes_of(const Job& job, const RemoveShot& c, const Stamp&) {
    if (job.find(c.shot) == nullptr) return fail(Errc::refused, "the photo is not there any more");
    for (const MakerLimit& figure : job.all<MakerLimit>())
        if (figure.shot == c.shot)
            return fail(Errc::refused, "a maker's figure rests on this photo: " + figure.what, {},
                        "change or remove the figure first");
    Changes out;
    remove_tags(job, out, [&](const Tag& tag) { return tag.shot != c.shot; });
    let_go(job, c.shot, out);
    out.push_back(Remove{RecordKind::shot, c.shot.uuid});
    return out;
}

}  // namespace cotter
    for (const StepMark& mark : job.all<StepMark>())  // the question is open again: its answer would be gone
        if (mark.finding == c.finding) out.push_back(Remove{RecordKind::step_mark, mark.id.uuid});
