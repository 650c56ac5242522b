// See photo_view.h.
#include "app/views/photo_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/views/plan_view.h"
#include "core/photo/quality.h"

namespace cotter {

namespace {

constexpr std::int64_t kRun = 90 * 60;  // s: photos of one corner are taken within this of each other
constexpr std::size_t kMostSame = 6;

template <class R>
const R* found(const Job& job, const std::string& text) {
    const auto id = Uuid::parse(text);
    return id ? job.find(Id<R>{*id}) : nullptr;
}

PhotoFinding row_of(const Job& job, const Finding& f, const Id<Shot>& shot) {
    PhotoFinding row;
    row.finding = f.id;
    row.title = fmt::format("{}  {}", finding_number(job, f.id), finding_words(f.component, f.defect));
    row.under = f.todo;
    if (!f.note.empty()) row.under += (row.under.empty() ? "" : "\n") + f.note;
    row.grade = f.grade;
    row.draft = draft_of_finding(f, shot.text());
    return row;
}

void add_marks(const Job& job, PhotoView& view) {
    for (const Tag& tag : job.all<Tag>()) {
        if (tag.shot != view.shot.id) continue;
        const Finding* finding = job.find(tag.finding);
        if (finding == nullptr) continue;
        view.marks.push_back({tag.shape, tag.points, finding->grade, finding_number(job, tag.finding)});
        view.tags.push_back(tag);
        const bool listed = std::any_of(view.findings.begin(), view.findings.end(),
                                        [&](const PhotoFinding& f) { return f.finding == tag.finding; });
        if (listed) continue;
        view.findings.push_back(row_of(job, *finding, view.shot.id));
        view.findings.back().tag = tag.id;
    }
}

void add_next(const Job& job, PhotoView& view) {
    std::vector<const Shot*> shots;
    for (const Shot& s : job.all<Shot>())
        if (at_place(s.place, view.shot.place)) shots.push_back(&s);
    const auto at = std::find_if(shots.begin(), shots.end(), [&](const Shot* s) { return s->id == view.shot.id; });
    if (shots.size() < 2 || at == shots.end()) return;
    view.next = at + 1 == shots.end() ? shots.front()->id : (*(at + 1))->id;
}

std::string facts_of(const Shot& shot) {
    std::string out = shot.stage == Stage::before ? "Before the work." : "After the work.";
    if (shot.photo.taken)
        out += fmt::format(" Taken {} {}.", day_words(*shot.photo.taken), clock_words(*shot.photo.taken));
    out += fmt::format(" {} × {} pixels.", shot.photo.width, shot.photo.height);
    return out;
}

PhotoWarning time_warning(std::int64_t apart) {
    const std::int64_t minutes = std::abs(apart) / 60;
    const std::string span = minutes < 48 * 60 ? fmt::format("{} h {} min", minutes / 60, minutes % 60)
                                               : fmt::format("{} days", minutes / (24 * 60));
    return {"Taken at a different time",
            fmt::format("It was taken {} {} the nearest other photo of this place. Does it belong here?", span,
                        apart < 0 ? "before" : "after")};
}

}  // namespace

FindingDraft draft_of_finding(const Finding& finding, std::string shot) {
    FindingDraft draft;
    draft.id = finding.id.text();
    draft.shot = std::move(shot);
    draft.place = finding.place;
    draft.component = finding.component;
    draft.defect = finding.defect;
    draft.grade = finding.grade;
    draft.note = finding.note;
    draft.todo = finding.todo;
    return draft;
}

FindingEntry finding_entry(const Session& session, const FindingDraft& draft, Slot slot) {
    const Job& job = session.job();
    FindingEntry entry;
    entry.draft = draft;
    entry.is_new = draft.id.empty();
    entry.title = draft.component.empty() ? "What is it?" : finding_words(draft.component, draft.defect);
    entry.usual = usual_findings(slot, layout_of(job), draft.place);
    entry.components = components_for(slot, layout_of(job), draft.place);
    entry.defects = defects_of(draft.component, layout_of(job), draft.place);
    entry.remedies = remedies_for(draft.component);
    entry.place = place_words(draft.place, session.settings().sides);
    entry.places = shot_place_view(session, draft.place, {}, Stage::before);
    if (const Finding* there = found<Finding>(job, draft.id))
        entry.changed = there->component != draft.component || there->defect != draft.defect ||
                        there->grade != draft.grade || there->note != draft.note || there->todo != draft.todo ||
                        there->place != draft.place;
    const Shot* shot = found<Shot>(job, draft.shot);
    if (!entry.is_new || shot == nullptr) return entry;
    const auto& all = job.all<Finding>();
    for (auto f = all.rbegin(); f != all.rend() && entry.same.size() < kMostSame; ++f)
        if (at_place(f->place, draft.place) && f->outcome == Outcome::open)
            entry.same.push_back(row_of(job, *f, shot->id));
    return entry;
}

std::string finding_words(std::string_view component, std::string_view defect) {
    if (defect.empty()) return upper_first(component);
    return upper_first(component) + ": " + std::string(defect);
}

std::vector<PhotoWarning> photo_warnings(const Job& job, const Shot& shot) {
    std::vector<PhotoWarning> out;
    const PhotoRef& p = shot.photo;
    const Quality quality{p.sharpness, p.mean_light, p.dark_share, p.bright_share};
    if (blurred(quality))
        out.push_back({"Blurred", "Hold still, tap to focus, and take it again if it must convince."});
    if (dark(quality)) out.push_back({"Dark", "Much of it shows nothing. A light from the side helps."});
    if (glare(quality)) out.push_back({"Glare", "Part of it is burnt out. Shade it, or turn a little."});
    if (!p.taken) return out;
    std::optional<std::int64_t> nearest;
    for (const Shot& s : job.all<Shot>()) {
        if (s.id == shot.id || s.stage != shot.stage || !s.photo.taken || !at_place(s.place, shot.place)) continue;
        const std::int64_t apart = p.taken->unix_s - s.photo.taken->unix_s;
        if (!nearest || std::abs(apart) < std::abs(*nearest)) nearest = apart;
    }
    if (nearest && std::abs(*nearest) > kRun) out.push_back(time_warning(*nearest));
    return out;
}

const Shot* other_stage(const Job& job, const Place& place, Slot slot, Stage stage) {
    const auto& all = job.all<Shot>();
    const auto other = std::find_if(all.rbegin(), all.rend(), [&](const Shot& s) {
        return s.place == place && s.slot == slot && s.stage != stage;
    });
    return other == all.rend() ? nullptr : &*other;
}

PhotoView photo_view(const Session& session) {
    const Job& job = session.job();
    PhotoView view;
    view.drafts = session.drafts();
    const Shot* shot = found<Shot>(job, session.route().record);
    if (shot == nullptr) {
        view.chrome = chrome_of(session, "Photo");
        return view;
    }
    view.there = true;
    view.shot = *shot;
    view.chrome =
        chrome_of(session, upper_first(name_of(shot->slot)), place_words(shot->place, session.settings().sides));
    view.facts = facts_of(*shot);
    view.warnings = photo_warnings(job, *shot);
    add_marks(job, view);
    add_next(job, view);
    if (const Shot* other = other_stage(job, shot->place, shot->slot, shot->stage))
        view.other = PhotoOther{other->id, other->photo.sha256, static_cast<float>(other->photo.width),
                                static_cast<float>(other->photo.height)};
    // The draft is this photo's when it says so; one of another photo waits there.
    if (const auto& draft = view.drafts.finding; draft && draft->shot == view.shot.id.text())
        view.entry = finding_entry(session, *draft, view.shot.slot);
    return view;
}

}  // namespace cotter
