// Changes to shots, findings and tags. See changes.h.
#include <algorithm>

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

// The same corner, whichever wheel of it, or the same station.
bool same_spot(const Place& a, const Place& b) {
    return a.is_corner() ? b.is_corner() && a.axle == b.axle && a.side == b.side : a == b;
}

// `wheel` at the new place where that has such a wheel.
Place keeping_wheel(const Job& job, const Place& to, Wheel wheel) {
    if (!to.is_corner() || wheel == Wheel::only) return to;
    Place place = to;
    place.wheel = wheel;
    const Trailer* trailer = job.only<Trailer>();
    return trailer != nullptr && trailer->has(place) ? place : to;
}

bool marked_on(const Job& job, const Finding& finding, const Shot& shot) {
    const auto& tags = job.all<Tag>();
    return std::any_of(tags.begin(), tags.end(),
                       [&](const Tag& t) { return t.finding == finding.id && t.shot == shot.id; });
}

}  // namespace

FindingsOfMove findings_of_move(const Job& job, const Shot& moved) {
    FindingsOfMove out;
    const Shot* before = job.find(moved.id);
    if (before == nullptr || same_spot(before->place, moved.place)) return out;
    for (Finding finding : job.all<Finding>()) {
        if (!marked_on(job, finding, moved) || !same_spot(finding.place, before->place)) continue;
        const auto& shots = job.all<Shot>();
        const bool stays = std::any_of(shots.begin(), shots.end(), [&](const Shot& other) {
            return other.id != moved.id && same_spot(other.place, before->place) && marked_on(job, finding, other);
        });
        if (stays) {
            out.staying += 1;
            continue;
        }
        finding.place = keeping_wheel(job, moved.place, finding.place.wheel);
        out.along.push_back(std::move(finding));
    }
    return out;
}

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
    let_go(job, c.finding, out);
    for (const StepMark& mark : job.all<StepMark>())  // the question is open again: its answer would be gone
        if (mark.finding == c.finding) out.push_back(Remove{RecordKind::step_mark, mark.id.uuid});
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

Result<Changes> changes_of(const Job& job, const PutShot& c, const Stamp& stamp) {
    Shot shot = c.shot;
    Changes out;
    if (shot.id.nil()) {
        shot.id = stamp.new_id<Shot>();
        shot.added = stamp.at;
    } else {
        for (Finding& finding : findings_of_move(job, shot).along) {
            finding.at = stamp.at;
            finding.by = stamp.by;
            out.emplace_back(Put{std::move(finding), {}});
        }
    }
    out.emplace_back(Put{std::move(shot), {}});
    return out;
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
